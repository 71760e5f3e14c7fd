import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { text as allOf } from 'node:stream/consumers';
import { BadInput } from '#shared/bad-input.ts';
import { message } from '#shared/speech/message.ts';
import type { Speech } from '#shared/speech/speech.ts';

/** What a file holds, and the words by which errors and drafts speak of it. */
export interface InputFile {
	readonly text: string;
	/** Begins every error about the file: its name as it was written, or "standard input". */
	readonly place: string;
	/** Names a body that does not name itself: the file's name without its ending. */
	readonly name: string;
}

/** The code of what the system says when a file cannot be used. */
export const systemCode = (problem: unknown): string | undefined =>
	problem instanceof Error && 'code' in problem ? String(problem.code) : undefined;

/** Reads at a place. Throws BadInput, naming the place, where the system does not let it. */
export const reading = async <T>(place: string, read: () => Promise<T>): Promise<T> => {
	try {
		return await read();
	} catch (problem) {
		const code = systemCode(problem);
		if (code === undefined) throw problem;
		throw new BadInput(place, message('command', 'cannotRead', { code }));
	}
};

/** Reads a text file, or standard input for `-`; a byte order mark at its start is dropped. Throws BadInput. */
export const readInputFile = async (file: string, { words }: Speech): Promise<InputFile> => {
	const fromPipe = file === '-';
	const place = fromPipe ? words.command.standardInput : file;
	const text = await reading(place, () => (fromPipe ? allOf(process.stdin) : readFile(file, 'utf8')));
	return { text: text.replace(/^\uFEFF/, ''), place, name: fromPipe ? 'body' : path.parse(file).name };
};
