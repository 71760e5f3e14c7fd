import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
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

const folders = (holding: string): readonly string[] =>
	readdirSync(LESSONS, { withFileTypes: true })
		.filter((entry) => entry.isDirectory() && readdirSync(path.join(LESSONS, entry.name)).includes(holding))
		.map(({ name }) => name)
		.sort();

/** Every lesson's English text, in order. */
export const lessonFiles = (): readonly LessonFile[] =>
	folders('en.md').map((id) => ({ id, text: readFileSync(path.join(LESSONS, id, 'en.md'), 'utf8') }));

/** Every folder of lessons/, with or without a text. */
export const lessonFolders = (): readonly string[] => readdirSync(LESSONS).sort();

/** Every method of the lessons, by id. */
export const lessonMethods = (): ReadonlyMap<string, Method> =>
	new Map(folders('method.yaml').map((id) => [lessonMethod(id).id, lessonMethod(id)]));

/** The components that the build imports into every lesson. */
export const embeddable = (): readonly string[] => {
	const listed = (file: string, pattern: RegExp): string[] =>
		[...readFileSync(path.join(PROJECT, file), 'utf8').matchAll(pattern)].map(([, name = '']) => name);
	const exported = listed('src/lib/ui/lesson/embeds.ts', /default as (\w+)/g);
	const imported = listed('svelte.config.js', /import \{ ([\w, ]+) \} from '#ui\/lesson\/embeds\.ts'/g)
		.flatMap((names) => names.split(', '))
		.sort();
	if (imported.join() !== [...exported].sort().join()) {
		throw new Error(
			`svelte.config.js imports ${imported.join(', ')}, and embeds.ts has ${exported.join(', ')}`
		);
	}
	return exported;
};
