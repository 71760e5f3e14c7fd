import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { CliRun } from './run-cli.ts';
import { commandHere } from './run-here.ts';

/** The file of the demo body Heron. */
export const HERON = fileURLToPath(new URL('../../shared/bodies/heron.json', import.meta.url));

/** Runs `square-across export` inside this process. */
export const exportHere = (...words: readonly string[]): Promise<CliRun> => commandHere('export', ...words);

/** A folder that files are exported into, and that is thrown away afterwards. */
export interface Outbox {
	/** The whole name of a file in it. */
	at(...names: readonly string[]): string;
	bytes(...names: readonly string[]): Buffer;
	text(...names: readonly string[]): string;
	/** The names of what lies in a folder of it, in order. */
	list(...names: readonly string[]): readonly string[];
	remove(): void;
}

/** Makes an empty folder outside the project. */
export const newOutbox = (): Outbox => {
	const folder = mkdtempSync(path.join(tmpdir(), 'square-across-'));
	const at = (...names: readonly string[]): string => path.join(folder, ...names);
	return {
		at,
		bytes: (...names) => readFileSync(at(...names)),
		text: (...names) => readFileSync(at(...names), 'utf8'),
		list: (...names) => readdirSync(at(...names)).sort(),
		remove: () => {
			rmSync(folder, { recursive: true, force: true });
		}
	};
};

/** The lines of one kind in an SVG file's group, as path data. */
export const linesIn = (svg: string, group: string): readonly string[] => {
	const content = svg.split(`<g id="${group}"`)[1]?.split('</g>')[0];
	if (content === undefined) throw new Error(`there is no group ${group}`);
	return [...content.matchAll(/ d="([^"]+)"/g)].map(([, data = '']) => data);
};
