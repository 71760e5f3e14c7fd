import type { Language } from './language.ts';

/**
 * What a thing is called, as data: its article is apart from its name, so that a sentence can say "the shoulder",
 * "The shoulder" or "the back's shoulder" (`el hombro`, `del hombro`) without cutting text.
 */
export interface Noun {
	readonly name: string;
	/** Absent for what is called without one: a point A, "hip level". */
	readonly article?: string;
	/** For the languages that bend other words to it. */
	readonly gender?: 'm' | 'f';
	readonly plural?: true;
}

/** The articles of each language, with what they tell of their noun. */
const ARTICLES: Readonly<Record<Language, Readonly<Record<string, Omit<Noun, 'name'>>>>> = {
	en: { the: {}, a: {}, an: {} },
	es: {
		el: { gender: 'm' },
		la: { gender: 'f' },
		los: { gender: 'm', plural: true },
		las: { gender: 'f', plural: true },
		un: { gender: 'm' },
		una: { gender: 'f' }
	}
};

/** Reads a noun as lesson files write it: its article, if it has one, and its name. */
export const readNoun = (text: string, language: Language): Noun => {
	const [first = '', ...rest] = text.split(' ');
	const known = rest.length > 0 ? ARTICLES[language][first] : undefined;
	return known ? { name: rest.join(' '), article: first, ...known } : { name: text };
};

const MOVED: Readonly<Record<Language, (noun: Noun) => string>> = {
	en: () => 'moved',
	es: ({ gender, plural }) => `movid${gender === 'f' ? 'a' : 'o'}${plural ? 's' : ''}`
};

/** What a thing is called once it was moved: "the side, moved"; "la pinza, movida". */
export const movedNoun = (noun: Noun, language: Language): Noun => ({
	...noun,
	name: `${noun.name}, ${MOVED[language](noun)}`
});
