import { error } from '@sveltejs/kit';
import type { Garment } from '#garment/garment.ts';
import { garmentById, LESSONS, type CataloguedLesson } from '../../../../catalogue.server.ts';
import type { PageServerLoad } from './$types';

/** The first lesson of the part of the course in which a garment is shown, or else its first draft is made. */
const firstLesson = ({ id, uses }: Garment): CataloguedLesson | undefined => {
	const [draft] = Object.values(uses);
	const own =
		LESSONS.find(({ meta }) => meta.garment === id) ??
		LESSONS.find(({ meta }) => draft !== undefined && meta.method === draft.id);
	return own && LESSONS.find(({ meta }) => meta.part === own.meta.part);
};

export const load: PageServerLoad = ({ params }) => {
	const garment = garmentById(params.garment);
	if (!garment) error(404, `There is no garment called "${params.garment}".`);
	const lesson = firstLesson(garment);
	return { garment, lesson: lesson && { href: `/lessons/${lesson.id}`, title: lesson.meta.title } };
};
