import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import {
	apart,
	areaOf,
	edgeIn,
	endsOf,
	lengthOf,
	onlyPattern,
	patternHere,
	pieceIn,
	spotAlong,
	type PrintedPattern
} from './pattern-here.ts';
import { runCli } from './run-cli.ts';
import { mainHere, newFolder } from './run-here.ts';

const BODIES = fileURLToPath(new URL('../../shared/bodies/', import.meta.url));
const HERON = `${BODIES}heron.json`;
const heron = JSON.parse(readFileSync(HERON, 'utf8')) as Readonly<Record<string, unknown>>;
const DEMO = readdirSync(BODIES).filter((file) => file.endsWith('.json'));

/** Path data is written to a millionth of a millimetre; a length adds up a few such roundings. */
const WRITTEN = 1e-4;

const folder = newFolder();
afterAll(() => folder.remove());

const patternOf = async (content: object): Promise<PrintedPattern> => {
	const file = folder.write('body.json', JSON.stringify(content));
	const { code, out, err } = await patternHere('course-dress', '--body', file, '--json');
	expect({ code, err }).toEqual({ code: 0, err: '' });
	return onlyPattern(out);
};

describe('square-across pattern course-dress --body heron.json --json', () => {
	it('prints one line of JSON with these names, by a process of its own', async () => {
		const { code, out, err } = await runCli(['pattern', 'course-dress', '--body', HERON, '--json']);
		expect({ code, err }).toEqual({ code: 0, err: '' });
		expect(out.split('\n')).toHaveLength(2);
		expect(out.replace(/"(fold|value|least|most|cure)":null/g, '')).not.toMatch(/null|-0[,\]]/);
		const pattern = onlyPattern(out);
		expect(Object.keys(pattern)).toEqual([
			...['garment', 'body', 'unit', 'pieces', 'seams', 'runs', 'gatheringRatio', 'elasticLength'],
			...['elasticCut', 'numbers', 'wear', 'warnings']
		]);
		expect(pattern).toMatchObject({ garment: 'course-dress', body: 'Heron', unit: 'mm', warnings: [] });
		expect(pattern.pieces.map(({ key, number }) => `${number} ${key}`)).toEqual([
			...['1 front', '2 back', '3 frontBand', '4 backBand', '5 facing', '6 skirt', '7 casing'],
			'8 binding'
		]);
		expect(Object.keys(pieceIn(pattern, 'front'))).toEqual([
			...['key', 'number', 'name', 'cut', 'fold', 'edges', 'stitching', 'cutting', 'grain', 'bias'],
			...['notches', 'marks', 'drills', 'darts', 'buttons', 'text']
		]);
		expect(Object.keys(edgeIn(pattern, 'front.side'))).toEqual([
			...['name', 'kind', 'length', 'allowance', 'path']
		]);
	});

	it('says the same thing in its numbers as in its edges, by hand arithmetic', async () => {
		const pattern = await patternOf(heron);
		// Waist 78, the elastic 10 shorter, lapped by 2.
		expect(pattern).toMatchObject({ elasticLength: 680, elasticCut: 700 });
		const waists = edgeIn(pattern, 'front.waist').length + edgeIn(pattern, 'back.waist').length;
		expect(pattern.gatheringRatio).toBeCloseTo((2 * waists) / 680, 8);
		expect(pattern.numbers['gathering']).toMatchObject({ kind: 'ratio', value: pattern.gatheringRatio });
		expect(edgeIn(pattern, 'casing.upper').length).toBeCloseTo(waists, 6);
		expect(edgeIn(pattern, 'skirt.side').length).toBeCloseTo(640, 6);
		const armholes = edgeIn(pattern, 'front.armhole').length + edgeIn(pattern, 'back.armhole').length;
		expect(edgeIn(pattern, 'binding.inside').length).toBeCloseTo(armholes + 20, 6);
	});

	it('a strip on the fold is cut wider by its allowances and no wider at the fold', async () => {
		const pattern = await patternOf(heron);
		const [long, wide] = [edgeIn(pattern, 'casing.upper').length, edgeIn(pattern, 'casing.end').length];
		expect(wide).toBeCloseTo(35, 6);
		const { stitching, cutting } = pieceIn(pattern, 'casing');
		expect(areaOf(stitching)).toBeCloseTo(long * 35, 2);
		expect(areaOf(cutting)).toBeCloseTo((long + 10) * (35 + 20), 2);
		const binding = pieceIn(pattern, 'binding');
		expect(areaOf(binding.cutting)).toBeCloseTo(areaOf(binding.stitching), 2);
	});

	it('writes on each piece what a cutter has to know', async () => {
		const pattern = await patternOf(heron);
		expect(pieceIn(pattern, 'skirt').text).toEqual([
			'6 Skirt',
			'For Heron',
			'Cut 2 in fabric on the fold',
			'Lay the centre edge on the fold of the cloth',
			'The grain line runs along the fold',
			'Allowance 1 cm; the hem 3 cm; none on the fold',
			'Cut it twice, each time on the fold: front and back are alike'
		]);
		expect(pieceIn(pattern, 'binding').text).toContain('On the bias: the threads cross the piece at 45°');
	});
});

