import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Language } from '#shared/speech/language.ts';
import type { Method } from '#drafting/method.ts';
import { lessonMethod } from '../drafting/lesson-method.ts';

const PROJECT = fileURLToPath(new URL('../../', import.meta.url));
const LESSONS = path.join(PROJECT, 'lessons');

/** A lesson as it stands in its folder. */
export interface LessonFile {
	/** The folder's name, which also puts the lessons in order. */
	readonly id: string;
	readonly text: string;
}

/** The folders that hold a file of this name, in order. */
export const foldersHolding = (holding: string): readonly string[] =>
	readdirSync(LESSONS, { withFileTypes: true })
		.filter((entry) => entry.isDirectory() && readdirSync(path.join(LESSONS, entry.name)).includes(holding))
		.map(({ name }) => name)
		.sort();

/** Every lesson's English text, in order. */
export const lessonFiles = (): readonly LessonFile[] =>
	foldersHolding('en.md').map((id) => ({ id, text: readFileSync(path.join(LESSONS, id, 'en.md'), 'utf8') }));

/** Every lesson's text in another language, where there is one; its id says so. */
export const translations = (
	language: Language
): readonly (LessonFile & { readonly source: LessonFile })[] => {
	const holding = foldersHolding(`${language}.md`);
	return lessonFiles()
		.filter(({ id }) => holding.includes(id))
		.map((source) => ({
			source,
			id: `${source.id}/${language}.md`,
			text: readFileSync(path.join(LESSONS, source.id, `${language}.md`), 'utf8')
		}));
};

/** Every folder of lessons/, with or without a text. */
export const lessonFolders = (): readonly string[] => readdirSync(LESSONS).sort();

/** Every method of the lessons, by id. */
export const lessonMethods = (): ReadonlyMap<string, Method> =>
	new Map(foldersHolding('method.yaml').map((id) => [lessonMethod(id).id, lessonMethod(id)]));

/** The components that the build can import into a lesson. */
export const embeddable = (): readonly string[] => {
	const list = readFileSync(path.join(PROJECT, 'src/lib/ui/embeds/embeds.ts'), 'utf8');
	return [...list.matchAll(/default as (\w+)/g)].map(([, name = '']) => name);
};
