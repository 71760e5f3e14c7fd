import { draftedIn, type Lesson } from '#course/course.ts';
import type { LessonLink } from '#shared/lesson-meta.ts';
import { courseAt } from '../../../course.server.ts';

/** The lessons of an assignment, for the pages on which they are set, chosen and drafted. */

/** A lesson that can be set: those that something is drafted in. */
export interface Settable extends Pick<Lesson, 'id' | 'steps'> {
	readonly title: string;
	readonly part: string;
}

/** All lessons that can be set, in the order of the course. */
export const settable = (url: URL): readonly Settable[] =>
	draftedIn(courseAt(url)).map(({ id, meta, steps }) => ({ id, steps, title: meta.title, part: meta.part }));

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
