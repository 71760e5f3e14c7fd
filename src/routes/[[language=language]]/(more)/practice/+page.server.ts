import { courseAt } from '../../../course.server.ts';
import type { PageServerLoad } from './$types';

export const load: PageServerLoad = ({ url }) => {
	// A seed in the address gives the same set again: for a class that practises together.
	const seed = Number(url.searchParams.get('seed') ?? Number.NaN);
	return {
		methods: courseAt(url).methods.filter(({ practised }) => practised),
		seed: Number.isSafeInteger(seed) ? seed : undefined
	};
};
