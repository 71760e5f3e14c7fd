import { courseAt } from '../course.server.ts';
import type { PageServerLoad } from './$types';

export const load: PageServerLoad = ({ url }) => {
	const { lessons, methods } = courseAt(url);
	return { lessons, methods };
};
