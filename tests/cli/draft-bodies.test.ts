import { afterAll, describe, expect, it } from 'vitest';
import { printedRows, type PrintedRow } from './run-cli.ts';
import { draftHere, newFolder } from './run-here.ts';

const KEYS = 'bust,waist,hip,neck,shoulderWidth,backLength,waistToHip';
const HERON = '96,78,102,37,38.4,42.5,20.5';

const folder = newFolder();
afterAll(() => folder.remove());

const draftTable = async (text: string) => {
	const { code, out, err } = await draftHere('back-block', '--bodies', folder.write('bodies.csv', text));
	return { code, out, err: folder.short(err), rows: out === '' ? [] : printedRows(folder.short(out)) };
};

const onlyRow = async (text: string): Promise<PrintedRow | undefined> => {
	const { code, err, rows } = await draftTable(text);
	expect({ code, err }).toEqual({ code: 0, err: '' });
	expect(rows).toHaveLength(1);
	return rows[0];
};

describe('square-across draft back-block --bodies FILE.csv', () => {
	it('prints one line of JSON a row, in order, and goes on after a refused row', async () => {
		const { code, err, rows } = await draftTable(
			`name,${KEYS}\nHeron,${HERON}\nFlat,50,78,102,37,38.4,42.5,20.5\nWren,80,62.5,86,33,34.6,38,18\n`
		);
		expect({ code, err }).toEqual({ code: 0, err: '' });
		expect(rows.map(({ body }) => body)).toEqual(['Heron', 'Flat', 'Wren']);
		expect(rows[0]).toMatchObject({
			method: 'back-block',
			unit: 'mm',
			points: { U: [260, 222] },
			warnings: []
		});
		expect(rows[1]).toEqual({
			body: 'Flat',
			refused:
				'bust (50 cm) and shoulderWidth (38.4 cm) disagree: at the underarm the back must be at least 1.5 cm wider than at the armhole above it (here it is -4.7 cm); measure both again'
		});
		expect(rows[2]).toMatchObject({ points: { U: [220, 203] } });
	});

	it('names a row by name, else id, else its number', async () => {
		const { rows } = await draftTable(`id,name,${KEYS}\n7,Heron,${HERON}\n8,,${HERON}\n,,${HERON}\n`);
		expect(rows.map(({ body }) => body)).toEqual(['Heron', '8', '3']);
	});

	it('reads a byte order mark, Windows line ends, blank lines, quoted cells and decimal commas', async () => {
		const { rows, err } = await draftTable(
			`\uFEFFname,${KEYS}\r\n"Heron, ""grey""","96,5",78,102,37,"38,4",42.5,20.5\r\n\r\n,,,,,,,\r\nB,${HERON}\r\n`
		);
		expect(err).toBe('');
		expect(rows.map(({ body }) => body)).toEqual(['Heron, "grey"', 'B']);
		expect(rows[0]).toMatchObject({ points: { U: [261.25, 222] } });
	});

	it('reads a table parted by semicolons, as spreadsheets with decimal commas write it', async () => {
		const heading = `name,${KEYS}`.replaceAll(',', ';');
		const row = await onlyRow(`${heading}\nA;96,5;78;102;37;38,4;42,5;20,5\n`);
		expect(row).toMatchObject({ body: 'A', points: { U: [261.25, 222], S: [192, 40] } });
	});

	it('takes allowances as columns, the default where a cell is empty, and inches where the row says so', async () => {
		const { rows } = await draftTable(
			`unit,bustEase,${KEYS}\n,10,${HERON}\n,,${HERON}\nin,,37 3/4",29,40,14,15,16 1/2,8\n`
		);
		expect(rows.map((row) => 'points' in row && row.points['U']?.[0])).toEqual([265, 260, 259.7125]);
	});

	it('needs no measurement that the method does not use', async () => {
		const row = await onlyRow(`frontLength,${KEYS}\n,${HERON}\n`);
		expect(row).toHaveProperty('points');
	});
});

