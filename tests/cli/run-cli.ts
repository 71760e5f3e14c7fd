import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';

/** The program's own file. */
export const COMMAND = fileURLToPath(new URL('../../src/cli/square-across.js', import.meta.url));

/** A program that runs one command line after the other: each a JSON list of words, one a line of standard input. */
export const IN_TURN = fileURLToPath(new URL('in-turn.js', import.meta.url));

/** What a run of the command line left behind. */
export interface CliRun {
	readonly code: number | null;
	readonly out: string;
	readonly err: string;
}

/** Runs a program as a process of its own, with `input` on standard input and variables added to its environment. */
export const runProcess = (
	program: string,
	words: readonly string[],
	{
		folder = process.cwd(),
		input = '',
		env = {}
	}: { folder?: string; input?: string; env?: Record<string, string> } = {}
): Promise<CliRun> =>
	new Promise((resolve, reject) => {
		const child = spawn(program, words, { cwd: folder, stdio: 'pipe', env: { ...process.env, ...env } });
		const out: Buffer[] = [];
		const err: Buffer[] = [];
		child.stdout.on('data', (part: Buffer) => out.push(part));
		child.stderr.on('data', (part: Buffer) => err.push(part));
		child.on('error', reject);
		child.on('close', (code) => {
			const text = (parts: readonly Buffer[]): string => Buffer.concat(parts).toString('utf8');
			resolve({ code, out: text(out), err: text(err) });
		});
		child.stdin.on('error', () => {
			// A run that fails early does not read its input; its exit code tells.
		});
		child.stdin.end(input);
	});

/** Runs `square-across` with these words, in a folder, as a process of its own. */
export const runCli = (
	words: readonly string[],
	where: { folder?: string; input?: string } = {}
): Promise<CliRun> => runProcess(process.execPath, [COMMAND, ...words], where);

/** A draft as the command line prints it. */
export interface PrintedDraft {
	readonly method: string;
	readonly body: string;
	readonly unit: string;
	readonly points: Readonly<Record<string, readonly [number, number]>>;
	readonly lines: Readonly<Record<string, { readonly length: number; readonly path: string }>>;
	readonly warnings: readonly string[];
}

/** A row of a batch: a draft, or why there is none. */
export type PrintedRow = PrintedDraft | { readonly body: string; readonly refused: string };

/** The rows that a batch printed. */
export const printedRows = (out: string): readonly PrintedRow[] =>
	out
		.split('\n')
		.filter((line) => line !== '')
		.map((line) => JSON.parse(line) as PrintedRow);
