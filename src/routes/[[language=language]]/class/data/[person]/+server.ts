import { USE_CASES } from '#server/use-cases/all.ts';
import { asked, callerAt } from '../../../../classes.server.ts';
import type { RequestHandler } from './$types';

/** Everything that is kept of somebody, as a file. */
export const GET: RequestHandler = async (event) => {
	const { person } = event.params;
	const caller = await callerAt(event);
	const isOwn = caller?.role === 'teacher' && caller.id === person;
	const found = isOwn
		? await asked(USE_CASES.exportTeacher, event, {})
		: await asked(USE_CASES.exportLearner, event, { learner: person });
	return new Response(JSON.stringify(found, null, '\t'), {
		headers: {
			'content-type': 'application/json',
			'content-disposition': `attachment; filename="square-across-${isOwn ? 'teacher' : 'learner'}.json"`,
			'cache-control': 'private, no-store'
		}
	});
};
