import type { checking } from './en/checking.ts';
import type { first } from './en/first.ts';
import type { later } from './en/later.ts';
import type { measuring } from './en/measuring.ts';
import type { school } from './en/school.ts';
import type { shell } from './en/shell.ts';
import type { Language } from './language.ts';

type Areas = typeof first & typeof later & typeof shell & typeof school & typeof checking & typeof measuring;

/** Every sentence of a language, by area. */
export type Words = { readonly [A in keyof Areas]: ReturnType<Areas[A]> };

/** The sentences of a language that are loaded. */
export interface Catalogue {
	readonly language: Language;
	readonly areas: Partial<Areas>;
}

const FIRST = {
	en: () => import('./en/first.ts'),
	es: () => import('./es/first.ts')
} as const satisfies Record<Language, () => Promise<{ first: typeof first }>>;

const LATER = {
	en: () => import('./en/later.ts'),
	es: () => import('./es/later.ts')
} as const satisfies Record<Language, () => Promise<{ later: typeof later }>>;

const SHELL = {
	en: () => import('./en/shell.ts'),
	es: () => import('./es/shell.ts')
} as const satisfies Record<Language, () => Promise<{ shell: typeof shell }>>;

/** What a lesson says from the start: all that a browser loads at first, in one language. */
export const firstWords = async (language: Language): Promise<Catalogue> => ({
	language,
	areas: (await FIRST[language]()).first
});

/** The same with what other pages, and a wrong answer, say. */
export const pageWords = async (language: Language): Promise<Catalogue> => ({
	language,
	areas: { ...(await FIRST[language]()).first, ...(await LATER[language]()).later }
});

/** Everything: for the command line. */
export const allWords = async (language: Language): Promise<Catalogue> => ({
	language,
	areas: { ...(await pageWords(language)).areas, ...(await SHELL[language]()).shell }
});
