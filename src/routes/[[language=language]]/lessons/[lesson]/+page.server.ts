import type { Lesson } from '#course/course.ts';
import { neighbours } from '#course/neighbours.ts';
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
	const { previous, next } = neighbours(lessons, lesson);
	return {
		id,
		meta,
		steps,
		language,
		method: meta.method === undefined ? undefined : course.method(meta.method),
		garment: meta.garment === undefined ? undefined : course.garment(meta.garment),
		lessonOf: lessonOf(lessons, meta.method),
		previous: link(previous),
		next: link(next)
	};
};
