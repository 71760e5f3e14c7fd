import type { Lesson } from '#course/course.ts';
import type { LessonLink } from '#shared/lesson-meta.ts';
import type { LessonOf } from '#ui/embeds/lesson-of.ts';
import { courseAt, notFound } from '../../../course.server.ts';
import type { PageServerLoad } from './$types';

const linkTo = ({ id, meta, language }: Lesson): LessonLink => ({
	href: `/lessons/${id}`,
	title: meta.title,
	language
});
const link = (lesson: Lesson | undefined): LessonLink | undefined => lesson && linkTo(lesson);

/** The lessons before and after one. Those that stand beside the course are passed over, but from one to another of them. */
const neighbours = (
	lessons: readonly Lesson[],
	lesson: Lesson
): { previous?: LessonLink; next?: LessonLink } => {
	const chain = lessons.filter((each) => !each.meta.aside || lesson.meta.aside);
	const index = chain.indexOf(lesson);
	return { previous: link(chain[index - 1]), next: link(chain[index + 1]) };
};

/** The lesson of every step of a method. */
const lessonOf = (lessons: readonly Lesson[], method: string | undefined): LessonOf =>
	Object.fromEntries(
		lessons
			.filter(({ meta }) => method !== undefined && meta.method === method)
			.flatMap((lesson) => lesson.steps.map((step) => [step, linkTo(lesson)]))
	);

export const load: PageServerLoad = async ({ params, url }) => {
	const course = courseAt(url);
	const { lessons } = course;
	const lesson = lessons.find(({ id }) => id === params.lesson);
	if (!lesson) {
		const ids = lessons.map(({ id }) => id);
		return notFound(url, 'lesson', params.lesson, ids);
	}
	const { id, meta, steps, language } = lesson;
	return {
		id,
		meta,
		steps,
		language,
		method: meta.method === undefined ? undefined : course.method(meta.method),
		garment: meta.garment === undefined ? undefined : course.garment(meta.garment),
		lessonOf: lessonOf(lessons, meta.method),
		...neighbours(lessons, lesson)
	};
};
