import { courseAt } from '../../../course.server.ts';
import type { PageServerLoad } from './$types';

export const load: PageServerLoad = ({ url }) => ({
	methods: courseAt(url).methods.filter(({ practised }) => practised)
});
