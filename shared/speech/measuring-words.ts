import { pageWords, type Catalogue } from './catalogue.ts';
import type { measuring } from './en/measuring.ts';
import type { Language } from './language.ts';

/** Apart from the other catalogues, so that no lesson has to know of it. */
const MEASURING = {
	en: () => import('./en/measuring.ts'),
	es: () => import('./es/measuring.ts')
} as const satisfies Record<Language, () => Promise<{ measuring: typeof measuring }>>;

/** What pages say, and the page of measurements. */
export const measuringWords = async (language: Language): Promise<Catalogue> => {
	const others = await pageWords(language);
	return { ...others, areas: { ...others.areas, ...(await MEASURING[language]()).measuring } };
};
