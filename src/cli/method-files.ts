import { readdir, readFile } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { parse } from 'yaml';
import { BadInput } from '#shared/bad-input.ts';
import { didYouMean } from '#shared/nearest-name.ts';
import type { Method } from '#drafting/method.ts';
import { readMethod } from '#drafting/read-method.ts';

const LESSONS = fileURLToPath(new URL('../../lessons/', import.meta.url));

/** A method file as parsed, not yet checked, and the place that errors about it name. */
interface MethodFile {
	readonly id: string;
	readonly place: string;
	readonly content: unknown;
}

const readOne = async (lesson: string): Promise<MethodFile> => {
	const place = `lessons/${lesson}/method.yaml`;
	const content: unknown = parse(await readFile(path.join(LESSONS, lesson, 'method.yaml'), 'utf8'));
	const id = content && typeof content === 'object' && 'id' in content ? String(content.id) : '';
	return { id, place, content };
};

const methodFiles = async (): Promise<readonly MethodFile[]> => {
	const files = await readdir(LESSONS, { recursive: true });
	const lessons = files
		.filter((file) => path.basename(file) === 'method.yaml')
		.map((file) => path.dirname(file));
	return Promise.all(lessons.sort().map(readOne));
};

/** Reads the method of this id from the lessons. Throws BadInput, naming the nearest, where there is none. */
export const methodOf = async (id: string): Promise<Method> => {
	const files = await methodFiles();
	const found = files.find((file) => file.id === id);
	if (found) return readMethod(found.content, found.place);
	const ids = files.map((file) => file.id);
	const known = `the methods are ${ids.join(', ')}`;
	throw new BadInput('draft', `there is no method "${id}"${didYouMean(id, ids)}; ${known}`);
};
