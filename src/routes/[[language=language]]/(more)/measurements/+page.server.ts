import { courseAt } from '../../../course.server.ts';
import type { PageServerLoad } from './$types';

export const load: PageServerLoad = ({ url }) => ({
	makings: courseAt(url).garments.map(({ name, uses }) => ({ name, methods: Object.values(uses) }))
});
