import { createReadStream } from 'node:fs';
import { readFile, stat } from 'node:fs/promises';
import path from 'node:path';
import { buffer as bytesOf, text as allOf } from 'node:stream/consumers';
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

/** What the system says when a place cannot be read, as a BadInput that names it; anything else as it is. */
export const unreadable = (place: string, problem: unknown): unknown => {
	const code = systemCode(problem);
	return code === undefined ? problem : new BadInput(place, message('command', 'cannotRead', { code }));
};

/** Reads at a place. Throws BadInput, naming the place, where the system does not let it. */
export const reading = async <T>(place: string, read: () => Promise<T>): Promise<T> => {
	try {
		return await read();
	} catch (problem) {
		throw unreadable(place, problem);
	}
};

/** Reads a text file, or standard input for `-`; a byte order mark at its start is dropped. Throws BadInput. */
export const readInputFile = async (file: string, { words }: Speech): Promise<InputFile> => {
	const fromPipe = file === '-';
	const place = fromPipe ? words.command.standardInput : file;
	const text = await reading(place, () => (fromPipe ? allOf(process.stdin) : readFile(file, 'utf8')));
	return { text: text.replace(/^\uFEFF/, ''), place, name: fromPipe ? 'body' : path.parse(file).name };
};

/** A file that may be longer than what is to be held at once. */
export interface LongFile {
	/** Begins every error about the file, as an InputFile's does. */
	readonly place: string;
	/** Its bytes piece by piece from the beginning, without a byte order mark; each call goes through it anew. Throws BadInput. */
	pieces(): AsyncIterable<Buffer>;
}

/** Bytes of a piece: as many as a file is read by. */
const PIECE = 65_536;
const BYTE_ORDER_MARK = Buffer.from('\uFEFF');

function* piecesOf(whole: Buffer): Iterable<Buffer> {
	for (let from = 0; from < whole.length; from += PIECE) yield whole.subarray(from, from + PIECE);
}

async function* withoutMark(
	all: AsyncIterable<Buffer> | Iterable<Buffer>,
	place: string
): AsyncIterable<Buffer> {
	let begun: Buffer | undefined = Buffer.alloc(0);
	try {
		for await (const piece of all) {
			if (!begun) yield piece;
			else {
				begun = Buffer.concat([begun, piece]);
				// A mark may come in two pieces.
				if (begun.length < BYTE_ORDER_MARK.length) continue;
				yield begun.subarray(begun.indexOf(BYTE_ORDER_MARK) === 0 ? BYTE_ORDER_MARK.length : 0);
				begun = undefined;
			}
		}
	} catch (problem) {
		throw unreadable(place, problem);
	}
	if (begun) yield begun;
}

/**
 * Opens a file, or standard input for `-`, of which only a piece is held at a time, however long it is. What can be read only
 * once, as a pipe can, is held whole. Throws BadInput.
 */
export const openLongFile = async (file: string, { words }: Speech): Promise<LongFile> => {
	const fromPipe = file === '-';
	const place = fromPipe ? words.command.standardInput : file;
	const isFile = !fromPipe && (await reading(place, () => stat(file))).isFile();
	if (isFile) return { place, pieces: () => withoutMark(createReadStream(file), place) };
	const whole = await reading(place, () => (fromPipe ? bytesOf(process.stdin) : readFile(file)));
	return { place, pieces: () => withoutMark(piecesOf(whole), place) };
};
