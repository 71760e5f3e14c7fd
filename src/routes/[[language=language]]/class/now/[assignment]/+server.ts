import { USE_CASES } from '#server/use-cases/all.ts';
import { streamed } from '../../../../classes.server.ts';
import type { RequestHandler } from './$types';

/** Who is where in an assignment, as it happens; asked for as JSON, as it is just now. */
export const GET: RequestHandler = async (event) =>
	streamed(USE_CASES.classNow, event, event.params, ({ learners }) => learners);
