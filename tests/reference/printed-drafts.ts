import { expect } from 'vitest';
import { printedRows, runCli, type PrintedRow } from '../cli/run-cli.ts';
import { newFolder } from '../cli/run-here.ts';
import type { Numbers } from './back-block.ts';

/** What the command line prints of a method for a table of bodies, in centimetres: a row each. */
export const printedDrafts = async (
	method: string,
	bodies: readonly Numbers[]
): Promise<readonly PrintedRow[]> => {
	const columns = [...new Set(bodies.flatMap((numbers) => Object.keys(numbers)))];
	const table = [columns, ...bodies.map((numbers) => columns.map((column) => numbers[column] ?? ''))];
	const folder = newFolder();
	try {
		const file = folder.write('bodies.csv', table.map((cells) => cells.join(',')).join('\n'));
		const { code, out, err } = await runCli(['draft', method, '--bodies', file]);
		expect({ code, err }).toEqual({ code: 0, err: '' });
		return printedRows(out);
	} finally {
		folder.remove();
	}
};
