import { parse } from 'yaml';
import { methodFileId, methodLibrary } from '#drafting/library.ts';
import type { Method } from '#drafting/method.ts';
import type { Garment } from '#garment/garment.ts';
import { readGarment } from '#garment/read-garment.ts';
import { lessonMetaSchema, type LessonMeta } from '#shared/lesson-meta.ts';

/** The lessons and methods that there are, read once when the server starts: a broken one stops it by name. */

const METAS = import.meta.glob('/lessons/*/en.md', { eager: true, import: 'metadata' });
const TEXTS = import.meta.glob<string>('/lessons/*/en.md', { eager: true, query: '?raw', import: 'default' });
const METHODS = import.meta.glob<string>('/lessons/*/method.yaml', {
	eager: true,
	query: '?raw',
	import: 'default'
});

/** A lesson as the catalogue knows it. */
export interface CataloguedLesson {
	/** The name of its folder, and its address. */
	readonly id: string;
	readonly meta: LessonMeta;
	/** The steps embedded in its text, in order. */
	readonly steps: readonly string[];
}

const folderOf = (path: string): string => path.split('/').at(-2) ?? path;
const stepsIn = (text: string): string[] =>
	[...text.matchAll(/<Step name="([^"]+)">/g)].map(([, name = '']) => name);

/** Every lesson, in the order of its folders' numbers. */
export const LESSONS: readonly CataloguedLesson[] = Object.keys(METAS)
	.sort()
	.map((path) => {
		const meta = lessonMetaSchema.safeParse(METAS[path]);
		if (!meta.success) throw new Error(`${path}: front matter: ${meta.error.message}`);
		return { id: folderOf(path), meta: meta.data, steps: stepsIn(TEXTS[path] ?? '') };
	});

const files = Object.entries(METHODS).map(([path, text]) => ({
	place: path.slice(1),
	content: parse(text) as unknown
}));
const find = methodLibrary(files);
const methods = new Map(
	files.flatMap((file) => find(methodFileId(file)) ?? []).map((method) => [method.id, method])
);

/** The method of this name, if there is one. */
export const methodById = (id: string): Method | undefined => methods.get(id);

const GARMENT_FILES = import.meta.glob<string>('/lessons/*/garment.yaml', {
	eager: true,
	query: '?raw',
	import: 'default'
});

/** Every garment, in the order of its lessons. */
export const GARMENTS: readonly Garment[] = Object.entries(GARMENT_FILES)
	.sort(([a], [b]) => (a < b ? -1 : 1))
	.map(([path, text]) => readGarment(parse(text), path.slice(1), find));

/** The garment of this name, if there is one. */
export const garmentById = (id: string): Garment | undefined => GARMENTS.find((each) => each.id === id);

/** Every method, in the order of its lessons. */
export const METHODS_IN_ORDER: readonly Method[] = [...methods.values()];
