import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { surveyFigures, type Figure } from '../reference/survey-bodies.ts';
import { edgeIn, lengthOf, patternHere, patternRows, pieceIn, type PatternRow } from './pattern-here.ts';
import { COMMAND, runProcess } from './run-cli.ts';
import { draftHere, newFolder } from './run-here.ts';

const HERON = fileURLToPath(new URL('../../shared/bodies/heron.json', import.meta.url));
const heron = JSON.parse(readFileSync(HERON, 'utf8')) as Figure;
const KEYS = [
	...(['bust', 'waist', 'hip', 'neck', 'shoulderWidth', 'backLength'] as const),
	...(['waistToHip', 'frontLength', 'bustHeight', 'bustSpan'] as const)
];

const folder = newFolder();
afterAll(() => folder.remove());

const cells = (figure: Figure): string => KEYS.map((key) => figure[key]).join(',');

const patternTable = async (text: string) => {
	const file = folder.write('class.csv', text);
	const { code, out, err } = await patternHere('course-dress', '--bodies', file);
	return { code, err: folder.short(err), rows: patternRows(folder.short(out)) };
};

const made = (row: PatternRow | undefined) => {
	if (!row || 'refused' in row) throw new Error(`there is no pattern: ${JSON.stringify(row)}`);
	return row;
};

describe('square-across pattern course-dress --bodies FILE.csv', () => {
	it('prints one line a row for twenty women of the survey, and goes on after a refused row', async () => {
		const figures = surveyFigures().slice(0, 20);
		const lines = figures.map((figure, i) => `s${i + 1},${cells(figure)}`);
		const flat = `flat,${cells({ ...heron, bust: 50 })}`;
		const table = [`id,${KEYS.join(',')}`, ...lines.slice(0, 7), flat, ...lines.slice(7), ''].join('\n');
		const { code, err, rows } = await patternTable(table);
		expect({ code, err }).toEqual({ code: 0, err: '' });
		expect(rows).toHaveLength(21);
		expect(rows[7]).toEqual({
			body: 'flat',
			refused: expect.stringContaining('bust (50 cm) and shoulderWidth (38.4 cm) disagree: ') as string
		});
		const patterns = rows.filter((_, i) => i !== 7).map(made);
		for (const [i, pattern] of patterns.entries()) {
			expect(pattern.body).toBe(`s${i + 1}`);
			expect(pattern.pieces).toHaveLength(8);
			expect(
				pattern.seams.filter(({ within }) => !within),
				pattern.body
			).toEqual([]);
			// The elastic is the body's own waist, less 10 cm.
			expect(pattern.elasticLength).toBeCloseTo(((figures[i]?.waist ?? NaN) - 10) * 10, 6);
			const side = edgeIn(pattern, 'front.side');
			expect(lengthOf(side.path)).toBeCloseTo(side.length, 3);
		}
	});

	it('takes allowances of the garment as columns, each row its own, the default where a cell is empty', async () => {
		const { rows, err } = await patternTable(
			`name,skirtLength,seamAllowance,hemAllowance,${KEYS.join(',')}\nA,70,"1,5",4,${cells(heron)}\nB,,,,${cells(heron)}\n`
		);
		expect(err).toBe('');
		const seen = rows.map(made).map((pattern) => {
			const { length, allowance } = edgeIn(pattern, 'skirt.side');
			return [Math.round(length * 1e6) / 1e6, allowance, edgeIn(pattern, 'skirt.hem').allowance];
		});
		expect(seen).toEqual([
			[700, 15, 40],
			[640, 10, 30]
		]);
	});

	it('refuses a row that cannot be read in its place, and ignores a column of no known name', async () => {
		const { code, rows, err } = await patternTable(
			`name,skirtLenght,flare,${KEYS.join(',')}\nA,70,99,${cells(heron)}\nB,70,,9x6${cells(heron).slice(2)}\nC,,,${cells(heron)}\n`
		);
		expect(code).toBe(0);
		expect(err).toBe(
			'class.csv: ignored, because no column has this name: "skirtLenght" (did you mean "skirtLength"?)\n'
		);
		expect(rows[0]).toEqual({
			body: 'A',
			refused: expect.stringContaining('class.csv: row 1 (line 2), column flare: the flare') as string
		});
		expect(rows[1]).toMatchObject({
			refused: expect.stringContaining('row 2 (line 3), column bust: "9x6"') as string
		});
		expect(edgeIn(made(rows[2]), 'skirt.side').length).toBeCloseTo(640, 6);
	});

	it('keeps odd names, and writes inches on the pieces of a row in inches', async () => {
		const inches = KEYS.map((key) => heron[key] / 2.54).join(',');
		const { rows } = await patternTable(
			`name,unit,${KEYS.join(',')}\n"Heron, ""grey""",,${cells(heron)}\n__proto__,in,${inches}\n,,${cells(heron)}\n`
		);
		expect(rows.map(({ body }) => body)).toEqual(['Heron, "grey"', '__proto__', '3']);
		expect(pieceIn(made(rows[0]), 'front').text).toContain('For Heron, "grey"');
		expect(pieceIn(made(rows[1]), 'skirt').text).toContain(
			'Allowance 3/8″; the hem 1 3/16″; none on the fold'
		);
	});

	it('a garment without elastic has none of its numbers, and asks for no measurement that it does not use', async () => {
		const table = folder.write('skirts.csv', 'name,waist,hip,waistToHip\nHeron,78,102,20.5\n');
		const { code, out, err } = await patternHere('straight-skirt', '--bodies', table);
		expect({ code, err }).toEqual({ code: 0, err: '' });
		const [row] = patternRows(out);
		expect(made(row)).toMatchObject({ garment: 'straight-skirt', body: 'Heron' });
		for (const key of ['gatheringRatio', 'elasticLength', 'elasticCut']) expect(row).not.toHaveProperty(key);
	});

	it('names the columns that are missing', async () => {
		const { code, err, rows } = await patternTable('bust,waist\n96,78\n');
		expect({ code, rows }).toEqual({ code: 2, rows: [] });
		expect(err).toMatch(
			/^class\.csv: column hip, neck, .*: missing; course-dress needs bust, waist, hip, .*\n$/
		);
	});

	it('ends quietly when nobody reads to the end', async () => {
		const table = folder.write('many.csv', `${KEYS.join(',')}\n${`${cells(heron)}\n`.repeat(60)}`);
		const command = `set -o pipefail; "${process.execPath}" "${COMMAND}" pattern course-dress --bodies "${table}" | head -n 1 | wc -l`;
		const { code, out, err } = await runProcess('bash', ['-c', command]);
		expect({ code, out: out.trim(), err }).toEqual({ code: 0, out: '1', err: '' });
	});
});

