import { redirect } from '@sveltejs/kit';
import { EXERCISES } from '#shared/hand-in-limits.ts';
import { USE_CASES } from '#server/use-cases/all.ts';
import { asked, callerAt, done, entered, forgotten, toClass, type Told } from '../../../classes.server.ts';
import {
	deskFor,
	methodsFor,
	papersFor,
	planned,
	practisedFor,
	settable,
	settableDrafts,
	settableGarments
} from './assigned.server.ts';
import { readConsent, readTask } from './task-form.server.ts';
import { draftIn, missedIn, namesIn, readMark } from './teaching.server.ts';
import type { Actions, PageServerLoad, PageServerLoadEvent, RequestEvent } from './$types';

/** What is told of something that is set to whoever does it, or looks at it as they do. */
type Work =
	| Awaited<ReturnType<typeof USE_CASES.openAssignment.run>>
	| Awaited<ReturnType<typeof USE_CASES.previewAssignment.run>>;

/** The page is another for each person, so it cannot be made beforehand. */
export const prerender = false;

/** What a class has handed in for an assignment: what was said of each step stays here. */
const marksOf = async (event: PageServerLoadEvent, assignment: string) => {
	const { learners, ...found } = await asked(USE_CASES.readAssignment, event, { assignment });
	return {
		shows: 'marks' as const,
		found: {
			...found,
			learners: learners.map(({ seen, ...learner }) => ({
				...learner,
				seen: seen && { late: seen.late, total: seen.total, current: seen.current }
			}))
		},
		lessons: settable(event.url),
		garments: settableGarments(event.url),
		drafts: settableDrafts(event.url),
		names: namesIn(event.url, found.lessons),
		missteps: missedIn(event.url, await asked(USE_CASES.classMissteps, event, { assignment }))
	};
};

/** What one learner has handed in for an assignment. */
const draftOf = async (event: PageServerLoadEvent, assignment: string, learner: string) => {
	const attempt = event.url.searchParams.get('attempt') ?? undefined;
	const { seen, events, ...found } = await asked(USE_CASES.readWork, event, { assignment, learner, attempt });
	const counted = (method: string | undefined) =>
		(seen?.steps ?? [])
			.filter((each) => each.method === method)
			.map(({ step, mark, tries, help }) => ({ step, mark, tries, help }));
	if (found.practice)
		return {
			shows: 'answers' as const,
			found: {
				...found,
				counted: counted(EXERCISES),
				events: events.flatMap(({ done, ...event }) => ('exercise' in done ? [{ ...event, done }] : []))
			},
			methods: practisedFor(event.url, found.practice.methods)
		};
	const drawn = events.flatMap(({ done, ...event }) => ('method' in done ? [{ ...event, done }] : []));
	const draft = draftIn(event.url, { asked: found.asked, events: drawn });
	return {
		shows: 'draft' as const,
		draft,
		found: { ...found, events: drawn, counted: counted(draft?.method.id) }
	};
};

/** What a class is shown of an assignment on a board. */
const boardOf = async (event: PageServerLoadEvent, assignment: string) => {
	const { asked: set, ...found } = await asked(USE_CASES.readBoard, event, { assignment });
	const draft = draftIn(event.url, { asked: set, events: [] });
	const own = set.filter(({ method }) => method === draft?.method.id);
	const clouds = Object.assign({}, ...own.map((each) => each.clouds)) as (typeof set)[number]['clouds'];
	return { shows: 'board' as const, found, draft, clouds };
};

/** What marking an assignment anew would change. */
const remarkingOf = async (event: PageServerLoadEvent, assignment: string) => {
	const found = await asked(USE_CASES.previewRemarking, event, { assignment });
	return { shows: 'remarking' as const, found, names: namesIn(event.url, found.lessons) };
};

/** What whoever does something that was set works at: a lesson of it, or its exercises. */
const workOf = (url: URL, work: Work, back: string) => {
	const { practice, ...rest } = work;
	if (practice) {
		const first = Number(url.searchParams.get('exercise') ?? Number.NaN);
		const methods = practisedFor(url, practice.methods);
		return {
			shows: 'practise' as const,
			...{ work: rest, methods, back },
			first: Number.isSafeInteger(first) ? first : undefined
		};
	}
	return {
		shows: 'work' as const,
		work,
		back,
		...deskFor(url, work.lessons, url.searchParams.get('lesson')),
		...papersFor(url, work, url.searchParams.get('paper'))
	};
};

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
			garments: settableGarments(url),
			drafts: settableDrafts(url)
		};
	const learner = url.searchParams.get('learner');
	if (learner !== null) return draftOf(event, assignment, learner);
	if (url.searchParams.has('board')) return boardOf(event, assignment);
	if (url.searchParams.has('remark')) return remarkingOf(event, assignment);
	if (!url.searchParams.has('preview')) return marksOf(event, assignment);
	const work = await asked(USE_CASES.previewAssignment, event, { assignment });
	return workOf(url, work, `/class/${inClass}?assignment=${assignment}`);
};

/** What a learner sees of something that their class was set. */
const forLearner = async (event: PageServerLoadEvent, assignment: string) => {
	const { url } = event;
	const attempt = url.searchParams.get('attempt') ?? undefined;
	return workOf(url, await asked(USE_CASES.openAssignment, event, { assignment, attempt }), '/class');
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
	remark: (event) => done(USE_CASES.applyRemarking, event),
	override: (event) => done(USE_CASES.overrideMark, event, readMark),
	takeMarkBack: (event) => done(USE_CASES.takeMarkBack, event),
	comment: (event) => done(USE_CASES.addComment, event),
	removeComment: (event) => done(USE_CASES.removeComment, event),
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
	beginAnew: async (event) => {
		const result = await done(USE_CASES.beginAnew, event, ({ after }) => ({
			...{ assignment: event.params.class, after }
		}));
		return 'done' in result ? redirect(303, event.url.pathname) : result;
	},
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