describe.each(DEMO)('the demo body of %s', (file) => {
	it('has pieces that close, with lengths that another program measures alike', async () => {
		const { code, out, err } = await patternHere('course-dress', '--body', BODIES + file, '--json');
		expect({ code, err }).toEqual({ code: 0, err: '' });
		for (const { key, edges, stitching, cutting, fold } of onlyPattern(out).pieces) {
			for (const [i, edge] of edges.entries()) {
				const next = edges[(i + 1) % edges.length] ?? edge;
				const where = `${key}.${edge.name}`;
				expect(apart(endsOf(edge.path)[1], endsOf(next.path)[0]), where).toBeLessThan(WRITTEN);
				expect(Math.abs(lengthOf(edge.path) - edge.length), where).toBeLessThan(WRITTEN);
				expect(edge.kind === 'fold', where).toBe(edge.name === fold);
			}
			const whole = edges.reduce((sum, { length }) => sum + length, 0);
			expect(Math.abs(lengthOf(stitching) - whole), key).toBeLessThan(WRITTEN);
			for (const outline of [stitching, cutting]) {
				expect(outline, key).toMatch(/^M[^MZ]*Z$/);
				expect(apart(...endsOf(outline)), key).toBeLessThan(WRITTEN);
			}
			expect(areaOf(cutting), key).toBeGreaterThanOrEqual(areaOf(stitching) - 1e-3);
		}
	});

	it('has seam pairs whose two lengths are those of their edges, and agree', async () => {
		const { out } = await patternHere('course-dress', '--body', BODIES + file, '--json');
		const pattern = onlyPattern(out);
		const measured = (names: readonly string[]): number =>
			names.reduce((sum, name) => sum + lengthOf(edgeIn(pattern, name).path), 0);
		expect(pattern.seams.length).toBeGreaterThanOrEqual(10);
		for (const {
			name,
			first,
			second,
			firstLength,
			secondLength,
			ease,
			difference,
			within
		} of pattern.seams) {
			expect(Math.abs(measured(first) - firstLength), name).toBeLessThan(WRITTEN);
			expect(Math.abs(measured(second) - secondLength), name).toBeLessThan(WRITTEN);
			expect(difference, name).toBeCloseTo(secondLength - firstLength - ease, 6);
			// A millimetre is the widest that dress.md's table allows.
			expect(Math.abs(difference), name).toBeLessThanOrEqual(1);
			expect(within, name).toBe(true);
		}
	});

	it('has notches that lie where they say on their edges', async () => {
		const { out } = await patternHere('course-dress', '--body', BODIES + file, '--json');
		const pattern = onlyPattern(out);
		for (const { key, notches } of pattern.pieces) {
			for (const { edge, at, along, style } of notches) {
				const { path } = edgeIn(pattern, `${key}.${edge}`);
				expect(apart(spotAlong(path, along), at), `${key}.${edge}`).toBeLessThan(0.01);
				expect(style, key).toBe(/^(back|backBand)$/.test(key) ? 'double' : 'single');
			}
		}
	});
});

