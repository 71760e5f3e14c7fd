import type { Course, Lesson } from '#course/course.ts';
import { goesOnWith, neighbours } from '#course/neighbours.ts';
import type { LessonLink } from '#shared/lesson-meta.ts';
import { pageWords } from '#shared/speech/catalogue.ts';
import { speechOf } from '#shared/speech/speech.ts';
import type { LessonOf } from '#ui/embeds/lesson-of.ts';
import type { PartEnd } from '#ui/pages/lesson/part-end.ts';
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

/** Where to go from the end of a part: on in the course, to the garment that is made of it, to practice. Its words come with the page: no other lesson has to bring them. */
const partEnd = async (course: Course, lesson: Lesson): Promise<PartEnd | undefined> => {
	const { language, lessons, garments } = course;
	const { method = '', garment: shown } = lesson.meta;
	if (lesson.goodFor === undefined) return undefined;
	const { looking } = speechOf(await pageWords(language), 'cm').words;
	const next = goesOnWith(lessons, lesson);
	const made = garments.find(({ id, uses }) =>
		shown === undefined ? Object.values(uses).some((used) => used.id === method) : id === shown
	);
	return {
		goodFor: { title: looking.goodFor, text: lesson.goodFor },
		next: looking.next,
		ways: [
			...(next
				? [
						{
							href: `/lessons/${next.id}`,
							words: looking.nextPart({ part: next.meta.part, lesson: next.meta.title }),
							language: next.language
						}
					]
				: []),
			...(made
				? [{ href: `/patterns/${made.id}`, words: looking.patternOf({ garment: made.name }), language }]
				: []),
			...((course.method(method)?.measurements.length ?? 0) > 0
				? [{ href: `/drafts/${method}/paper`, words: looking.checkPaper, language }]
				: []),
			...(course.method(method)?.practised ? [{ href: '/practice', words: looking.practise, language }] : [])
		]
	};
};

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
		partEnd: await partEnd(course, lesson),
		previous: link(previous),
		next: link(next)
	};
};
