import type { Answered, NotTaken } from '#shared/hand-in.ts';
import { LONGEST_EVENT, MOST_AT_ONCE } from '#shared/hand-in-limits.ts';
import { USE_CASES } from '#server/use-cases/all.ts';
import { answered } from '../../../classes.server.ts';
import type { RequestHandler } from './$types';

/** The most letters of one request: as many events as it may have, each as long as it may be. */
const LONGEST = MOST_AT_ONCE * LONGEST_EVENT;

const STATUS: Readonly<Record<NotTaken, number>> = {
	conflict: 409,
	unreadable: 400,
	notThere: 404,
	full: 413
};

/** That of the first event that was not taken in; what became of each stands in the answer. */
const statusOf = ({ answers }: { readonly answers: readonly Answered[] }): number => {
	const refused = answers.flatMap((each) => ('refused' in each ? each.refused : []));
	return refused[0] === undefined ? 200 : STATUS[refused[0]];
};

const parsed = (text: string): unknown => {
	try {
		return JSON.parse(text);
	} catch {
		return undefined;
	}
};

/** Takes in what a learner did: `{"events": [{"key": ..., "done": ...}, ...]}`. */
export const POST: RequestHandler = async (event) => {
	const { headers } = event.request;
	if (Number(headers.get('content-length') ?? LONGEST + 1) > LONGEST)
		return new Response(null, { status: 413 });
	return answered(USE_CASES.handIn, event, parsed(await event.request.text()), statusOf);
};
