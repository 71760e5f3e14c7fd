import { USE_CASES } from '#server/use-cases/all.ts';
import { asked, sent, stayIn } from '../../classes.server.ts';
import type { RequestHandler } from './$types';

/** Comes in by the ticket that a frame was given. A form sends it: an address that somebody else hands on brings nobody in. */
export const POST: RequestHandler = async (event) => {
	const { ticket = '' } = await sent(event.request);
	const { secret, to } = await asked(USE_CASES.openLaunch, event, { ticket });
	return stayIn(event, secret, to);
};
