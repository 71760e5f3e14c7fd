import { addressIn, askedFor, isLanguage, languageOf, type Language } from './language.ts';

/** Under which name the choice of a language is kept in the browser, and for how many seconds: a year. */
export const LANGUAGE_COOKIE = 'language';
export const LANGUAGE_KEPT_FOR = 365 * 24 * 60 * 60;

/** What programs ask for, and pages do not: it stands at one address in all languages. */
const FOR_PROGRAMS = /^\/(health|ready|lti)(\/|$)/;

/** What decides in which language a page is shown. */
export interface AskedPage {
	readonly path: string;
	/** What stands in the address from its question mark on; empty where there is none. */
	readonly search: string;
	/** The language that was chosen earlier, as the browser keeps it. */
	readonly chosen: string | undefined;
	/** The Accept-Language of the browser. */
	readonly accepted: string;
}

/** Where a request is sent on to, and the language that was chosen by it, if one was. */
export interface SentOn {
	readonly to: string;
	readonly chosen?: Language;
}

/**
 * Where a request for a page is sent on to, if anywhere. `?language=es` chooses a language, which is to be kept; an
 * address without a language goes to the one that was chosen, or else to the one that the browser asks for.
 */
export const sentOnTo = ({ path, search, chosen, accepted }: AskedPage): SentOn | undefined => {
	if (FOR_PROGRAMS.test(path)) return undefined;
	const others = new URLSearchParams(search);
	const wanted = others.get('language') ?? undefined;
	others.delete('language');
	// An address that began with two slashes would be another site's.
	const inLanguage = (language: Language): string =>
		addressIn(language, path).replace(/^[/\\]*/, '/') + (others.size > 0 ? `?${others.toString()}` : '');
	if (isLanguage(wanted)) return { to: inLanguage(wanted), chosen: wanted };
	const language = isLanguage(chosen) ? chosen : askedFor(accepted);
	return languageOf(path) === 'en' && language !== undefined && language !== 'en'
		? { to: inLanguage(language) }
		: undefined;
};
