import { USE_CASES } from '#server/use-cases/all.ts';
import { callerAt, entered } from '../../../../classes.server.ts';
import type { Actions, PageServerLoad } from './$types';

export const load: PageServerLoad = async (event) => {
	// Asked for its own sake: where there are no classes, it says so.
	await callerAt(event);
	return { link: event.url.searchParams.get('link') ?? '' };
};

export const actions: Actions = {
	default: (event) => entered(USE_CASES.becomeTeacher, event)
};
