/** The languages that everything is said in. English is the one that the others are held against. */
export const LANGUAGES = ['en', 'es'] as const;
export type Language = (typeof LANGUAGES)[number];

export const isLanguage = (text: string | undefined): text is Language =>
	LANGUAGES.some((each) => each === text);

/** The locale whose numbers, lists and plurals a language uses: British English writes "A, B and C". */
export const LOCALES: Readonly<Record<Language, string>> = { en: 'en-GB', es: 'es' };

/** What each language calls itself, for whoever looks for their own. */
export const LANGUAGE_NAMES: Readonly<Record<Language, string>> = { en: 'English', es: 'Español' };

/** The language that addresses without one are in: what they were before there was another. */
const UNMARKED: Language = 'en';

/** The first part of an address where it is a language's, as `es` in `/es/practice`. */
export const isMarked = (text: string | undefined): text is Language => isLanguage(text) && text !== UNMARKED;

/** The language of an address of this site, by its path. */
export const languageOf = (path: string): Language => {
	const [, first] = path.split(/[/?#]/);
	return isMarked(first) ? first : UNMARKED;
};

/** The same page in a language: `/practice` is `/es/practice` in Spanish, and the other way round. */
export const addressIn = (language: Language, path: string): string => {
	const marked = languageOf(path);
	const bare = marked === UNMARKED ? path : path.slice(marked.length + 1).replace(/^(?!\/)/, '/');
	return language === UNMARKED ? bare : `/${language}${bare.replace(/^\/(?=$|[#?])/, '')}`;
};

/** The language that a browser asks for first among those that there are, by its Accept-Language; none where it asks for no such. */
export const askedFor = (accepted: string): Language | undefined =>
	accepted
		.split(',')
		.map((each) => {
			const [tag = '', ...others] = each.trim().toLowerCase().split(';');
			const weight = others.find((other) => other.trim().startsWith('q='));
			return {
				language: tag.split('-')[0],
				weight: weight === undefined ? 1 : Number(weight.trim().slice(2))
			};
		})
		.filter(({ weight }) => weight > 0)
		.sort((a, b) => b.weight - a.weight)
		.map(({ language }) => language)
		.find(isLanguage);
