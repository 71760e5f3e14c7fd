import { practised } from '#practice/exercises/seams.ts';
import { courseAt } from '../../../course.server.ts';
import type { PageServerLoad } from './$types';

export const load: PageServerLoad = ({ url }) => {
	const { methods, garments } = courseAt(url);
	return {
		methods: methods.filter((method) => method.practised).map((method) => practised(method, garments))
	};
};
