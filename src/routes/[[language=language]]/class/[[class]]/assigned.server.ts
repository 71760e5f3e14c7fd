import { draftedIn, type Lesson } from '#course/course.ts';
import type { LessonLink } from '#shared/lesson-meta.ts';
import type { Method } from '#drafting/method.ts';
import type { Practised } from '#practice/exercises/exercise.ts';
import { practised } from '#practice/exercises/seams.ts';
import { courseAt } from '../../../course.server.ts';

/** The lessons of an assignment, for the pages on which they are set, chosen and drafted. */

/** A lesson that can be set: those that something is drafted in. */
export interface Settable extends Pick<Lesson, 'id' | 'steps'> {
	readonly title: string;
	readonly part: string;
	/** The garments that its draft is a part of. */
	readonly garments: readonly string[];
}

/** Whether a draft is, or leans on, another. */
const leansOn = (draft: Method, id: string): boolean =>
	draft.id === id || Object.values(draft.uses).some((used) => leansOn(used, id));

/** All lessons that can be set, in the order of the course. */
export const settable = (url: URL): readonly Settable[] => {
	const course = courseAt(url);
	return draftedIn(course).map(({ id, meta, steps }) => ({
		...{ id, steps, title: meta.title, part: meta.part },
		garments: course.garments
			.filter(({ uses }) => Object.values(uses).some((draft) => leansOn(draft, meta.method ?? '')))
			.map((garment) => garment.id)
	}));
};

/** The garments that can be set as a whole. */
export const settableGarments = (url: URL): readonly { readonly id: string; readonly name: string }[] =>
	courseAt(url).garments.map(({ id, name }) => ({ id, name }));

/** One lesson of an assignment, as its desk needs it; undefined where it is none of them. */
export const deskFor = (
	url: URL,
	assigned: readonly { readonly id: string; readonly steps: readonly string[] }[],
	wanted: string | null
) => {
	const { lessons, method, garment } = courseAt(url);
	const link = (id: string | undefined): LessonLink | undefined => {
		const lesson = lessons.find((each) => each.id === id);
		const at = new URLSearchParams(url.searchParams);
		at.set('lesson', id ?? '');
		return (
			lesson && {
				href: `${url.pathname}?${at.toString()}`,
				title: lesson.meta.title,
				language: lesson.language
			}
		);
	};
	const links = assigned.flatMap(({ id }) => link(id) ?? []);
	const at = assigned.findIndex(({ id }) => id === wanted);
	const lesson = lessons.find(({ id }) => at >= 0 && id === wanted);
	if (!lesson) return { links, desk: undefined };
	const { id, meta, language } = lesson;
	const lessonOf = assigned.flatMap(({ id: each, steps }) => {
		const [own, to] = [lessons.find((one) => one.id === each), link(each)];
		return own?.meta.method === meta.method && to ? steps.map((step) => [step, to] as const) : [];
	});
	return {
		links,
		desk: {
			...{ id, meta, language },
			steps: assigned[at]?.steps ?? [],
			method: method(meta.method ?? ''),
			garment: meta.garment === undefined ? undefined : garment(meta.garment),
			lessonOf: Object.fromEntries(lessonOf),
			previous: links[at - 1],
			next: links[at + 1]
		}
	};
};

/** The drafts that can be practised, in the language of an address: all, or those of some ids, with the seams that can be trued in them. */
export const practisedFor = (url: URL, ids?: readonly string[]): readonly Practised[] => {
	const { methods, garments } = courseAt(url);
	return methods
		.filter((method) => method.practised && (ids?.includes(method.id) ?? true))
		.map((method) => practised(method, garments));
};

/** What of them the form to set exercises shows. */
export const settableDrafts = (url: URL): readonly { readonly id: string; readonly name: string }[] =>
	courseAt(url)
		.methods.filter((method) => method.practised)
		.map(({ id, name }) => ({ id, name }));

/** The drafts of an assignment that can be checked on paper, and the one that is; none in an exam, since what is right is told. */
export const papersFor = (
	url: URL,
	{ lessons: assigned, mode }: { lessons: readonly { readonly id: string }[]; mode: 'practice' | 'exam' },
	wanted: string | null
) => {
	const { lessons, method } = courseAt(url);
	const to = (name: string, value: string): string => {
		const at = new URLSearchParams(url.searchParams);
		for (const other of ['lesson', 'paper']) at.delete(other);
		at.set(name, value);
		return `${url.pathname}?${at.toString()}`;
	};
	const own = lessons.filter(({ id }) => assigned.some((each) => each.id === id));
	const ids = [...new Set(own.flatMap(({ meta }) => meta.method ?? []))];
	const drafts = mode === 'exam' ? [] : ids.flatMap((id) => method(id) ?? []);
	const paper = drafts.find(({ id }) => id === wanted);
	const first = own.find(({ meta }) => meta.method === paper?.id);
	return {
		papers: drafts.map(({ id, name }) => ({ href: to('paper', id), name })),
		paper: paper && { method: paper, lesson: first && to('lesson', first.id) }
	};
};

/** Methods by their ids, in the language of an address. */
export const methodsFor = (url: URL, ids: readonly string[]): readonly Method[] =>
	ids.flatMap((id) => courseAt(url).method(id) ?? []);

/** What of a lesson a plan tells. */
export interface PlannedLesson {
	readonly id: string;
	readonly meta: Lesson['meta'];
	readonly language: Lesson['language'];
	/** The measurements that its draft is worked from. */
	readonly measurements: Method['measurements'];
	/** Whether anything is drafted in it. */
	readonly drafts: boolean;
}

const plannedOf =
	({ method }: ReturnType<typeof courseAt>) =>
	({ id, meta, language, steps }: Lesson): PlannedLesson => ({
		...{ id, meta, language },
		measurements: steps.length === 0 ? [] : (method(meta.method ?? '')?.measurements ?? []),
		drafts: steps.length > 0
	});

/** The lessons that a class was set, and the next of the course after the last of them, as far as the next that is drafted in. */
export const planned = (
	url: URL,
	set: readonly { readonly id: string }[]
): { readonly had: readonly PlannedLesson[]; readonly next: readonly PlannedLesson[] } => {
	const course = courseAt(url);
	const own = course.lessons.filter(({ meta }) => meta.aside !== true);
	const isSet = ({ id }: Lesson): boolean => set.some((each) => each.id === id);
	const after = own.slice(own.findLastIndex(isSet) + 1);
	const upto = after.findIndex(({ steps }) => steps.length > 0);
	const of = plannedOf(course);
	return { had: course.lessons.filter(isSet).map(of), next: after.slice(0, upto + 1).map(of) };
};
