import { afterAll, describe, expect, it } from 'vitest';
import { BACK, bodyFile, checkHere, stepOf, type Places, type PrintedReport } from './check-here.ts';
import { newFolder } from './run-here.ts';

const folder = newFolder();
afterAll(() => folder.remove());

/** Heron's back as it is worked by hand; on this paper J is 2 cm too far out. */
const place = (name: string, put: Places = {}): readonly [number, number] => {
	const spot = put[name] ?? (name === 'O' ? [0, 0] : BACK[name]);
	if (!Array.isArray(spot)) throw new Error(`there is no ${name}`);
	return [Number(spot[0]), Number(spot[1])];
};
const [jx, jy] = place('J');
const PAPER: Places = { J: [jx + 20, jy] };
const POINTS = ['O', 'A', 'W', 'H', 'N', 'J', 'U'];
const PAIRS = POINTS.flatMap((from, i) => POINTS.slice(i + 1).map((to) => [from, to] as const));
/** In centimetres, to half a millimetre, as a rule is read. */
const read = (from: string, to: string): number => {
	const [[a, b], [c, d]] = [place(from, PAPER), place(to, PAPER)];
	return Math.round(Math.hypot(a - c, b - d) * 2) / 20;
};
const long = PAIRS.filter(([from, to]) => read(from, to) > 3);
const csv = (rows: readonly string[] = []): string =>
	['from,to,read,again', ...long.map(([a, b]) => `${a},${b},${String(read(a, b))},`), ...rows].join('\n');
const run = (file: string, text: string, ...more: readonly string[]) =>
	checkHere('back-block', '--body', bodyFile('heron'), '--tape', folder.write(file, text), ...more);

interface Printed extends PrintedReport {
	readonly tape: {
		readonly misread: readonly (readonly {
			readonly from: string;
			readonly to: string;
			readonly told: number;
		}[])[];
		readonly open: readonly string[];
	};
}
const printed = async (file: string, text: string, ...more: readonly string[]): Promise<Printed> => {
	const { code, out, err } = await run(file, text, '--json', ...more);
	expect({ code, err: folder.short(err) }).toEqual({ code: 0, err: '' });
	return JSON.parse(out) as Printed;
};

describe('square-across check METHOD --body heron.json --tape readings', () => {
	it('judges the points that the readings of a table find, and says which are open', async () => {
		const report = await printed('readings.csv', csv(), '--measured-with', 'rule');
		expect(stepOf(report, 'J').verdict).toBe('wrong');
		expect(stepOf(report, 'J').offBy).toBeCloseTo(20, 0);
		for (const name of ['A', 'W', 'H', 'N']) expect(stepOf(report, name).verdict, name).not.toBe('wrong');
		expect(stepOf(report, 'V').verdict).toBe('unfinished');
		expect(report.tape.open).toContain('V');
		expect(report.tape.misread).toEqual([]);
	});
	it('reads JSON alike, with readings of one distance in a list, or in one text', async () => {
		const readings = Object.fromEntries(
			long.map(([a, b], i) => [
				`${a}-${b}`,
				[[read(a, b)], `${String(read(a, b))}; ${String(read(a, b))}`][i % 2]
			])
		);
		const report = await printed('readings.json', JSON.stringify({ measuredWith: 'rule', readings }));
		expect(stepOf(report, 'J').offBy).toBeCloseTo(20, 0);
	});
	it('names a reading that is 10 cm off, and what it should be', async () => {
		const text = csv().replace(`A,H,${String(read('A', 'H'))},`, `A,H,${String(read('A', 'H') + 10)},`);
		const { tape } = await printed('misread.csv', text);
		expect(tape.misread.map((of) => of.map(({ from, to }) => `${from}-${to}`))).toEqual([['A-H']]);
		expect(tape.misread[0]?.[0]?.told).toBeCloseTo(read('A', 'H') * 10, -1);
		const { out } = await run('misread.csv', text);
		expect(out).toContain('One reading does not agree with the others: A–H');
		const spanish = await run('misread.csv', text, '--language', 'es');
		expect(spanish.out).toContain('Una lectura no concuerda con las demás: A–H');
	});
	it.each([
		['a distance that is none', 'from,to,read\nO,A,a lot', 'a.csv: O–A: '],
		['a point that is not measured', 'from,to,read\nO,XY,22', 'a.csv: O–XY: no point "XY" is measured here'],
		[
			'two readings that disagree',
			'from,to,read,again\nO,A,22.2,23.2',
			'a.csv: O–A: the readings differ by 1 cm'
		],
		['a table without readings', 'from,to\nO,A', 'a.csv: the column read is missing'],
		[
			'a key that is no distance',
			'{"readings":{"OA":22}}',
			'a.csv: OA: a distance goes from one point to another'
		],
		['an unknown key', '{"readings":{},"tapes":1}', 'a.csv: ']
	])('refuses %s, naming the place', async (_, text, says) => {
		const { code, out, err } = await run('a.csv', text);
		expect({ code, out }).toEqual({ code: 2, out: '' });
		expect(folder.short(err)).toContain(says);
	});
	it('is given alone', async () => {
		const { code, err } = await run('a.csv', csv(), '--stdin');
		expect({ code, says: folder.short(err).includes('--tape is given alone') }).toEqual({
			code: 2,
			says: true
		});
	});
});