describe('what a maker may choose', () => {
	it('the allowances of the garment, and those of single edges, in the unit of the body', async () => {
		const usual = await patternOf(heron);
		const chosen = await patternOf({
			...heron,
			allowances: { skirtLength: 70, seamAllowance: '1,2' },
			edges: { 'front.side': 1.5, 'skirt.hem': '50 mm' }
		});
		expect(edgeIn(usual, 'skirt.hem').allowance).toBe(30);
		expect(edgeIn(chosen, 'skirt.side').length).toBeCloseTo(700, 6);
		const allowances = ['front.side', 'front.neckline', 'back.side', 'skirt.hem', 'casing.end'].map(
			(name) => edgeIn(chosen, name).allowance
		);
		expect(allowances).toEqual([15, 12, 12, 50, 12]);
		expect(edgeIn(chosen, 'front.armhole').allowance).toBe(0);
		expect(pieceIn(chosen, 'front').text).toContain(
			'Allowance 1.2 cm; the side edge 1.5 cm; none on the armhole edge'
		);
		expect(pieceIn(chosen, 'front').stitching).toBe(pieceIn(usual, 'front').stitching);
		expect(pieceIn(chosen, 'front').cutting).not.toBe(pieceIn(usual, 'front').cutting);
	});

	it('inches, and the words on the pieces are in inches too', async () => {
		const inInches = Object.fromEntries(
			Object.entries(heron).map(([key, value]) => [key, typeof value === 'number' ? value / 2.54 : value])
		);
		const pattern = await patternOf({
			...inInches,
			unit: 'in',
			allowances: { seamAllowance: '5/8' },
			edges: { 'skirt.hem': 2 }
		});
		expect(edgeIn(pattern, 'skirt.hem').allowance).toBeCloseTo(50.8, 9);
		expect(pieceIn(pattern, 'skirt').text).toContain('Allowance 5/8″; the hem 2″; none on the fold');
		const usual = await patternOf(heron);
		expect(edgeIn(pattern, 'front.neckline').length).toBeCloseTo(edgeIn(usual, 'front.neckline').length, 6);
	});

	it('a body without a name goes by its file, and standard input is read for -', async () => {
		const { name: _, ...nameless } = heron;
		expect(await patternOf(nameless)).toMatchObject({ body: 'body' });
		const piped = await mainHere(['pattern', 'course-dress', '--body', '-', '--json'], {
			input: JSON.stringify({ ...heron, name: 'Kite "grey"\n\u001b[31m' })
		});
		expect(piped.code).toBe(0);
		expect(piped.out.split('\n')).toHaveLength(2);
		expect(onlyPattern(piped.out)).toMatchObject({ body: 'Kite "grey"\n\u001b[31m' });
	});
});

describe('without --json', () => {
	it('prints pieces, edges, seams, numbers, warnings, the order of sewing and cautions, in cm', async () => {
		const { code, out, err } = await patternHere('course-dress', '--body', HERON);
		expect({ code, err }).toEqual({ code: 0, err: '' });
		expect(out).toMatch(
			/^The course dress for Heron, in cm\n\n1 Front bodice\n {2}Cut 2 in fabric, as a pair\n/
		);
		expect(out).toMatch(/^ {2}hem +\d+(\.\d+)? +3 {2}hem$/m);
		expect(out).toMatch(/^ {2}side +64 +1 {2}seam$/m);
		expect(out).toMatch(/^ {2}The sides of the two skirts +64 +64 +0 +0 {2}agree$/m);
		expect(out).toMatch(/^ {2}The hem at the side +0\.\d° {2}smooth$/m);
		expect(out).toMatch(/^ {2}The finished round of the elastic +68$/m);
		expect(out).toMatch(/^Warnings\n {2}none$/m);
		expect(out).toMatch(/^Order of sewing\n {3}1\. Wash and press the cloth/m);
		expect(out).toMatch(/^Cautions\n( {2}.+\n)+$/m);
	});

	it('tells a warning in its place, and keeps an odd name on its line', async () => {
		// An elastic of 50 cm that gathers a waist 2 cm wider, on each quarter, than the underarm: above 2.5.
		const loose = {
			...heron,
			name: 'Kite\n\u001b[31mred',
			waist: 70,
			allowances: { elasticShort: 20, waistIn: -2 }
		};
		const file = folder.write('loose.json', JSON.stringify(loose));
		const { code, out } = await patternHere('course-dress', '--body', file);
		expect(code).toBe(0);
		expect(out).toMatch(/^The course dress for Kite \[31mred, in cm\n/);
		expect(out).toMatch(/^ {2}The gathering of the waist +2\.\d+ +out of bounds$/m);
		expect(out).toMatch(/^Warnings\n {2}The gathering of the waist is 2\.\d+: below 1\.2 .*, above 2\.5 /m);
	});
});

describe('help', () => {
	it('is printed, and the general help names the command', async () => {
		const { code, out, err } = await patternHere('--help');
		expect({ code, err }).toEqual({ code: 0, err: '' });
		expect(out).toMatch(/^Usage:\n {2}square-across pattern GARMENT --body FILE\.json \[--json\]/);
		expect((await mainHere(['--help'])).out).toContain('\n  square-across pattern GARMENT --bodies FILE.csv');
		expect((await mainHere(['patern'])).err).toContain('(did you mean "pattern"?)');
	});
});
