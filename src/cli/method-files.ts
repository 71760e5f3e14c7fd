import { readdir, readFile } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { parse } from 'yaml';
import { BadInput } from '#shared/bad-input.ts';
import { didYouMean } from '#shared/nearest-name.ts';
import type { Method } from '#drafting/method.ts';
import { methodFileId, methodLibrary, type ParsedMethodFile } from '#drafting/library.ts';

const LESSONS = fileURLToPath(new URL('../../lessons/', import.meta.url));

const readOne = async (lesson: string): Promise<ParsedMethodFile> => {
	const place = `lessons/${lesson}/method.yaml`;
	return { place, content: parse(await readFile(path.join(LESSONS, lesson, 'method.yaml'), 'utf8')) };
};

const methodFiles = async (): Promise<readonly ParsedMethodFile[]> => {
	const files = await readdir(LESSONS, { recursive: true });
	const lessons = files
		.filter((file) => path.basename(file) === 'method.yaml')
		.map((file) => path.dirname(file));
	return Promise.all(lessons.sort().map(readOne));
};

/** Reads the method of this id from the lessons, with those that it uses. Throws BadInput at `command`, naming the nearest, where there is none. */
export const methodOf = async (id: string, command: string): Promise<Method> => {
	const files = await methodFiles();
	const method = methodLibrary(files)(id);
	if (method) return method;
	const ids = files.map(methodFileId);
	const known = `the methods are ${ids.join(', ')}`;
	throw new BadInput(command, `there is no method "${id}"${didYouMean(id, ids)}; ${known}`);
};
