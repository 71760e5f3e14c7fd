import { courseAt, notFound } from '../../../../../course.server.ts';
import type { PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ params, url }) => {
	const course = courseAt(url);
	const method = course.method(params.method);
	return method ? { method } : notFound(url, 'draft', params.method, course.methodIds);
};
