import { error } from '@sveltejs/kit';
import { didYouMean } from '#shared/nearest-name.ts';
import type { LessonLink } from '#shared/lesson-meta.ts';
import type { LessonOf } from '#ui/embeds/lesson-of.ts';
import { garmentById, LESSONS, methodById, type CataloguedLesson } from '../../../catalogue.server.ts';
import type { PageServerLoad } from './$types';

const link = (lesson: CataloguedLesson | undefined): LessonLink | undefined =>
	lesson && { href: `/lessons/${lesson.id}`, title: lesson.meta.title };

/** The lesson of every step of a method. */
const lessonOf = (method: string | undefined): LessonOf =>
	Object.fromEntries(
		LESSONS.filter(({ meta }) => method !== undefined && meta.method === method).flatMap((lesson) =>
			lesson.steps.map((step) => [step, { href: `/lessons/${lesson.id}`, title: lesson.meta.title }])
		)
	);

export const load: PageServerLoad = ({ params }) => {
	const index = LESSONS.findIndex(({ id }) => id === params.lesson);
	const lesson = LESSONS[index];
	if (!lesson) {
		const near = didYouMean(
			params.lesson,
			LESSONS.map(({ id }) => id)
		);
		error(404, `There is no lesson "${params.lesson}"${near}.`);
	}
	return {
		id: lesson.id,
		meta: lesson.meta,
		steps: lesson.steps,
		method: lesson.meta.method === undefined ? undefined : methodById(lesson.meta.method),
		garment: lesson.meta.garment === undefined ? undefined : garmentById(lesson.meta.garment),
		lessonOf: lessonOf(lesson.meta.method),
		previous: link(LESSONS[index - 1]),
		next: link(LESSONS[index + 1])
	};
};
