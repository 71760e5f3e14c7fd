import { USE_CASES } from '#server/use-cases/all.ts';
import { asked, stayIn } from '../../classes.server.ts';
import type { RequestHandler } from './$types';

/** Comes in by the ticket that a frame was given. */
export const GET: RequestHandler = async (event) => {
	const ticket = event.url.searchParams.get('ticket') ?? '';
	return stayIn(event, (await asked(USE_CASES.openLaunch, event, { ticket })).secret);
};
