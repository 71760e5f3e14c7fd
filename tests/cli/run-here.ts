import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { Readable } from 'node:stream';
import { vi } from 'vitest';
import { main } from '../../src/cli/main.ts';
import type { CliRun } from './run-cli.ts';

/** A folder of files that is thrown away afterwards. */
export interface Folder {
	/** Writes a file and gives its whole name. */
	write(name: string, content: string): string;
	/** Takes the folder's own name out of a text, so that files go by their short names. */
	short(text: string): string;
	remove(): void;
}

/** Makes an empty folder outside the project. */
export const newFolder = (): Folder => {
	const folder = mkdtempSync(path.join(tmpdir(), 'square-across-'));
	return {
		write: (name, content) => {
			const file = path.join(folder, name);
			writeFileSync(file, content);
			return file;
		},
		short: (text) => text.replaceAll(folder + path.sep, ''),
		remove: () => rmSync(folder, { recursive: true, force: true })
	};
};

/** Runs the command line inside this process, which takes a hundredth of the time of a process of its own. */
export const commandHere = async (...words: readonly string[]): Promise<CliRun> => {
	const seen = { out: '', err: '' };
	const catching = (kind: 'out' | 'err') =>
		((text: string, done?: (problem?: Error) => void) => {
			seen[kind] += text;
			done?.();
			return true;
		}) as typeof process.stdout.write;
	const spies = [
		vi.spyOn(process.stdout, 'write').mockImplementation(catching('out')),
		vi.spyOn(process.stderr, 'write').mockImplementation(catching('err'))
	];
	try {
		return { code: await main(words), ...seen };
	} finally {
		for (const spy of spies) spy.mockRestore();
	}
};

/** Runs `square-across draft` inside this process. */
export const draftHere = (...words: readonly string[]): Promise<CliRun> => commandHere('draft', ...words);

/** Runs a whole command line inside this process, with `input` on standard input. */
export const mainHere = async (words: readonly string[], { input = '' } = {}): Promise<CliRun> => {
	const typed = Readable.from(input === '' ? [] : [Buffer.from(input)]);
	const stdin = vi.spyOn(process, 'stdin', 'get').mockReturnValue(typed as unknown as typeof process.stdin);
	try {
		return await commandHere(...words);
	} finally {
		stdin.mockRestore();
	}
};
