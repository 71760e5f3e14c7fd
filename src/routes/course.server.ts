import { course, type Course } from '#course/course.ts';
import { LANGUAGES, languageOf, type Language } from '#shared/speech/language.ts';

/** The course in every language, read once when the server starts: a broken file stops it by name. */

const FILES = import.meta.glob<string>('/lessons/*/*.{md,yaml}', {
	eager: true,
	query: '?raw',
	import: 'default'
});
const files = Object.fromEntries(Object.entries(FILES).map(([path, text]) => [path.slice(1), text]));

const COURSES = Object.fromEntries(
	LANGUAGES.map((language) => {
		const read = course(files, language);
		// Everything at once: whoever builds or starts the site is told, and no visitor.
		void [read.lessons, read.methods, read.garments];
		return [language, read];
	})
) as Readonly<Record<Language, Course>>;

/** The course in the language of an address. */
export const courseAt = (url: URL): Course => COURSES[languageOf(url.pathname)];
