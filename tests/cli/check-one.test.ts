import { afterAll, describe, expect, it } from 'vitest';
import { BACK, bodyFile, checkHere, FRONT, stepOf, type Places, type PrintedReport } from './check-here.ts';
import { runCli } from './run-cli.ts';
import { mainHere, newFolder } from './run-here.ts';
import { lessonMethods } from '../lessons/lesson-files.ts';

const folder = newFolder();
afterAll(() => folder.remove());

const asFile = (name: string, content: unknown): string =>
	folder.write(name, typeof content === 'string' ? content : JSON.stringify(content));

interface Handed {
	readonly method?: 'back-block' | 'front-block';
	readonly body?: string;
	readonly policy?: unknown;
}
const words = (placements: unknown, { method = 'back-block', body = 'heron', policy }: Handed): string[] => [
	...[method, '--body', bodyFile(body), '--placements', asFile('placements.json', placements)],
	...(policy === undefined ? [] : ['--policy', asFile('policy.json', policy)])
];
const handIn = async (placements: Places, handed: Handed = {}): Promise<PrintedReport> => {
	const { code, out, err } = await checkHere(...words(placements, handed), '--json');
	expect({ code, err: folder.short(err) }).toEqual({ code: 0, err: '' });
	expect(out.split('\n')).toHaveLength(2);
	return JSON.parse(out) as PrintedReport;
};
const notes = ({ steps }: PrintedReport, verdict: string): readonly string[] =>
	steps.filter((each) => each.verdict === verdict).map(({ step }) => step);

describe('square-across check METHOD --body heron.json --placements P.json --json', () => {
	it('all right: every point of the back, as worked by hand', async () => {
		const { steps, total } = await handIn(BACK);
		expect(steps.map(({ step }) => step)).toEqual('A W H N C K S Q P M U W1 W2 V J G G1 G2 G3 G4'.split(' '));
		expect(total).toEqual({ mark: 20, outOf: 20, mistakes: 0, consequences: 0 });
		for (const step of steps)
			expect(step).toEqual({
				...{ step: step.step, verdict: 'right', offBy: expect.any(Number) as number },
				...{ followThrough: false, note: 'right', alternatives: [], mark: 1 }
			});
	});

	it('all right: every point of the front, the dart included', async () => {
		const { steps, total } = await handIn(FRONT, { method: 'front-block' });
		expect(steps.map(({ step }) => step).sort()).toEqual(Object.keys(FRONT).sort());
		expect(total).toEqual({ mark: 31, outOf: 31, mistakes: 0, consequences: 0 });
	});

	it('the real command prints the same', async () => {
		const here = await handIn(FRONT, { method: 'front-block' });
		const { code, out, err } = await runCli([
			...['check', ...words(FRONT, { method: 'front-block' })],
			'--json'
		]);
		expect({ code, err }).toEqual({ code: 0, err: '' });
		expect(JSON.parse(out)).toEqual(here);
	});

	it('what was measured may be neither right nor wrong by its own error', async () => {
		const { steps, total } = await handIn({
			...BACK,
			A: { at: [0, 223], error: 1.5 },
			U: { kind: 'point', at: [260, 222], error: 1 }
		});
		expect(steps.find(({ step }) => step === 'A')).toMatchObject({
			...{ verdict: 'cannot-tell', note: 'cannot-tell', mark: 0, error: 1.5, offBy: 1 }
		});
		expect(steps.find(({ step }) => step === 'U')).toMatchObject({ verdict: 'right', mark: 1 });
		expect(total).toEqual({ mark: 19, outOf: 20, mistakes: 0, consequences: 0, cannotTell: 1 });
		const { out } = await checkHere(...words({ A: { at: [0, 223], error: 1.5 } }, {}));
		expect(out).toContain('to be measured again');
	});

	it('a body without a dart is asked for none', async () => {
		const { steps } = await handIn({}, { method: 'front-block', body: 'siskin' });
		expect(steps.map(({ step }) => step).sort()).toEqual(
			'A B C G G1 G2 G3 G4 H J M N P Q S T U V W W1 W2'.split(' ')
		);
	});

	it('reads the body or the placements from standard input', async () => {
		const run = await mainHere(
			['check', 'back-block', '--body', bodyFile('heron'), '--placements', '-', '--json'],
			{
				input: `\uFEFF${JSON.stringify(BACK)}`
			}
		);
		expect({ code: run.code, err: run.err }).toEqual({ code: 0, err: '' });
		expect((JSON.parse(run.out) as PrintedReport).total.mark).toBe(20);
	});
});

