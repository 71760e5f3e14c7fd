import { allWords, pageWords, type Catalogue } from './catalogue.ts';
import type { school } from './en/school.ts';
import type { Language } from './language.ts';

/** Apart from the other catalogues, so that no lesson has to know of it. */
const SCHOOL = {
	en: () => import('./en/school.ts'),
	es: () => import('./es/school.ts')
} as const satisfies Record<Language, () => Promise<{ school: typeof school }>>;

const withSchool = async (others: Catalogue): Promise<Catalogue> => ({
	...others,
	areas: { ...others.areas, ...(await SCHOOL[others.language]()).school }
});

/** What pages say, and those of a school's classes: for a browser. */
export const schoolWords = async (language: Language): Promise<Catalogue> =>
	withSchool(await pageWords(language));

/** Everything: for the server, which also says what is wrong with what came in. */
export const serverWords = async (language: Language): Promise<Catalogue> =>
	withSchool(await allWords(language));
