import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { afterAll, describe, expect, it } from 'vitest';
import { readBodyTable } from '../../src/cli/body-table.ts';
import { openLongFile, type LongFile } from '../../src/cli/input-file.ts';
import { speechFor } from '../support/speech.ts';
import { printedRows } from './run-cli.ts';
import { draftHere, newFolder } from './run-here.ts';

const KEYS = 'bust,waist,hip,neck,shoulderWidth,backLength,waistToHip';
const HERON = '96,78,102,37,38.4,42.5,20.5';
const WANTED = { id: 'back-block', measurements: ['bust', 'waist'], allowances: [] } as const;
/** So long a note that rows which are held show among what a test itself takes. */
const NOTE = 'n'.repeat(1000);
/** What a file is read by. */
const PIECE = 65_536;

const folder = newFolder();
afterAll(() => folder.remove());

setFlagsFromString('--expose-gc');
const collect = runInNewContext('gc') as () => void;
/** What is held just now, in bytes, once all that nobody needs is thrown away. */
const held = (): number => {
	collect();
	const { heapUsed, external } = process.memoryUsage();
	return heapUsed + external;
};

/** A table that exists only as it is read, and how far it was read. */
const tableOf = (rows: number): LongFile & { readonly read: () => number } => {
	let read = 0;
	return {
		place: 'long.csv',
		read: () => read,
		pieces: async function* () {
			read = await Promise.resolve(0);
			yield Buffer.from(`name,${KEYS},note\n`);
			for (let i = 1; i <= rows; i++) {
				read = i;
				yield Buffer.from(`Body ${i},${HERON},${NOTE}\n`);
			}
		}
	};
};

describe('a long table of bodies', () => {
	it('is read as its rows are worked, and takes no more memory at its end than at its beginning', async () => {
		const [rows, first, last] = [8000, 1000, 7000];
		const file = tableOf(rows);
		const table = await readBodyTable(file, WANTED, speechFor('en'));
		let number = 0;
		let furthest = 0;
		const at: Record<number, number> = {};
		for await (const row of table.rows()) {
			number += 1;
			expect(row.name).toBe(`Body ${number}`);
			furthest = Math.max(furthest, file.read() - number);
			if (number === first || number === last) at[number] = held();
		}
		expect(number).toBe(rows);
		// What streams hold between them is some kilobytes: a few hundred rows of this length.
		expect(furthest).toBeLessThan(1000);
		// A quarter of what the rows between take as text alone.
		expect((at[last] ?? Infinity) - (at[first] ?? 0)).toBeLessThan(((last - first) * NOTE.length) / 4);
	});

	it('that is a file is read piece by piece, and letters that two pieces share stay whole', async () => {
		const begun = `name,${KEYS}\n`;
		// The needle of four bytes begins two bytes before the first piece ends.
		const name = 'x'.repeat(PIECE - 2 - begun.length) + '🪡';
		const file = folder.write('needle.csv', `${begun}${name},${HERON}\nHeron,${HERON}\n`);
		const long = await openLongFile(file, speechFor('en'));
		const sizes: number[] = [];
		for await (const piece of long.pieces()) sizes.push(piece.length);
		expect(sizes[0]).toBe(PIECE);
		const { out } = await draftHere('back-block', '--bodies', file);
		expect(printedRows(out).map(({ body }) => body)).toEqual([name, 'Heron']);
	});
});