// A 6 mm low, and all that is drawn from it. The numbers are worked by hand.
const LOW_A = {
	...BACK,
	...{ A: [0, 228], Q: [192, 228], P: [192, 134], M: [182, 134], U: [260, 228], G3: [96, 248] }
};
// N 6 mm out; in front C hangs on O-N, the shoulder swings from N, and the armhole hangs on it.
const WIDE_N = {
	...FRONT,
	...{ N: [77.7, 0], C: [0, 87.7], S: [194.2, 50], Q: [194.2, 222], P: [194.2, 136], M: [179.2, 136] }
};

describe('one slip, followed through', () => {
	it('is 1 mistake with 5 consequences on the back', async () => {
		const report = await handIn(LOW_A);
		expect(report.total).toEqual({ mark: 19, outOf: 20, mistakes: 1, consequences: 5 });
		expect(stepOf(report, 'A')).toMatchObject({ verdict: 'wrong', offBy: 6, followThrough: false, mark: 0 });
		for (const name of ['Q', 'P', 'M', 'U', 'G3'])
			expect(stepOf(report, name)).toMatchObject({
				verdict: 'right',
				note: 'right',
				followThrough: true,
				mark: 1
			});
	});

	it('is 1 mistake with 5 consequences on the front', async () => {
		const report = await handIn(WIDE_N, { method: 'front-block' });
		expect(report.total).toEqual({ mark: 30, outOf: 31, mistakes: 1, consequences: 5 });
		expect(notes(report, 'wrong')).toEqual(['N']);
		expect(report.steps.filter(({ followThrough }) => followThrough).map(({ step }) => step)).toEqual(
			'C S Q P M'.split(' ')
		);
	});

	it.each([
		['full', 19, 1],
		['half', 16.5, 0.5],
		['none', 14, 0]
	])('is paid as the policy says: %s', async (followThrough, whole, each) => {
		const report = await handIn(LOW_A, { policy: { followThrough } });
		expect(report.total).toEqual({ mark: whole, outOf: 20, mistakes: 1, consequences: 5 });
		expect(stepOf(report, 'Q').mark).toBe(each);
	});
});

describe('a typed distance starts from where its start stands', () => {
	it('an entry before it that is no placement does not spoil it', async () => {
		const report = await handIn({ W: { kind: 'point', at: ['0', '425'] }, H: { typed: '20.5' } });
		expect(stepOf(report, 'W').verdict).toBe('not-valid');
		expect(stepOf(report, 'H')).toMatchObject({ verdict: 'right', offBy: 0, followThrough: false });
	});

	it('a start that was not handed in follows from what was', async () => {
		// A 6 mm low; Q below K follows it; from there U is 6.8 cm across, at the level of A.
		const report = await handIn({ A: [0, 228], U: { typed: '6.8', from: 'Q', go: 'across' } });
		expect(stepOf(report, 'U')).toMatchObject({ verdict: 'right', followThrough: true });
		expect(report.total.mistakes).toBe(1);
	});
});

describe('the level of a policy', () => {
	it.each([
		['strict', 0.9, 'right'],
		['strict', 1.1, 'wrong'],
		['normal', 1.9, 'right'],
		['normal', 2.1, 'wrong'],
		['beginner', 3.9, 'right'],
		['beginner', 4.1, 'wrong']
	])('%s: %d mm off is %s', async (level, off, verdict) => {
		const report = await handIn({ W: [0, 425 + off] }, { policy: { level } });
		expect(stepOf(report, 'W')).toMatchObject({ verdict, offBy: off });
	});

	it('is normal without a policy', async () => {
		expect(stepOf(await handIn({ W: [0, 426.9] }), 'W').verdict).toBe('right');
		expect(stepOf(await handIn({ W: [0, 427.1] }), 'W').verdict).toBe('wrong');
	});
});

