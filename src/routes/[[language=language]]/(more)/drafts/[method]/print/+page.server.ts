import { error } from '@sveltejs/kit';
import { methodById } from '../../../../../catalogue.server.ts';
import type { PageServerLoad } from './$types';

export const load: PageServerLoad = ({ params }) => {
	const method = methodById(params.method);
	if (!method) error(404, `There is no draft called "${params.method}".`);
	return { method };
};
