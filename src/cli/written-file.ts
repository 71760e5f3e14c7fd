import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { BadInput } from '#shared/bad-input.ts';

/** The date that files carry where none was given: the same for everybody, so that the same input gives the same bytes. */
export const NO_DATE = '2000-01-01';

/** The typeface that is put into PDF files: the lessons' own. */
export const fontFile = (): Promise<Uint8Array> =>
	readFile(
		createRequire(import.meta.url).resolve('@fontsource/literata/files/literata-latin-400-normal.woff')
	);

/** Why a file could not be written, for the cases that a person can put right. */
const REASONS: Readonly<Record<string, string>> = {
	ENOENT: 'there is no such folder',
	EISDIR: 'this is a folder, not a file',
	ENOTDIR: 'a part of this path is not a folder',
	EEXIST: 'this is a file, not a folder',
	EACCES: 'this user may not write here',
	EPERM: 'this user may not write here',
	EROFS: 'nothing can be written here',
	ENOSPC: 'the disk is full',
	ENAMETOOLONG: 'this name is too long'
};

/** Writes at a place. Throws BadInput, naming the place, where a person can put right what went wrong. */
export const writing = async <T>(place: string, write: () => Promise<T>): Promise<T> => {
	try {
		return await write();
	} catch (problem) {
		const reason = problem instanceof Error && 'code' in problem ? REASONS[String(problem.code)] : undefined;
		if (reason === undefined) throw problem;
		throw new BadInput(place, reason);
	}
};
