/** The languages that everything is said in. English is the one that the others are held against. */
export const LANGUAGES = ['en', 'es'] as const;
export type Language = (typeof LANGUAGES)[number];

export const isLanguage = (text: string | undefined): text is Language =>
	LANGUAGES.some((each) => each === text);

/** The locale whose numbers, lists and plurals a language uses: British English writes "A, B and C". */
export const LOCALES: Readonly<Record<Language, string>> = { en: 'en-GB', es: 'es' };
