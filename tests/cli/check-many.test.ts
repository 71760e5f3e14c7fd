import { afterAll, describe, expect, it } from 'vitest';
import { BACK, bodyFile, FRONT, stepOf, type PrintedLine, type PrintedReport } from './check-here.ts';
import { HERON } from '../reference/front-block-bodies.ts';
import { COMMAND, runCli, runProcess } from './run-cli.ts';
import { mainHere, newFolder } from './run-here.ts';

const folder = newFolder();
afterAll(() => folder.remove());

/** Hands in one line each, here or as a process of its own. */
const handInBy = async (
	run: typeof mainHere,
	method: string,
	lines: readonly unknown[],
	...more: readonly string[]
): Promise<readonly PrintedLine[]> => {
	const input = lines.map((line) => (typeof line === 'string' ? line : JSON.stringify(line))).join('\n');
	const { code, out, err } = await run(['check', method, '--stdin', ...more], { input });
	expect({ code, err }).toEqual({ code: 0, err: '' });
	return out
		.split('\n')
		.slice(0, -1)
		.map((line) => JSON.parse(line) as PrintedLine);
};
const handIn = (
	method: string,
	lines: readonly unknown[],
	...more: readonly string[]
): Promise<readonly PrintedLine[]> => handInBy(mainHere, method, lines, ...more);
const report = (line: PrintedLine | undefined): PrintedReport => {
	if (!line || 'refused' in line) throw new Error(`no report: ${JSON.stringify(line)}`);
	return line;
};
const refused = (line: PrintedLine | undefined): string => (line && 'refused' in line ? line.refused : '');

const HERON_FILE = ['--body', bodyFile('heron')];

