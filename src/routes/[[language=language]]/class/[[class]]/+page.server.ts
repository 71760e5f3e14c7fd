import { redirect } from '@sveltejs/kit';
import { USE_CASES } from '#server/use-cases/all.ts';
import { asked, callerAt, done, entered, forgotten, toClass, type Told } from '../../../classes.server.ts';
import { deskFor, methodsFor, planned, settable, settableGarments } from './assigned.server.ts';
import { readConsent, readTask } from './task-form.server.ts';
import type { Actions, PageServerLoad, PageServerLoadEvent, RequestEvent } from './$types';

/** The page is another for each person, so it cannot be made beforehand. */
export const prerender = false;

/** What a teacher sees of a class, or of something that it was set. */
const forTeacher = async (event: PageServerLoadEvent, inClass: string) => {
	const { url } = event;
	const assignment = url.searchParams.get('assignment');
	if (url.searchParams.has('plan')) {
		const plan = await asked(USE_CASES.lessonPlan, event, { class: inClass });
		return { shows: 'plan' as const, plan, ...planned(url, plan.lessons) };
	}
	if (assignment !== null && url.searchParams.has('sheets')) {
		const found = await asked(USE_CASES.classSheets, event, { assignment });
		return { shows: 'sheets' as const, found, methods: methodsFor(url, found.methods) };
	}
	if (assignment === null)
		return {
			shows: 'class' as const,
			found: await asked(USE_CASES.readClass, event, { class: inClass }),
			teachers: await asked(USE_CASES.readTeachers, event, { class: inClass }),
			self: (await callerAt(event))?.id,
			sendings: await asked(USE_CASES.classSendings, event, { class: inClass }),
			assignments: await asked(USE_CASES.classAssignments, event, { class: inClass }),
			lessons: settable(url),
			garments: settableGarments(url)
		};
	if (!url.searchParams.has('preview'))
		return {
			shows: 'marks' as const,
			found: await asked(USE_CASES.readAssignment, event, { assignment }),
			lessons: settable(url),
			garments: settableGarments(url)
		};
	const work = await asked(USE_CASES.previewAssignment, event, { assignment });
	const back = `/class/${inClass}?assignment=${assignment}`;
	return {
		shows: 'work' as const,
		work,
		back,
		...deskFor(url, work.lessons, url.searchParams.get('lesson'))
	};
};

/** What a learner sees of something that their class was set. */
const forLearner = async (event: PageServerLoadEvent, assignment: string) => {
	const { url } = event;
	const work = await asked(USE_CASES.openAssignment, event, { assignment });
	const lesson = url.searchParams.get('lesson');
	return { shows: 'work' as const, work, back: '/class', ...deskFor(url, work.lessons, lesson) };
};

/** All pages of classes are one route: each route is told to every lesson's browser. */
export const load: PageServerLoad = async (event) => {
	const { params, url } = event;
	const caller = await callerAt(event);
	if (params.class !== undefined)
		return caller?.role === 'learner' ? forLearner(event, params.class) : forTeacher(event, params.class);
	const link = url.searchParams.get('link');
	if (link !== null) return { shows: 'link' as const, link, again: url.searchParams.get('again') };
	if (!caller) return { shows: 'door' as const };
	if (caller.role === 'teacher')
		return {
			shows: 'teacher' as const,
			id: caller.id,
			classes: await asked(USE_CASES.ownClasses, event, {}),
			platforms: await asked(USE_CASES.allPlatforms, event, {})
		};
	return {
		shows: 'learner' as const,
		id: caller.id,
		...(await asked(USE_CASES.ownPage, event, {})),
		work: await asked(USE_CASES.ownAssignments, event, {})
	};
};

/** Whoever was removed is nobody any more, in their browser too. */
const gone = (event: RequestEvent, result: Told | { readonly done: unknown }): Told => {
	if (!('done' in result)) return result;
	forgotten(event);
	return toClass(event);
};

export const actions: Actions = {
	become: (event) => entered(USE_CASES.becomeTeacher, event),
	comeAgain: (event) => entered(USE_CASES.comeAgain, event),
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
	leave: async (event) => gone(event, await done(USE_CASES.removeLearner, event)),
	resign: async (event) => gone(event, await done(USE_CASES.removeTeacher, event)),
	addTeacher: (event) =>
		done(USE_CASES.addTeacher, event, ({ name }) => ({ class: event.params.class, name })),
	takeFrom: (event) =>
		done(USE_CASES.takeClassFrom, event, ({ teacher }) => ({ class: event.params.class, teacher })),
	giveUp: async (event) => {
		const result = await done(USE_CASES.takeClassFrom, event, ({ teacher }) => ({
			class: event.params.class,
			teacher
		}));
		return 'done' in result ? toClass(event) : result;
	},
	addPlatform: (event) => done(USE_CASES.addPlatform, event),
	removePlatform: (event) => done(USE_CASES.removePlatform, event),
	open: (event) => done(USE_CASES.setJoining, event, () => ({ class: event.params.class, open: true })),
	close: (event) => done(USE_CASES.setJoining, event, () => ({ class: event.params.class, open: false })),
	sendAgain: (event) =>
		done(USE_CASES.sendMarkAgain, event, ({ sending }) => ({ class: event.params.class, sending })),
	rename: (event) => done(USE_CASES.renameLearner, event),
	reset: (event) => done(USE_CASES.resetPassphrase, event),
	remove: (event) => done(USE_CASES.removeLearner, event),
	set: (event) =>
		done(USE_CASES.setAssignment, event, (form) => ({
			class: event.params.class,
			...readTask(form, settable(event.url))
		})),
	change: (event) =>
		done(USE_CASES.changeAssignment, event, ({ assignment, ...form }) => {
			const { name, task } = readTask(form, settable(event.url));
			return { assignment, name, task };
		}),
	giveTime: (event) =>
		done(USE_CASES.giveTime, event, ({ minutes, ...form }) => ({ ...form, minutes: Number(minutes) })),
	endExam: (event) => done(USE_CASES.endExam, event, () => ({ assignment: event.params.class })),
	consent: (event) => done(USE_CASES.openAssignment, event, (form) => readConsent(form, event.params.class)),
	take: async (event) => {
		const result = await done(USE_CASES.removeAssignment, event);
		return 'done' in result ? redirect(303, event.url.pathname) : result;
	},
	removeClass: async (event) => {
		const result = await done(USE_CASES.removeClass, event, () => ({ class: event.params.class }));
		return 'done' in result ? toClass(event) : result;
	}
};
