import { json } from '@sveltejs/kit';
import { isReady } from '../classes.server.ts';
import type { RequestHandler } from './$types';

/** Whether requests can be answered, those of classes too: for whoever shares them out among several programs. */
export const GET: RequestHandler = async () => {
	const ready = await isReady();
	return json({ ready }, { status: ready ? 200 : 503, headers: { 'cache-control': 'no-store' } });
};
