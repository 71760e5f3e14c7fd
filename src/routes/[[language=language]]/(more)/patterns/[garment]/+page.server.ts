import type { Course, Lesson } from '#course/course.ts';
import type { Garment } from '#garment/garment.ts';
import { courseAt, notFound } from '../../../../course.server.ts';
import type { PageServerLoad } from './$types';

/** The first lesson of the part of the course in which a garment is shown, or else its first draft is made. */
const firstLesson = ({ lessons }: Course, { id, uses }: Garment): Lesson | undefined => {
	const [draft] = Object.values(uses);
	const own =
		lessons.find(({ meta }) => meta.garment === id) ??
		lessons.find(({ meta }) => draft !== undefined && meta.method === draft.id);
	return own && lessons.find(({ meta }) => meta.part === own.meta.part);
};

export const load: PageServerLoad = async ({ params, url }) => {
	const course = courseAt(url);
	const garment = course.garment(params.garment);
	if (!garment) return notFound(url, 'garment', params.garment, course.garmentIds);
	const lesson = firstLesson(course, garment);
	return { garment, lesson: lesson && `/lessons/${lesson.id}` };
};
