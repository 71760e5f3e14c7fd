import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { expect } from 'vitest';
import { printedRows, runCli, type PrintedRow } from '../cli/run-cli.ts';
import type { Numbers } from './back-block.ts';

/** What the command line prints of a method for a table of bodies, in centimetres: a row each. */
export const printedDrafts = async (
	method: string,
	bodies: readonly Numbers[]
): Promise<readonly PrintedRow[]> => {
	const folder = await mkdtemp(path.join(tmpdir(), 'square-across-'));
	try {
		const columns = [...new Set(bodies.flatMap((numbers) => Object.keys(numbers)))];
		const table = [columns, ...bodies.map((numbers) => columns.map((column) => numbers[column] ?? ''))];
		await writeFile(path.join(folder, 'bodies.csv'), table.map((cells) => cells.join(',')).join('\n'));
		const { code, out, err } = await runCli(['draft', method, '--bodies', 'bodies.csv'], { folder });
		expect({ code, err }).toEqual({ code: 0, err: '' });
		return printedRows(out);
	} finally {
		await rm(folder, { recursive: true, force: true });
	}
};
