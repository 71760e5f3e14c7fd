import { error } from '@sveltejs/kit';
import { course, type Course } from '#course/course.ts';
import { unknownName } from '#shared/reading.ts';
import { firstWords } from '#shared/speech/catalogue.ts';
import type { Kind } from '#shared/speech/en/input.ts';
import { LANGUAGES, languageOf, type Language } from '#shared/speech/language.ts';
import { speechOf } from '#shared/speech/speech.ts';

/** The course in every language, read once when the server starts: a broken file stops it by name. */

const FILES = import.meta.glob<string>('/lessons/*/*.{md,yaml}', {
	eager: true,
	query: '?raw',
	import: 'default'
});
const files = Object.fromEntries(Object.entries(FILES).map(([path, text]) => [path.slice(1), text]));

/** By language. What has no words in it is alike in each. */
export const COURSES = Object.fromEntries(
	LANGUAGES.map((language) => {
		const read = course(files, language);
		// Everything at once: whoever builds or starts the site is told, and no visitor.
		const { lessons, methods, garments } = read;
		return [language, { ...read, lessons, methods, garments }];
	})
) as Readonly<Record<Language, Course>>;

/** The course in the language of an address. */
export const courseAt = (url: URL): Course => COURSES[languageOf(url.pathname)];

/** Ends a request for a page of something that there is not, in the language of its address; the nearest name is told. */
export const notFound = async (
	url: URL,
	kind: Kind,
	name: string,
	names: readonly string[]
): Promise<never> => {
	const speech = speechOf(await firstWords(languageOf(url.pathname)), 'cm');
	return error(404, speech.words.desk.refused({ because: speech.tell(unknownName(kind, name, names)) }));
};
