import { USE_CASES } from '#server/use-cases/all.ts';
import { asked, callerAt, done, entered, forgotten, toClass } from '../../../classes.server.ts';
import type { Actions, PageServerLoad } from './$types';

export const load: PageServerLoad = async (event) => {
	const caller = await callerAt(event);
	if (!caller) return { role: 'nobody' as const };
	if (caller.role === 'teacher')
		return { role: 'teacher' as const, classes: await asked(USE_CASES.ownClasses, event, {}) };
	return { role: 'learner' as const, id: caller.id, ...(await asked(USE_CASES.ownPage, event, {})) };
};

export const actions: Actions = {
	join: (event) => entered(USE_CASES.join, event),
	comeBack: (event) => entered(USE_CASES.comeBack, event),
	signIn: (event) => entered(USE_CASES.signIn, event),
	signOut: async (event) => {
		const result = await done(USE_CASES.signOut, event);
		forgotten(event);
		return 'done' in result ? toClass(event) : result;
	},
	startClass: (event) => done(USE_CASES.startClass, event),
	invite: (event) => done(USE_CASES.inviteTeacher, event),
	leave: async (event) => {
		const result = await done(USE_CASES.removeLearner, event);
		if (!('done' in result)) return result;
		forgotten(event);
		return toClass(event);
	}
};
