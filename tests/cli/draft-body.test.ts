import { afterAll, describe, expect, it } from 'vitest';
import { fileURLToPath } from 'node:url';
import { draftHere, mainHere, newFolder } from './run-here.ts';
import { COMMAND, runCli, runProcess, type PrintedDraft } from './run-cli.ts';
import { lessonMethods } from '../lessons/lesson-files.ts';

const HERON = fileURLToPath(new URL('../../shared/bodies/heron.json', import.meta.url));
/** Heron without a bust, so that each row below may bring its own. */
const REST = { waist: 78, hip: 102, neck: 37, shoulderWidth: 38.4, backLength: 42.5, waistToHip: 20.5 };

const folder = newFolder();
afterAll(() => folder.remove());

const file = (content: unknown): string =>
	folder.write('body.json', typeof content === 'string' ? content : JSON.stringify(content));

describe('square-across draft back-block --body heron.json', () => {
	it('prints one line of JSON: points, lines with lengths and path data, in millimetres', async () => {
		const { code, out, err } = await runCli(['draft', 'back-block', '--body', HERON, '--json']);
		expect({ code, err }).toEqual({ code: 0, err: '' });
		expect(out.split('\n')).toHaveLength(2);
		const { method, body, unit, points, lines, warnings } = JSON.parse(out) as PrintedDraft;
		expect({ method, body, unit, warnings }).toEqual({
			method: 'back-block',
			body: 'Heron',
			unit: 'mm',
			warnings: []
		});
		expect(points).toMatchObject({
			O: [0, 0],
			A: [0, 222],
			S: [192, 40],
			U: [260, 222],
			N: [71.666666667, 0]
		});
		expect(lines['armhole']?.length).toBeCloseTo(224.747237, 5);
		expect(lines['shoulder']).toEqual({ length: 126.807377984, path: 'M71.666667 0L192 40' });
		expect(lines['neck']?.path).toBe('M0 25C34.990783 25 67.077043 13.807119 71.666667 0');
		expect(out).not.toMatch(/-0[,\]]/);
	});

	it('prints a table in centimetres without --json', async () => {
		const { code, out } = await draftHere('back-block', '--body', HERON);
		expect(code).toBe(0);
		expect(out).toMatch(/^The back block for Heron, in cm from the corner\n/);
		expect(out).toMatch(/^S +19\.2 +4 {2}shoulder point$/m);
		expect(out).toMatch(/^armhole +22\.47 {2}the armhole$/m);
	});

	it('reads standard input for -, and takes the name of the file for a body without one', async () => {
		const input = `\uFEFF${JSON.stringify({ ...REST, bust: '96,5' })}`;
		const piped = await runCli(['draft', 'back-block', '--body', '-', '--json'], { input });
		expect(JSON.parse(piped.out)).toMatchObject({ body: 'body', points: { U: [261.25, 222] } });
		const named = await draftHere('back-block', '--body', folder.write('kite.json', input), '--json');
		expect(JSON.parse(named.out)).toMatchObject({ body: 'kite', points: { U: [261.25, 222] } });
	});

	it('works allowances and inches', async () => {
		const body = {
			...{ name: 'Lark', unit: 'in', bust: '37 3/4', waist: 29.5, hip: '40 1/8', neck: '14 3/8' },
			...{
				shoulderWidth: '15 5/8',
				backLength: '18 1/4',
				waistToHip: '9 1/16',
				allowances: { bustEase: '2 1/4' }
			}
		};
		const { out } = await draftHere('back-block', '--body', file(body), '--json');
		expect(JSON.parse(out)).toMatchObject({ unit: 'mm', points: { U: [254, 228.4375], W: [0, 463.55] } });
	});

	it('ends quietly when nobody reads to the end', async () => {
		const row = `${[96, ...Object.values(REST)].join(',')}\n`;
		const table = folder.write('many.csv', `bust,${Object.keys(REST).join(',')}\n${row.repeat(3000)}`);
		const command = `set -o pipefail; "${process.execPath}" "${COMMAND}" draft back-block --bodies "${table}" | head -n 1 | wc -l`;
		const { code, out, err } = await runProcess('bash', ['-c', command]);
		expect({ code, out: out.trim(), err }).toEqual({ code: 0, out: '1', err: '' });
	});
});

