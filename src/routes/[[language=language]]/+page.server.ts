import { DEMO_BODIES } from '#shared/bodies/index.ts';
import { pageWords } from '#shared/speech/catalogue.ts';
import { speechOf } from '#shared/speech/speech.ts';
import { courseAt } from '../course.server.ts';
import { wornBy } from '../worn.server.ts';
import type { PageServerLoad } from './$types';

/** The words beside the pictures come with the page: no lesson has to bring them. */
export const load: PageServerLoad = async ({ url }) => {
	const { language, lessons, methods, garments } = courseAt(url);
	const { pattern, looking } = speechOf(await pageWords(language), 'cm').words;
	const made = garments.map((garment) => ({
		id: garment.id,
		name: garment.name,
		pictures: DEMO_BODIES.filter(({ body }) => wornBy(garment, body)).map(({ id, body }) => ({
			body: id,
			words: pattern.wornBy({ garment: garment.name, name: body.name })
		}))
	}));
	const checked = methods.find(({ practised }) => practised);
	return {
		lessons,
		methods,
		made: { title: pattern.whatYouMake, about: pattern.followsBody, garments: made },
		others: [
			...(checked ? [{ href: `/drafts/${checked.id}/paper`, words: looking.checkPaper }] : []),
			{ href: '/class', words: looking.classes }
		],
		living: { title: looking.livingTitle, about: looking.livingAbout }
	};
};
