import { error } from '@sveltejs/kit';
import { courseAt } from '../../../../../course.server.ts';
import type { PageServerLoad } from './$types';

export const load: PageServerLoad = ({ params, url }) => {
	const method = courseAt(url).method(params.method);
	if (!method) error(404, `There is no draft called "${params.method}".`);
	return { method };
};