describe('one line on standard error, exit code 2, nothing on standard output', () => {
	const rejects = async (words: readonly string[], line: string): Promise<void> => {
		const { code, out, err } = await draftHere(...words);
		expect(folder.short(err)).toBe(`${line}\n`);
		expect({ code, out }).toEqual({ code: 2, out: '' });
	};

	it.each<[content: unknown, line: string]>([
		['{"bust":\n"96', 'body.json: this is not JSON: '],
		['', 'body.json: this is not JSON: Unexpected end of JSON input'],
		[[1], 'body.json: body: Invalid input: expected object, received array; seen: [1]'],
		[{ ...REST, bust: true }, 'body.json: bust: a length is a number or a text such as "37 3/4", not true'],
		[
			{ ...REST, bust: 'a\nb\u001b[31m' },
			'body.json: bust: "a b [31m" is not a length; write a number such as'
		],
		[{ ...REST, bustt: 96 }, 'body.json: bustt: there is no measurement of this name (did you mean "bust"?)'],
		[
			{ ...REST, bust: 960 },
			'body.json: bust: the bust must lie from 5 cm to 300 cm, not 960 cm (written 960, unit cm)'
		],
		[
			{ ...REST, bust: 96, allowances: { bustEase: 31 } },
			'body.json: allowances.bustEase: the bust ease must lie from -4 cm to 30 cm, not 31 cm (written 31, unit cm)'
		],
		[REST, 'body.json: bust: missing; back-block needs it'],
		[
			{ name: 'Knot' },
			'body.json: bust, waist, hip, neck, shoulderWidth, backLength, waistToHip: missing; back-block needs it'
		],
		[
			{ ...REST, bust: 50 },
			'body.json: bust (50 cm) and shoulderWidth (38.4 cm) disagree: at the underarm the back must be at least 1.5 cm wider than at the armhole above it (here it is -4.7 cm); measure both again'
		]
	])('%j', async (content, line) => {
		const { code, out, err } = await draftHere('back-block', '--body', file(content), '--json');
		expect(folder.short(err)).toContain(line);
		expect(err.split('\n')).toHaveLength(2);
		expect({ code, out }).toEqual({ code: 2, out: '' });
	});

	it('a refused body: every rule that fails is named', async () => {
		const body = { ...REST, bust: 50, backLength: 25 };
		const { code, err } = await draftHere('back-block', '--body', file(body));
		expect(code).toBe(2);
		expect(err).toContain('bust (50 cm) and shoulderWidth (38.4 cm) disagree: ');
		expect(err).toContain('; shoulderWidth (38.4 cm) and backLength (25 cm) disagree: ');
		expect(err.split('\n')).toHaveLength(2);
	});

	it.each<[words: readonly string[], line: string]>([
		[
			['back-blok', '--body', 'x'],
			`draft: there is no method "back-blok" (did you mean "back-block"?); the methods are ${[...lessonMethods().keys()].join(', ')}`
		],
		[[], 'draft: name the method to draft, such as back-block'],
		[['back-block'], 'draft: give --body FILE for one body, or --bodies FILE.csv for many'],
		[['back-block', '--body', 'a', '--bodies', 'b'], 'draft: give --body or --bodies, not both (a, b)'],
		[['back-block', '--body', 'a', '--body', 'b'], 'draft: --body was given twice: a, b'],
		[['back-block', '--bodi', 'a'], 'draft: there is no option --bodi (did you mean "--body"?)'],
		[['back-block', '-x'], 'draft: there is no option -x'],
		[['back-block', '--body'], 'draft: --body needs the name of a file after it'],
		[['back-block', '--body', '--json'], 'draft: --body needs the name of a file after it'],
		[['back-block', '--json=1', '--body', 'a'], 'draft: --json takes no value'],
		[['back-block', 'front', '--body', 'a'], 'draft: one method at a time; "front" is one word too many'],
		[['back-block', '--body', 'gone.json'], 'gone.json: there is no such file'],
		[['back-block', '--body', '/'], '/: this is a folder, not a file']
	])('%j', async (words, line) => {
		await rejects(words, line);
	});

	it('the process itself does the same', async () => {
		const { code, out, err } = await runCli(['draft', 'back-block', '--body', 'gone.json']);
		expect({ code, out, err }).toEqual({ code: 2, out: '', err: 'gone.json: there is no such file\n' });
		const unknown = await mainHere(['darft']);
		expect(unknown).toEqual({
			code: 2,
			out: '',
			err: 'There is no command "darft" (did you mean "draft"?). Try square-across --help.\n'
		});
	});
});

describe('help', () => {
	it('is printed, with exit code 0', async () => {
		const general = await mainHere(['--help']);
		expect(general.code).toBe(0);
		expect(general.out).toMatch(/^Usage:\n {2}square-across draft METHOD --body FILE\.json \[--json\]/);
		const { code, out, err } = await draftHere('--help');
		expect({ code, err }).toEqual({ code: 0, err: '' });
		expect(out).toMatch(/^Usage:\n {2}square-across draft METHOD --body/);
	});
});
