import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parse } from 'yaml';
import type { Method } from '#drafting/method.ts';
import { methodFileId, methodLibrary, type ParsedMethodFile } from '#drafting/library.ts';

const FOLDERS = fileURLToPath(new URL('../../lessons/', import.meta.url));
/** Every lesson that brings a method: methods use each other. */
const LESSONS = readdirSync(FOLDERS)
	.filter((lesson) => existsSync(`${FOLDERS}${lesson}/method.yaml`))
	.sort();

const parsedFile = (lesson: string): ParsedMethodFile => {
	const place = `lessons/${lesson}/method.yaml`;
	return { place, content: parse(readFileSync(`${FOLDERS}${lesson}/method.yaml`, 'utf8')) as unknown };
};

/** All of them, read once. */
const FILES = new Map(LESSONS.map((lesson) => [lesson, parsedFile(lesson)]));
const find = methodLibrary([...FILES.values()]);

/** The method of a lesson's folder, such as `40-back-levels`. */
export const lessonMethod = (lesson: string): Method => {
	const file = FILES.get(lesson) ?? parsedFile(lesson);
	const method = find(methodFileId(file));
	if (!method) throw new Error(`${file.place} holds no method`);
	return method;
};

/** What a method's file holds, as parsed. */
export const fileOf = (id: string): unknown =>
	[...FILES.values()].find((file) => methodFileId(file) === id)?.content;

/** The method of this id. */
export const methodOf = (id: string): Method => {
	const method = find(id);
	if (!method) throw new Error(`there is no method ${id}`);
	return method;
};

/** The front block, as the lessons teach it. */
export const frontBlock = (): Method => lessonMethod('50-front-levels');

/** The back block, as the lessons teach it. */
export const backBlock = (): Method => lessonMethod('40-back-levels');
