import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { text as allOf } from 'node:stream/consumers';
import { BadInput } from '#shared/bad-input.ts';

/** What a file holds, and the words by which errors and drafts speak of it. */
export interface InputFile {
	readonly text: string;
	/** Begins every error about the file: its name as it was written, or "standard input". */
	readonly place: string;
	/** Names a body that does not name itself: the file's name without its ending. */
	readonly name: string;
}

/** What went wrong when a file was opened, for the cases that a person can put right. */
const REASONS: Readonly<Record<string, string>> = {
	ENOENT: 'there is no such file',
	EISDIR: 'this is a folder, not a file',
	ENOTDIR: 'a part of this path is not a folder',
	EACCES: 'this user may not read the file'
};

const readText = async (file: string): Promise<string> => {
	try {
		return await readFile(file, 'utf8');
	} catch (problem) {
		const code = problem instanceof Error && 'code' in problem ? String(problem.code) : '';
		const reason = REASONS[code];
		if (reason === undefined) throw problem;
		throw new BadInput(file, reason);
	}
};

/** Reads a text file, or standard input for `-`; a byte order mark at its start is dropped. Throws BadInput. */
export const readInputFile = async (file: string): Promise<InputFile> => {
	const fromPipe = file === '-';
	const text = fromPipe ? await allOf(process.stdin) : await readText(file);
	return {
		text: text.replace(/^\uFEFF/, ''),
		place: fromPipe ? 'standard input' : file,
		name: fromPipe ? 'body' : path.parse(file).name
	};
};

/** A file's content as JSON. Throws BadInput. */
export const parsedJson = ({ text, place }: Pick<InputFile, 'text' | 'place'>): unknown => {
	try {
		return JSON.parse(text);
	} catch (problem) {
		if (problem instanceof SyntaxError) throw new BadInput(place, `this is not JSON: ${problem.message}`);
		throw problem;
	}
};
