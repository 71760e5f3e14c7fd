import { redirect } from '@sveltejs/kit';
import { USE_CASES } from '#server/use-cases/all.ts';
import { asked, keepWay, sent } from '../../classes.server.ts';
import type { RequestEvent, RequestHandler } from './$types';

/** A learning platform sends somebody here first, by an address or by a form, and they are sent back to say who they are. */
const begin = async (event: RequestEvent, input: Readonly<Record<string, string>>): Promise<never> => {
	const answer = `${event.url.origin}/lti/launch`;
	const { to, state } = await asked(USE_CASES.beginLaunch, event, { ...input, answer });
	keepWay(event, state);
	redirect(303, to);
};

export const GET: RequestHandler = (event) => begin(event, Object.fromEntries(event.url.searchParams));
export const POST: RequestHandler = async (event) => begin(event, await sent(event.request));
