import { execFile } from 'node:child_process';
import { readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { promisify } from 'node:util';
import { beforeAll, describe, expect, it } from 'vitest';
import { PROJECT, withTreeCopy } from './tree-copy.ts';

const run = promisify(execFile);

/** A kind of step that the program has not: a point so far across and so far down from another. */
const RULES = `
import { mm } from '#shared/units.ts';
import { at } from '#geometry/point.ts';
import { lengthOf } from '../../formula/value.ts';
import { madePoint, PLACE, type StepRules } from '../step-rules.ts';

export const offset: StepRules<'offset'> = {
	makes: 'point',
	answer: () => PLACE,
	ruler: ({ from, across }) => ({ formula: across, from, go: 'across' }),
	rule: ({ across, down }) => [across, down],
	read: (file, formula) => ({
		...file,
		across: formula(file.across, 'across'),
		down: formula(file.down, 'down')
	}),
	formulas: ({ across, down }) => [across, down],
	needs: ({ from }) => [from],
	start: ({ from }) => from,
	work: ({ from, across, down }, scope) => {
		const { x, y } = scope.point(from);
		return madePoint(at(mm(x + lengthOf(across, scope)), mm(y + lengthOf(down, scope))));
	},
	explain: ({ name, from, across }, scope, { speech }) => ({
		where: name + ' is measured from ' + from + '.',
		rule: name + ' lies across and down from ' + from + '.',
		worked: name + ' lies ' + speech.length(lengthOf(across, scope)) + ' across.'
	})
};
`;

/** Every place that a new kind is entered in beside its own folder: the text before which it is written, and what. */
const ENTERED = [
	[
		'shared/method.ts',
		"\tmark: step('mark'",
		"\toffset: step('offset', pointName, { from: pointName, across: formula, down: formula }),\n"
	],
	[
		'src/lib/drafting/steps/kinds.ts',
		'import { parallel }',
		"import { offset } from './new-kind/offset.ts';\n"
	],
	['src/lib/drafting/steps/kinds.ts', '\tcorner,\n', '\toffset,\n']
] as const;

/** What the program makes of a draft with such a step. */
const PROBE = `
import { readBody } from '#shared/body.ts';
import { first } from '#shared/speech/en/first.ts';
import { later } from '#shared/speech/en/later.ts';
import { speechOf } from '#shared/speech/speech.ts';
import { mm } from '#shared/units.ts';
import { check } from '#checker/check.ts';
import { diagnose } from '#checker/missteps/diagnose.ts';
import { evaluate } from '#drafting/evaluate.ts';
import { explain } from '#drafting/explain.ts';
import { stepNamed } from '#drafting/method.ts';
import { readMethod } from '#drafting/read-method.ts';
import { stepAnswer } from '#drafting/steps/kinds.ts';
import { draftDrawing } from '#exports/drawing/draft-drawing.ts';
import { drawingsSvg } from '#exports/svg/drawings-svg.ts';
import { draftJson } from '#exports/table/draft-json.ts';
import { ruleOf } from '#practice/rule.ts';
import { inkOf } from '#ui/drawing/ink-of.ts';
import { readPlace } from '#ui/desk/dock/spoken.ts';
import { wayOf } from '#ui/desk/way.ts';

const speech = speechOf({ language: 'en', areas: { ...first, ...later } }, 'cm');
const corner = { kind: 'corner', name: 'O', label: 'the corner' };
const point = { kind: 'offset', name: 'A', label: 'the underarm', from: 'O', across: 'bust / 4', down: 'bust / 8' };
const after = { kind: 'mark', name: 'B', label: 'point B', from: 'A', go: 'down', by: 'bust / 2' };
const line = { kind: 'straight', name: 'side', label: 'the side', through: ['O', 'A'] };
const method = readMethod({ id: 'small', name: 'A small method', steps: [corner, point, after, line], outline: ['side'] }, 'small.yaml');
const body = readBody({ name: 'Sandpiper', bust: 96 });
const evaluation = evaluate(method, body);
if (evaluation.kind !== 'drafted') throw new Error(evaluation.kind);
const { draft } = evaluation;
const step = stepNamed(method, 'A');
const spoken = readPlace('24 across, 12 down', { unit: 'cm', points: draft.points, origin: undefined, go: undefined }, speech);
const put = (x: number, y: number, how = {}) => ({ kind: 'point' as const, at: [x, y] as [number, number], ...how });
const told = (x: number, y: number, how = {}) => diagnose(method, 'A', body, draft, put(x, y, how));
const wrongSum = { typed: { form: 'distance', sum: '96/2', from: 'O', go: 'across', unit: 'cm' } };
process.stdout.write(JSON.stringify({
	place: draft.points['A'],
	answer: stepAnswer(step),
	way: wayOf(stepAnswer(step), draft) ?? 'none',
	typed: spoken.place,
	right: check(method, 'A', draft, put(spoken.place.x, spoken.place.y, { typed: spoken.typed })).answer,
	wrong: check(method, 'A', draft, put(0, mm(50))).answer,
	explained: explain(method, 'A', body, draft, speech),
	unexplained: told(33, 77),
	later: told(draft.points['B']!.x, draft.points['B']!.y),
	sum: told(480, 0, wrongSum),
	rule: ruleOf(step),
	ink: inkOf(method, draft),
	svg: drawingsSvg([draftDrawing(method, draft)], body.name),
	json: JSON.parse(draftJson(draft, body.name, speech))
}));
`;

const TYPES = {
	extends: path.join(PROJECT, 'tsconfig.json'),
	// Those of the project itself, and not of the copy.
	compilerOptions: { paths: {} },
	include: [
		'probe.ts',
		'shared/**/*.ts',
		...['geometry', 'photograph', 'drafting', 'checker', 'practice', 'exports', 'garment'].map(
			(layer) => `src/lib/${layer}/**/*.ts`
		)
	],
	exclude: []
};

describe('a kind of step that is new', () => {
	let found: Readonly<Record<string, unknown>>;
	let complaints: string;
	beforeAll(async () => {
		const planted = {
			'src/lib/drafting/steps/new-kind/offset.ts': RULES,
			'probe.ts': PROBE,
			'tsconfig.json': JSON.stringify(TYPES)
		};
		await withTreeCopy(planted, async (folder) => {
			for (const [file, before, entry] of ENTERED) {
				const whole = path.join(folder, file);
				const text = await readFile(whole, 'utf8');
				expect(text.split(before), `${file} has ${before} once`).toHaveLength(2);
				await writeFile(whole, text.replace(before, entry + before));
			}
			const tsx = pathToFileURL(path.join(PROJECT, 'node_modules/tsx/dist/loader.mjs')).href;
			const { stdout } = await run(process.execPath, ['--import', tsx, 'probe.ts'], { cwd: folder });
			found = JSON.parse(stdout) as typeof found;
			const tsc = path.join(PROJECT, 'node_modules/typescript/bin/tsc');
			const checked = run(process.execPath, [tsc, '--noEmit', '-p', folder], { cwd: folder });
			complaints = await checked.then(
				(said) => said.stdout,
				(failed: unknown) => String((failed as { stdout?: unknown }).stdout)
			);
		});
	}, 300_000);

	it('compiles, entered in its folder and two lists', () => {
		expect(complaints).toBe('');
	});

	it('is drafted, and asks for its place, which is typed across and down', () => {
		expect(found).toMatchObject({ place: { x: 240, y: 120 }, answer: { put: 'place' }, way: 'none' });
		expect(found).toMatchObject({ typed: { x: 240, y: 120 } });
	});

	it('is checked and explained', () => {
		expect(found).toMatchObject({ right: 'right', wrong: 'wrong' });
		expect(found['explained']).toMatchObject({ worked: 'A lies 24 cm across.' });
	});

	it('is diagnosed by what holds of every step and by the sum that was typed, without wrong rules of its own', () => {
		expect(found['unexplained']).toEqual({ kind: 'none' });
		expect(found['later']).toMatchObject({ misstep: { note: 'point:B-for-A' } });
		expect(found['sum']).toMatchObject({ kind: 'certain', misstep: { note: 'fraction:half-for-quarter' } });
	});

	it('has a rule to be practised, named by its formulas', () => {
		expect(found['rule']).toBe('offset:bust/4:bust/8');
	});

	it('is drawn and exported', () => {
		expect(JSON.stringify(found['ink'])).toContain('"A"');
		expect(found['svg']).toMatch(/<text[^>]*>A</);
		expect(found['json']).toMatchObject({ points: { A: [240, 120] } });
	});
});
