import { slipWords } from '#shared/bad-input.ts';
import type { Body } from '#shared/body.ts';
import type { Speech } from '#shared/speech/speech.ts';
import { readBodyTable, type Wanted } from './body-table.ts';
import type { LongFile } from './input-file.ts';
import { complain, writeOut } from './output.ts';

/** Characters of output gathered before they are written: a write for every row would cost more than a draft. */
const CHUNK = 65_536;

/** What stands in the place of a row that could not be worked: whose it is, and why. */
export const refusedLine = (body: string, refused: string): string => JSON.stringify({ body, refused });

/**
 * Writes one line a row of a table of bodies, in its order, and goes on after a row that cannot be read; ends where nobody
 * reads any more. `lineOf` works one body. Throws BadInput where the whole table is of no use.
 */
export const workTable = async (
	file: LongFile,
	wanted: Wanted,
	speech: Speech,
	lineOf: (body: Body) => string
): Promise<void> => {
	const table = await readBodyTable(file, wanted, speech);
	if (table.ignored !== undefined) complain(table.ignored);
	let chunk = '';
	for await (const row of table.rows()) {
		chunk += `${'body' in row ? lineOf(row.body) : refusedLine(row.name, slipWords(row.problem, speech))}\n`;
		if (chunk.length < CHUNK) continue;
		if (!(await writeOut(chunk))) return;
		chunk = '';
	}
	await writeOut(chunk);
};
