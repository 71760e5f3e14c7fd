import { readFile, realpath, rename, rm, stat, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import path from 'node:path';
import { BadInput } from '#shared/bad-input.ts';
import { message } from '#shared/speech/message.ts';
import { systemCode } from './input-file.ts';

/** The date that files carry where none was given: the same for everybody, so that the same input gives the same bytes. */
export const NO_DATE = '2000-01-01';

/** The typeface that is put into PDF files: the lessons' own. */
export const fontFile = (): Promise<Uint8Array> =>
	readFile(
		createRequire(import.meta.url).resolve('@fontsource/literata/files/literata-latin-400-normal.woff')
	);

/** Writes at a place. Throws BadInput, naming the place, where the system does not let it. */
export const writing = async <T>(place: string, write: () => Promise<T>): Promise<T> => {
	try {
		return await write();
	} catch (problem) {
		const code = systemCode(problem);
		if (code === undefined) throw problem;
		throw new BadInput(place, message('command', 'cannotWrite', { code }));
	}
};

/** The file that a name stands for: a link is followed, so that it is not replaced; undefined for what is no file, such as a pipe. */
const target = async (to: string): Promise<string | undefined> => {
	const there = await stat(to).catch(() => undefined);
	if (!there) return to;
	return there.isFile() ? realpath(to) : undefined;
};

/**
 * Writes a whole file or none: `write` is given a file beside it first, so that a full disk leaves what was there; it is to have all of it
 * on the disk. Throws BadInput, naming the place.
 */
export const wholeOrNone = <T>(to: string, write: (file: string) => Promise<T>): Promise<T> =>
	writing(to, async () => {
		const file = await target(to);
		if (file === undefined) return write(to);
		const beside = path.join(path.dirname(file), `.${process.pid}.part`);
		try {
			const result = await write(beside);
			await rename(beside, file);
			return result;
		} catch (problem) {
			await rm(beside, { force: true });
			throw problem;
		}
	});

/** Writes these bytes as a file, whole or not at all. Throws BadInput, naming the place. */
export const writeWhole = (to: string, bytes: Uint8Array): Promise<void> =>
	wholeOrNone(to, (file) => writeFile(file, bytes, { flush: true }));
