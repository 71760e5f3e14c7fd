import { USE_CASES } from '#server/use-cases/all.ts';
import { asked, done, toClass } from '../../../../classes.server.ts';
import type { Actions, PageServerLoad } from './$types';

export const load: PageServerLoad = (event) =>
	asked(USE_CASES.readClass, event, { class: event.params.class });

export const actions: Actions = {
	open: (event) => done(USE_CASES.setJoining, event, () => ({ class: event.params.class, open: true })),
	close: (event) => done(USE_CASES.setJoining, event, () => ({ class: event.params.class, open: false })),
	rename: (event) => done(USE_CASES.renameLearner, event),
	reset: (event) => done(USE_CASES.resetPassphrase, event),
	remove: (event) => done(USE_CASES.removeLearner, event),
	removeClass: async (event) => {
		const result = await done(USE_CASES.removeClass, event, () => ({ class: event.params.class }));
		return 'done' in result ? toClass(event) : result;
	}
};