describe('typed placements', () => {
	it('that cannot be read spoil their own step and no other, and say why', async () => {
		const report = await handIn({ A: { typed: '38.4//2' }, W: { typed: '42.5' } });
		expect(stepOf(report, 'A')).toMatchObject({ verdict: 'not-valid', mark: 0 });
		expect(JSON.stringify(stepOf(report, 'A'))).toContain('"because":');
		expect(stepOf(report, 'W').verdict).toBe('right');
	});

	it('a sum is laid off from the step’s own start, in its own direction and the body’s unit', async () => {
		const typed = {
			A: { typed: '38.4/2+3' },
			N: { typed: '37/6+1' },
			C: { typed: 2.5 },
			W: { typed: '425 mm' }
		};
		const report = await handIn(typed);
		expect(notes(report, 'right')).toEqual(['A', 'W', 'N', 'C']);
	});

	it('half for quarter is told by its sum', async () => {
		expect(stepOf(await handIn({ U: { typed: '96/2+2' } }), 'U')).toEqual({
			...{ step: 'U', verdict: 'wrong', offBy: 240, followThrough: false },
			...{ note: 'fraction:half-for-quarter', alternatives: [], mark: 0 }
		});
		expect(stepOf(await handIn({ U: { typed: '96/2+2' } }, { method: 'front-block' }), 'U').note).toBe(
			'fraction:half-for-quarter'
		);
	});

	it('the right sum from another point, or another way, is that mistake', async () => {
		const from = await handIn({ W1: { typed: '78/4+1', from: 'A' } });
		expect(stepOf(from, 'W1')).toMatchObject({ verdict: 'wrong', offBy: 203, note: 'start:A-for-W' });
		const way = await handIn({ W1: { typed: '78/4+1', go: 'in' } });
		expect(stepOf(way, 'W1')).toMatchObject({ verdict: 'wrong', offBy: 410, note: 'direction:opposite' });
	});

	it('starts from the learner’s own point, where that was put elsewhere', async () => {
		const report = await handIn({ A: [0, 228], U: { typed: '96/4+2' } });
		expect(stepOf(report, 'U')).toMatchObject({ verdict: 'right', followThrough: true });
		const before = await handIn({ U: { typed: '96/4+2' }, A: [0, 228] });
		expect(stepOf(before, 'U')).toMatchObject({ verdict: 'right', followThrough: true });
	});

	it('counts in inches for a body in inches', async () => {
		const report = await handIn(
			{ W: { typed: '18 1/4' }, A: { typed: '15 5/8/2 + 3 cm' } },
			{ body: 'lark' }
		);
		expect(stepOf(report, 'W')).toMatchObject({ verdict: 'right', offBy: 0 });
	});

	it('in metres it is no placement', async () => {
		expect(stepOf(await handIn({ U: { typed: '9600' } }), 'U').verdict).toBe('not-valid');
	});
});

describe('what was not done, and what is no placement', () => {
	it('is unfinished, or not valid; neither is a mistake, and the rest is judged', async () => {
		const report = await handIn({
			...{ A: [0, 222], W: ['x', 1], H: [0, 630, 1], N: 'far', C: { kind: 'point' }, K: null },
			...{ S: { kind: 'line', segments: [{ from: [0, 0], to: [192, 30] }] }, Q: [6000, 0] }
		});
		expect(notes(report, 'right')).toEqual(['A']);
		expect(notes(report, 'not-valid')).toEqual(['W', 'H', 'N', 'C', 'S', 'Q']);
		expect(notes(report, 'unfinished')).toEqual('K P M U W1 W2 V J G G1 G2 G3 G4'.split(' '));
		expect(report.total).toEqual({ mark: 1, outOf: 20, mistakes: 0, consequences: 0 });
		expect(stepOf(report, 'W')).toEqual({
			...{ step: 'W', verdict: 'not-valid', offBy: null, followThrough: false },
			...{ note: 'not-valid', alternatives: [], mark: 0 },
			because: expect.stringContaining('this is not a placement') as string
		});
	});

	it('lines are asked for once one was handed in', async () => {
		const shoulder = { kind: 'line', segments: [{ from: BACK['N'], to: BACK['S'] }] };
		const report = await handIn({ ...BACK, shoulder });
		expect(stepOf(report, 'shoulder').verdict).toBe('right');
		expect(stepOf(report, 'hem').verdict).toBe('unfinished');
		expect(report.total).toMatchObject({ mark: 21, outOf: 30 });
	});
});

describe('a table for reading', () => {
	it('has a row for every step and a total', async () => {
		const { code, out, err } = await checkHere(
			...words({ ...LOW_A, U: { typed: '96/2+2' }, J: ['x'], V: undefined }, {})
		);
		expect({ code, err }).toEqual({ code: 0, err: '' });
		const rows = out.split('\n');
		expect(rows[0]).toBe('The back block for Heron');
		expect(out).toMatch(/^A +wrong +6 mm off +0\.00 {2}\S+/m);
		expect(out).toMatch(/^Q +right +0 mm off +1\.00 {2}from own earlier marks$/m);
		expect(out).toMatch(/^U +wrong +240\.1 mm off +0\.00 {2}fraction:half-for-quarter$/m);
		expect(out).toMatch(/^J +not-valid +0\.00$/m);
		expect(out).toMatch(/^V +unfinished +0\.00$/m);
		expect(rows.slice(-2)).toEqual(['16.00 of 20; mistakes: 2, consequences: 4', '']);
		expect(rows).toHaveLength(23);
	});
});

