import { json } from '@sveltejs/kit';
import type { RequestHandler } from './$types';

/** Whether the program runs: for whoever starts it anew where it does not. */
export const GET: RequestHandler = () =>
	json({ running: true }, { headers: { 'cache-control': 'no-store' } });
