import type { FileRequest, Format } from '#exports/files/pattern-file.ts';
import type { Wanted } from './body-table.ts';
import type { Maker } from './edge-allowances.ts';
import type { InputFile } from './input-file.ts';

/** What is asked of a file, but for the words, which are in the body's unit. */
export type Request = Omit<FileRequest, 'speech'>;

/** A piece by its key, and what a file of its own is called. */
export interface NamedPiece {
	readonly key: string;
	readonly fileName: string;
}

/** A subject worked out for one body: as one line of JSON, as tables for reading, and as a file. */
export interface Worked {
	json(): string;
	table(): string;
	file(request: Request): Promise<Uint8Array>;
}

/** What a command is about: a garment's pattern, or the draft of a method. */
export interface Subject extends Wanted {
	/** The kinds of file that it can be. */
	readonly formats: readonly Format[];
	/** All pieces; none for a draft. */
	readonly pieces: readonly NamedPiece[];
	/** The same as it is cut to be tried on, where that can be. */
	readonly toile?: (() => Subject) | undefined;
	/** Reads a body's file. Throws BadInput. */
	readonly read: (file: InputFile) => Maker;
	/** Works it out for a body. Throws BadInput at `place` where the body is refused. */
	readonly work: (maker: Maker, place: string) => Worked;
}