describe('a row that cannot be read is refused in its place', () => {
	it.each([
		[
			'9x6,78,102,37,38.4,42.5,20.5',
			'bodies.csv: row 1 (line 2), column bust: "9x6" is not a length; write a number such as'
		],
		[
			'96,78,1020,37,38.4,42.5,20.5',
			'bodies.csv: row 1 (line 2), column hip: the hip must lie from 5 cm to 300 cm, not 1020 cm (written "1020", unit cm)'
		],
		[
			'96,78,102,,38.4,42.5,20.5',
			'bodies.csv: row 1 (line 2), column neck: empty; back-block needs this measurement'
		],
		['96,78', 'bodies.csv: row 1 (line 2), column hip: empty'],
		[
			'96,5,78,102,37,38.4,42.5,20.5',
			'bodies.csv: row 1 (line 2): 8 cells under 7 headings; put a decimal comma between quotes: "96,5"'
		]
	])('%s', async (cells, refused) => {
		const { code, rows } = await draftTable(`${KEYS}\n${cells}\n${HERON}\n`);
		expect(code).toBe(0);
		expect(rows[0]).toEqual({ body: '1', refused: expect.stringContaining(refused) as string });
		expect(rows[1]).toMatchObject({ body: '2', points: { U: [260, 222] } });
	});

	it('an allowance out of range, and a unit that is none', async () => {
		const { rows } = await draftTable(`unit,hipEase,${KEYS}\ncm,31,${HERON}\nft,4,${HERON}\n`);
		expect(rows).toEqual([
			{
				body: '1',
				refused:
					'bodies.csv: row 1 (line 2), column hipEase: the hip ease must lie from -4 cm to 30 cm, not 31 cm (written "31", unit cm)'
			},
			{ body: '2', refused: 'bodies.csv: row 2 (line 3), column unit: a unit is cm, mm or in, not "ft"' }
		]);
	});

	it('says the line of the file, which blank lines move', async () => {
		const { rows } = await draftTable(`${KEYS}\n\n${HERON}\n\n\n9x6,78,102,37,38.4,42.5,20.5\n`);
		expect(rows[1]).toMatchObject({
			refused: expect.stringContaining('row 2 (line 6), column bust') as string
		});
	});
});

describe('the whole table', () => {
	it.each([
		['', 'bodies.csv: the file is empty'],
		['\n\n', 'bodies.csv: the file is empty'],
		[`${KEYS}\n`, 'bodies.csv: there is a heading, but no row below it'],
		[`${KEYS},bust\n${HERON},1\n`, 'bodies.csv: two columns are called "bust"'],
		[
			'bust,waist,hip,neck,shoulderWidth,backLength,waist to hip\n1\n',
			`bodies.csv: column waistToHip: missing (did you mean "waist to hip"?); back-block needs ${KEYS.replaceAll(',', ', ')}`
		],
		[
			'bust,waist\n1,2\n',
			'bodies.csv: column hip, neck, shoulderWidth, backLength, waistToHip: missing; back-block needs'
		],
		[`${KEYS}\n"96,78\n`, 'bodies.csv: this is not a table: Quote Not Closed']
	])('%j is refused with exit code 2', async (text, line) => {
		const { code, out, err } = await draftTable(text);
		expect(err).toContain(line);
		expect(err.split('\n')).toHaveLength(2);
		expect({ code, out }).toEqual({ code: 2, out: '' });
	});

	it('a column of no known name is told once, with the nearest, and ignored', async () => {
		const { code, err, rows } = await draftTable(`${KEYS},bustEas,shoe\n${HERON},9,38\n${HERON},9,39\n`);
		expect(code).toBe(0);
		expect(err).toBe(
			'bodies.csv: ignored, because no column has this name: "bustEas" (did you mean "bustEase"?), "shoe"\n'
		);
		expect(rows).toHaveLength(2);
		expect(rows[0]).toMatchObject({ points: { U: [260, 222] } });
	});
});
