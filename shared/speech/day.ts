import { LOCALES, type Language } from './language.ts';

/** A day as a language writes it: `3 December 2026`, `3 de diciembre de 2026`. */
export const dayIn = (language: Language, at: number): string =>
	new Intl.DateTimeFormat(LOCALES[language], { dateStyle: 'long' }).format(at);

/** A moment as a language writes it: `3 Dec 2026, 14:05`. */
export const momentIn = (language: Language, at: number): string =>
	new Intl.DateTimeFormat(LOCALES[language], { dateStyle: 'medium', timeStyle: 'short' }).format(at);