describe('one line on standard error, exit code 2, nothing on standard output', () => {
	const body = (content: unknown): string => folder.write('body.json', JSON.stringify(content));

	it.each<[words: readonly string[], line: RegExp]>([
		[[], /^pattern: name the garment, such as course-dress\n$/],
		[['course-dress'], /^pattern: give --body FILE for one body, or --bodies FILE\.csv for many\n$/],
		[
			['course-dres', '--body', 'x'],
			/^pattern: there is no garment "course-dres" \(did you mean "course-dress"\?\); the garments are body-block, course-dress.*\n$/
		],
		[
			['back-block', '--body', 'x'],
			/^pattern: "back-block" is a method, not a garment; it is drafted by: square-across draft back-block\n$/
		],
		[['course-dress', 'x', '--body', 'a'], /^pattern: one garment at a time; "x" is one word too many\n$/],
		[
			['course-dress', '--body', 'a', '--bodies', 'b'],
			/^pattern: give --body or --bodies, not both \(a, b\)\n$/
		],
		[
			['course-dress', '--jsno', '--body', 'a'],
			/^pattern: there is no option --jsno \(did you mean "--json"\?\)\n$/
		],
		[['course-dress', '--body', 'gone.json'], /^gone\.json: there is no such file\n$/]
	])('%j', async (words, line) => {
		const { code, out, err } = await patternHere(...words);
		expect(err).toMatch(line);
		expect({ code, out }).toEqual({ code: 2, out: '' });
	});

	it.each<[content: unknown, line: string]>([
		[[1], 'body.json: body: Invalid input: expected object, received array; seen: [1]\n'],
		[{ ...heron, bust: undefined, hip: undefined }, 'body.json: bust, hip: missing; course-dress needs it\n'],
		[{ ...heron, bust: 50 }, 'body.json: bust (50 cm) and shoulderWidth (38.4 cm) disagree: '],
		[
			{ ...heron, allowances: { skirtLenght: 70 } },
			'body.json: allowances.skirtLenght: there is no allowance of this name (did you mean "skirtLength"?)\n'
		],
		[
			{ ...heron, edges: { 'front.sid': 1.5 } },
			'body.json: edges.front.sid: there is no edge of this name (did you mean "front.side"?)\n'
		],
		[
			{ ...heron, edges: { 'front.side': 'wide' } },
			'body.json: edges.front.side: "wide" is not a length; write a number such as'
		],
		[
			{ ...heron, edges: { 'front.side': 4.5 } },
			'body.json: edges.front.side: the allowance of front.side must lie from 0 cm to 4 cm, not 4.5 cm (written 4.5, unit cm)\n'
		],
		[
			{ ...heron, edges: { 'skirt.hem': -1 } },
			'body.json: edges.skirt.hem: the allowance of skirt.hem must lie from 0 cm to 10 cm, not -1 cm'
		],
		[
			{ ...heron, edges: { 'back.centre': 1 } },
			'body.json: edges.back.centre: this edge lies on the fold of the cloth and is not cut\n'
		],
		[{ ...heron, edges: [1] }, 'body.json: edges: allowances of edges are {"front.side":1.5,...}, not [1]\n']
	])('%j', async (content, line) => {
		const { code, out, err } = await patternHere('course-dress', '--body', body(content), '--json');
		expect(folder.short(err)).toContain(line);
		expect(err.split('\n')).toHaveLength(2);
		expect({ code, out }).toEqual({ code: 2, out: '' });
	});

	it('a draft says which command wants a garment, and knows no allowance or edge of one', async () => {
		expect(await draftHere('course-dress', '--body', HERON)).toEqual({
			code: 2,
			out: '',
			err: 'draft: "course-dress" is a garment, not a method; its pieces are made by: square-across pattern course-dress\n'
		});
		const long = await draftHere('back-block', '--body', body({ ...heron, allowances: { skirtLength: 70 } }));
		expect(folder.short(long.err)).toMatch(
			/^body\.json: allowances\.skirtLength: there is no allowance of this name.*\n$/
		);
		const edged = await draftHere('back-block', '--body', body({ ...heron, edges: { 'front.side': 1 } }));
		expect(folder.short(edged.err)).toMatch(/^body\.json: edges: there is no measurement of this name.*\n$/);
		expect([long.code, edged.code]).toEqual([2, 2]);
	});
});