describe('one line on standard error, exit code 2, nothing on standard output', () => {
	const rejects = async (run: readonly string[], line: string): Promise<void> => {
		const { code, out, err } = await checkHere(...run);
		expect(folder.short(err)).toBe(`${line}\n`);
		expect({ code, out }).toEqual({ code: 2, out: '' });
	};
	const heron = ['--body', bodyFile('heron')];
	const placed = (content: unknown): string[] => ['--placements', asFile('p.json', content)];

	it.each<[content: unknown, line: string]>([
		[{ shouldr: [1, 2] }, 'p.json: shouldr: there is no such step (did you mean "shoulder"?)'],
		[{ u: [1, 2] }, 'p.json: u: there is no such step (did you mean "U"?)'],
		['{"A":', 'p.json: this is not JSON: Unexpected end of JSON input'],
		[[1], 'p.json: placements: this is not {"A":[across,down],...}: [1]'],
		[
			{ Q: { typed: '5' } },
			'p.json: Q: a typed distance needs "from" (a point that is drafted) and "go" (up, down, across or in) here'
		],
		[
			{ U: { typed: '5', from: 'Z' } },
			'p.json: U: a typed distance needs "from" (a point that is drafted) and "go" (up, down, across or in) here'
		]
	])('placements %j', async (content, line) => {
		await rejects(['back-block', ...heron, ...placed(content)], line);
	});

	it('a step of the other block', async () => {
		await rejects(
			['front-block', ...heron, ...placed({ K: [192, 0] })],
			'p.json: K: there is no such step (did you mean "O"?)'
		);
	});

	const flat = {
		name: 'Flat',
		bust: 50,
		waist: 78,
		hip: 102,
		neck: 37,
		shoulderWidth: 38.4,
		backLength: 42.5
	};
	it('a refused body, with the measurements at odds', async () => {
		const body = asFile('flat.json', { ...flat, waistToHip: 20.5 });
		await rejects(
			['back-block', '--body', body, ...placed({})],
			'Flat: bust (50 cm) and shoulderWidth (38.4 cm) disagree: at the underarm the back must be at least 1.5 cm wider than at the armhole above it (here it is -4.7 cm); measure both again'
		);
	});

	it('a body that lacks measurements', async () => {
		const body = asFile('flat.json', { ...flat, bust: 96 });
		await rejects(
			['back-block', '--body', body, ...placed({})],
			'Flat: waistToHip: missing; back-block needs it'
		);
		await rejects(
			['front-block', '--body', body, ...placed({})],
			'Flat: waistToHip, frontLength, bustHeight, bustSpan: missing; front-block needs it'
		);
	});

	it.each<[content: unknown, line: string]>([
		[{ level: 'hard' }, 'policy.json: level: Invalid option: expected one of "strict"|"normal"|"beginner"'],
		[{ lvl: 'strict' }, 'policy.json: policy: Unrecognized key: "lvl"'],
		[{ attempts: 0 }, 'policy.json: attempts: Too small: expected number to be >0']
	])('policy %j', async (content, line) => {
		await rejects(['back-block', ...heron, ...placed({}), '--policy', asFile('policy.json', content)], line);
	});

	it.each<[words: readonly string[], line: string]>([
		[[], 'check: name the method to check, such as back-block'],
		[
			['back-blok', '--stdin'],
			`check: there is no method "back-blok" (did you mean "back-block"?); the methods are ${[...lessonMethods().keys()].join(', ')}`
		],
		[
			['back-block'],
			'check: give --placements FILE.json or --tape FILE for one learner, or --stdin for many'
		],
		[['back-block', '--placements', 'p.json'], 'check: give --body FILE.json'],
		[
			['back-block', '--stdin', '--placements', 'p.json'],
			'check: give --stdin or --placements, not both (p.json)'
		],
		[
			['back-block', '--placement', 'p.json'],
			'check: there is no option --placement (did you mean "--placements"?)'
		],
		[['back-block', '--stdin=1'], 'check: --stdin takes no value'],
		[['back-block', ...heron, '--placements', 'gone.json'], 'gone.json: there is no such file'],
		[['back-block', '--placements', 'a', '--placements', 'b'], 'check: --placements was given twice: a, b']
	])('%j', async (run, line) => {
		await rejects(run, line);
	});

	it('the process itself does the same', async () => {
		const run = await runCli(['check', 'back-block', ...heron, ...placed({ u: [1, 2] })]);
		expect({ ...run, err: folder.short(run.err) }).toEqual({
			...{ code: 2, out: '' },
			err: 'p.json: u: there is no such step (did you mean "U"?)\n'
		});
	});
});

it('help is printed, with exit code 0', async () => {
	const { code, out, err } = await checkHere('--help');
	expect({ code, err }).toEqual({ code: 0, err: '' });
	expect(out).toMatch(/^Usage:\n {2}square-across check METHOD --body FILE\.json --placements FILE\.json/);
});