describe('square-across check METHOD --stdin', () => {
	it('answers each line in its place, a bad one among them, as a process of its own', async () => {
		const low = {
			...BACK,
			...{ A: [0, 228], Q: [192, 228], P: [192, 134], M: [182, 134], U: [260, 228], G3: [96, 248] }
		};
		const lines = await handInBy(
			runCli,
			'back-block',
			[
				{ learner: 'Ash', placements: BACK },
				{ learner: 'Birch', placements: low },
				'{"learner":"Cedar","placements":',
				{ learner: 'Damson', placements: { u: [1, 2] } },
				'',
				{ learner: 'Elder', work: BACK },
				[BACK],
				{ learner: 8, placements: { U: { typed: '96/2+2' } } },
				{ placements: {} }
			],
			...HERON_FILE
		);
		expect(lines.map(({ learner }) => learner)).toEqual(['Ash', 'Birch', 3, 'Damson', 'Elder', 7, 8, 9]);
		expect(report(lines[0]).total).toEqual({ mark: 20, outOf: 20, mistakes: 0, consequences: 0 });
		expect(report(lines[1]).total).toEqual({ mark: 19, outOf: 20, mistakes: 1, consequences: 5 });
		expect(refused(lines[2])).toBe('line 3: this is not JSON: Unexpected end of JSON input');
		expect(refused(lines[3])).toBe('line 4: u: there is no such step (did you mean "U"?)');
		expect(refused(lines[4])).toContain(
			'line 6: a submission is {"placements":{...}} and may have a body, not '
		);
		expect(refused(lines[5])).toContain('line 7: a submission is ');
		expect(stepOf(report(lines[6]), 'U').note).toBe('fraction:half-for-quarter');
		expect(report(lines[7]).total).toEqual({ mark: 0, outOf: 20, mistakes: 0, consequences: 0 });
	});

	it('takes each line’s own body, and the one of --body where a line has none', async () => {
		const wide = { ...HERON, bust: 100 };
		const at = (u: number) => ({ U: [u, 222] });
		const lines = await handIn(
			'front-block',
			[
				{ learner: 1, body: wide, placements: at(270) },
				{ learner: 2, placements: at(270) },
				{ learner: 3, placements: at(260) },
				{ learner: 4, body: { ...HERON, bust: 50 }, placements: at(260) },
				{ learner: 5, body: { bust: 96 }, placements: at(260) },
				{ learner: 6, body: { ...HERON, allowances: { bustEase: 12 } }, placements: at(270) },
				{ learner: 7, body: { ...HERON, unit: 'in', bust: 'wide' }, placements: {} },
				{ learner: 8, body: null, placements: {} }
			],
			...HERON_FILE
		);
		const verdicts = [0, 1, 2, 5].map((i) => stepOf(report(lines[i]), 'U').verdict);
		expect(verdicts).toEqual(['right', 'wrong', 'right', 'right']);
		expect(refused(lines[3])).toContain('line 4: bust (50 cm) and shoulderWidth (38.4 cm) disagree: ');
		expect(refused(lines[4])).toBe(
			'line 5: waist, hip, neck, shoulderWidth, backLength, waistToHip, frontLength, bustHeight, bustSpan: missing; front-block needs it'
		);
		expect(refused(lines[6])).toContain('line 7: bust: "wide" is not a length');
		expect(refused(lines[7])).toContain('line 8: body: ');
	});

	it('marks every line by the policy', async () => {
		const policy = folder.write('policy.json', JSON.stringify({ level: 'strict', followThrough: 'half' }));
		// W 1.5 mm low, and all that hangs on it: strictly one mistake, and a half for each of nine that follow. The dart's
		// top hangs on the armhole level.
		const lower = ['H', 'W1', 'W2', 'V', 'J', 'G', 'G1', 'G2', 'G4'].map((name) => {
			const [across, down] = BACK[name] as [number, number];
			return [name, [across, down + 1.5]] as const;
		});
		const placements = { ...BACK, W: [0, 426.5], ...Object.fromEntries(lower) };
		const lines = await handIn(
			'back-block',
			[{ placements }, { placements: BACK }],
			...HERON_FILE,
			'--policy',
			policy
		);
		expect(lines.map((line) => report(line).total)).toEqual([
			{ mark: 14.5, outOf: 20, mistakes: 1, consequences: 9 },
			{ mark: 20, outOf: 20, mistakes: 0, consequences: 0 }
		]);
	});

	it('a line without a body, and none for all', async () => {
		const lines = await handIn('back-block', [{ learner: 'Ash', placements: BACK }]);
		expect(lines).toEqual([
			{ learner: 'Ash', refused: 'line 1: body: missing; give one in the line, or --body for all' }
		]);
	});

	it('reads a byte order mark and Windows line ends; nothing in gives nothing out', async () => {
		const line = JSON.stringify({ learner: 'Ash', placements: FRONT });
		const lines = await handIn('front-block', [`\uFEFF${line}\r\n${line}\r\n`], ...HERON_FILE);
		expect(lines.map((each) => report(each).total.mark)).toEqual([31, 31]);
		expect(await handIn('back-block', ['', ' '], ...HERON_FILE)).toEqual([]);
	});

	it('gives every learner what they would get alone', async () => {
		const slips = [0, 3, 6, 30].map((off) => ({ ...FRONT, W: [0, 455 + off] }));
		const many = await handIn(
			'front-block',
			slips.map((placements, learner) => ({ learner, placements })),
			...HERON_FILE
		);
		for (const [learner, placements] of slips.entries()) {
			const alone = await mainHere(['check', 'front-block', ...HERON_FILE, '--placements', '-', '--json'], {
				input: JSON.stringify(placements)
			});
			expect(many[learner]).toEqual({ learner, ...(JSON.parse(alone.out) as PrintedReport) });
		}
	});

	it('ends quietly when nobody reads to the end', async () => {
		const line = JSON.stringify({ placements: BACK });
		const command = `set -o pipefail; for i in $(seq 400); do echo '${line}'; done | "${process.execPath}" "${COMMAND}" check back-block --stdin --body "${bodyFile('heron')}" | head -n 1 | wc -l`;
		const { out, err } = await runProcess('bash', ['-c', command]);
		expect({ out: out.trim(), err: err.replace(/.*[Bb]roken pipe\n/g, '') }).toEqual({ out: '1', err: '' });
	});
});
