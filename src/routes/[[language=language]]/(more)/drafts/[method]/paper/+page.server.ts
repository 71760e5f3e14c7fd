import { courseAt, notFound } from '../../../../../course.server.ts';
import type { PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ params, url }) => {
	const course = courseAt(url);
	const method = course.method(params.method);
	if (!method) return notFound(url, 'draft', params.method, course.methodIds);
	const lesson = course.lessons.find(({ meta, steps }) => meta.method === method.id && steps.length > 0);
	return {
		method,
		/** Drafts for a body, but no first marks. */
		drafts: course.methods
			.filter(({ measurements }) => measurements.length > 0)
			.map(({ id, name }) => ({ id, name })),
		/** Where one goes on from the points on the screen. */
		lesson: lesson && `/lessons/${lesson.id}`
	};
};
