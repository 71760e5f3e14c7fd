import { USE_CASES } from '#server/use-cases/all.ts';
import { asked } from '../../../../classes.server.ts';
import type { RequestHandler } from './$types';

/** Everything that is kept of a learner, as a file. */
export const GET: RequestHandler = async (event) => {
	const found = await asked(USE_CASES.exportLearner, event, { learner: event.params.learner });
	return new Response(JSON.stringify(found, null, '\t'), {
		headers: {
			'content-type': 'application/json',
			'content-disposition': 'attachment; filename="square-across-learner.json"',
			'cache-control': 'private, no-store'
		}
	});
};
