import { readFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { onlyPattern, patternHere } from './pattern-here.ts';
import { mainHere, newFolder } from './run-here.ts';

const folder = newFolder();
afterAll(() => folder.remove());

const WAIST = { waist: 74, hip: 100, waistToHip: 20 };

it('the fullness of a circle skirt is named in a body: its hem follows', async () => {
	const hemOf = async (fullness: string): Promise<number | undefined> => {
		const file = folder.write('body.json', JSON.stringify({ ...WAIST, allowances: { fullness } }));
		const { code, out, err } = await patternHere('circle-skirt', '--body', file, '--json');
		expect({ code, err }).toEqual({ code: 0, err: '' });
		return onlyPattern(out).pieces[0]?.edges.find(({ name }) => name === 'hem')?.length;
	};
	// A quarter of the waist and its ease, 187.5 mm, and 600 mm of length times the angle of half a panel.
	expect(await hemOf('full')).toBeCloseTo(187.5 + (600 * Math.PI) / 2, 3);
	expect(await hemOf('quarter')).toBeCloseTo(187.5 + (600 * Math.PI) / 8, 3);
});

it.each([
	['en', 'The circle skirt (a full circle)', 'for'],
	['es', 'Falda circular (un círculo entero)', 'para']
])(
	'what was chosen is part of the name of the pattern and of each piece, in %s',
	async (language, name, linked) => {
		const file = folder.write('body.json', JSON.stringify({ ...WAIST, allowances: { fullness: 'full' } }));
		const { out } = await patternHere('circle-skirt', '--body', file, '--language', language);
		expect(out.startsWith(`${name} ${linked} `)).toBe(true);
		const svg = path.join(path.dirname(file), `${language}.svg`);
		const written = ['export', 'circle-skirt', '--body', file, '--to', svg, '--language', language];
		expect(await mainHere(written)).toMatchObject({ code: 0, err: '' });
		// In the title, on both halves of the skirt, and on the waistband.
		expect(readFileSync(svg, 'utf8').split(name).length - 1).toBe(4);
	}
);

it('or in a column of a table; a row with a wrong name says so, and which there are', async () => {
	const table = folder.write(
		'table.csv',
		'name,waist,hip,waistToHip,fullness\na,74,100,20,full\nb,74,100,20,fuII\nc,74,100,20,\n'
	);
	const { out } = await mainHere(['draft', 'circle-skirt', '--bodies', table]);
	const [a, b, c] = out
		.trim()
		.split('\n')
		.map((line) => JSON.parse(line) as { points?: { A: [number, number] }; refused?: string });
	expect(a?.points?.A[1]).toBeCloseTo(750 / (2 * Math.PI), 6);
	expect(b?.refused).toContain(
		'column fullness: there is no value "fuII" (did you mean "full"?); the values are quarter, half, threeQuarter, full'
	);
	expect(c?.points?.A[1]).toBeCloseTo(750 / Math.PI, 6);
});

it('an old name is told the new one', async () => {
	const file = folder.write('body.json', JSON.stringify(WAIST));
	const { code, err } = await patternHere('swift-half-skirt', '--body', file);
	expect(code).toBe(2);
	expect(err).toContain('there is no garment "swift-half-skirt" (did you mean "circle-skirt"?)');
});
