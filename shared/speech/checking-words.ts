import { pageWords, type Catalogue } from './catalogue.ts';
import type { checking } from './en/checking.ts';
import type { Language } from './language.ts';

/** Apart from the other catalogues, so that no lesson has to know of it. */
const CHECKING = {
	en: () => import('./en/checking.ts'),
	es: () => import('./es/checking.ts')
} as const satisfies Record<Language, () => Promise<{ checking: typeof checking }>>;

/** Some words with those of the page on which paper drafts are checked. */
export const withChecking = async (others: Catalogue): Promise<Catalogue> => ({
	...others,
	areas: { ...others.areas, ...(await CHECKING[others.language]()).checking }
});

/** What pages say, and the one on which paper drafts are checked. */
export const checkingWords = async (language: Language): Promise<Catalogue> =>
	withChecking(await pageWords(language));
