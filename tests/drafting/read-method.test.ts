import { describe, expect, it } from 'vitest';
import { refusalOf } from '../support/refusal.ts';
import { stepNamed } from '#drafting/method.ts';
import { readMethod } from '#drafting/read-method.ts';
import { mark, smallMethod, type WrittenStep } from './small-method.ts';

const complaint = (input: unknown): string => refusalOf(() => readMethod(input, 'small.yaml'));

const withSteps = (steps: readonly WrittenStep[], more: WrittenStep = {}): string =>
	complaint({ id: 'small', name: 'Small', steps, ...more });

const CORNER = { kind: 'corner', name: 'O', label: 'the corner' };
const A = mark('A', 'O', 'down', 'backLength');
const LEVEL = { kind: 'level', name: 'level', label: 'a level', from: 'A', reach: 'bust / 4' };

describe('a sound method', () => {
	const method = smallMethod(
		[
			{ kind: 'level', name: 'level', label: 'a level', from: 'B', reach: 'distance(O, A)' },
			mark('B', 'A', 'down', 'waistToHip + gap'),
			mark('A', 'O', 'down', 'backLength')
		],
		{
			allowances: { gap: { label: 'the gap', default: '1.5 cm', range: ['1 cm', '1 in'] } },
			outline: ['level'],
			refusals: [
				{
					name: 'tooShort',
					need: { down: ['A', 'B'], atLeast: '5 cm' },
					odds: ['backLength', 'waistToHip'],
					because: 'too short'
				}
			]
		}
	);

	it('puts each step after what it needs, and keeps the order of the file otherwise', () => {
		expect(method.steps.map(({ name }) => name)).toEqual(['O', 'A', 'B', 'level']);
	});

	it('lists the measurements that its formulas name, in the order of measuring', () => {
		expect(method.measurements).toEqual(['backLength', 'waistToHip']);
	});

	it('has the block’s allowances and its own', () => {
		expect(method.allowances.find(({ key }) => key === 'bustEase')?.default).toBe(80);
		expect(method.allowances.at(-1)).toEqual({
			key: 'gap',
			noun: { article: 'the', name: 'gap' },
			default: 15,
			range: [10, 25.4]
		});
	});

	it('keeps outline and refusals, in millimetres', () => {
		expect(method.outline).toEqual(['level']);
		expect(method.refusals).toEqual([
			{
				name: 'tooShort',
				measure: { way: 'down', between: ['A', 'B'] },
				bounds: { atLeast: 50 },
				odds: ['backLength', 'waistToHip'],
				because: 'too short'
			}
		]);
	});

	it('is plain data', () => {
		expect(JSON.parse(JSON.stringify(method))).toEqual(method);
	});
});

describe('circles', () => {
	it('are shown step by step', () => {
		const steps = [
			CORNER,
			mark('A', 'C', 'down', 'bust'),
			mark('B', 'A', 'down', 'bust'),
			mark('C', 'B', 'down', 'bust')
		];
		expect(withSteps(steps)).toBe(
			'small.yaml: step A: these steps go round in a circle: A needs C needs B needs A'
		);
	});

	it('are seen through formulas and headings too', () => {
		expect(withSteps([CORNER, mark('A', 'O', 'down', 'distance(O, A)')])).toContain('A needs A');
		const curve = {
			kind: 'curve',
			name: 'bend',
			label: 'a bend',
			rule: 'corner',
			through: [
				{ point: 'O', heading: { squareTo: 'bend', toward: 'up' } },
				{ point: 'A', heading: 'down' }
			]
		};
		expect(withSteps([CORNER, A, curve])).toContain('bend needs bend');
	});
});

describe('names', () => {
	it('a point or line that no step makes', () => {
		expect(withSteps([CORNER, mark('A', 'P', 'down', 'bust')])).toBe(
			'small.yaml: step A: it starts from "P", which no step makes (did you mean "O"?)'
		);
		const along = { kind: 'along', name: 'B', label: 'b', on: { line: 'levle', from: 'end' }, by: 'bust' };
		expect(withSteps([CORNER, A, LEVEL, along])).toBe(
			'small.yaml: step B: it starts from "levle", which no step makes (did you mean "level"?)'
		);
	});

	it('two steps of one name', () => {
		expect(withSteps([CORNER, A, mark('A', 'O', 'across', 'bust')])).toBe(
			'small.yaml: step A: another step has this name already'
		);
	});

	it('a wrong name in a formula: file, step, field, position and the nearest', () => {
		expect(withSteps([CORNER, mark('A', 'O', 'down', 'bust / 4 + backLenght')])).toBe(
			'small.yaml: step A: by: position 12 of "bust / 4 + backLenght": there is no measurement or allowance "backLenght" (did you mean "backLength"?)'
		);
	});

	it('an amount stands for its formula, wherever it is named', () => {
		const by = (formula: string, amounts: WrittenStep = {}) =>
			stepNamed(smallMethod([mark('A', 'O', 'down', formula)], { amounts }), 'A');
		const amounts = { intake: 'frontLength - backLength', more: 'intake / 2' };
		expect(by('bust - more', amounts)).toEqual(by('bust - (frontLength - backLength) / 2'));
	});

	it('an amount may not have the name of a measurement or an allowance, nor name one that comes later', () => {
		const withAmounts = (amounts: WrittenStep) => withSteps([CORNER, A], { amounts });
		const taken = 'this name is taken by another allowance or by a measurement';
		expect(withAmounts({ bust: 'hip' })).toBe(`small.yaml: amounts.bust: ${taken}`);
		expect(withAmounts({ bustEase: 'hip' })).toBe(`small.yaml: amounts.bustEase: ${taken}`);
		expect(withAmounts({ more: 'intake / 2', intake: 'hip' })).toContain(
			'small.yaml: amounts.more: position 1 of "intake / 2": there is no measurement or allowance "intake"'
		);
		expect(withAmounts({ half: '1 / 2' })).toContain(
			'amounts.half: position 1 of "1 / 2": this is not a length'
		);
	});

	it('in the outline and in the refusals', () => {
		expect(withSteps([CORNER, A, LEVEL], { outline: ['levels'] })).toBe(
			'small.yaml: outline: there is no line "levels" (did you mean "level"?)'
		);
		const refusal = (down: readonly string[], odds: readonly string[]) =>
			withSteps([CORNER, A], {
				refusals: [{ name: 'tooShort', need: { down, atLeast: '1 cm' }, odds, because: 'x' }]
			});
		expect(refusal(['O', 'Z'], ['bust', 'hip'])).toContain(
			'small.yaml: refusals: tooShort: there is no point "Z"'
		);
		expect(refusal(['O', 'A'], ['bust', 'hips'])).toBe(
			'small.yaml: refusals: tooShort: there is no measurement "hips" (did you mean "hip"?)'
		);
	});
});

describe('the shape of the file', () => {
	it.each<[input: unknown, message: string]>([
		[null, 'small.yaml: method: Invalid input: expected object, received null; seen: null'],
		[{ id: 'Small', name: 'x', steps: [CORNER] }, 'small.yaml: id: '],
		[{ id: 'small', name: 'x', steps: [] }, 'small.yaml: steps: '],
		[{ id: 'small', name: 'x', steps: [CORNER], colour: 1 }, 'colour'],
		[{ id: 'small', name: 'x', steps: [CORNER, { ...A, go: 'left' }] }, 'small.yaml: step "A": go: '],
		[{ id: 'small', name: 'x', steps: [CORNER, { ...A, kind: 'leap' }] }, 'small.yaml: step "A": kind: '],
		[
			{ id: 'small', name: 'x', steps: [CORNER, { ...A, name: 'aa' }] },
			'a point is named by one capital letter'
		],
		[
			{ id: 'small', name: 'x', steps: [CORNER, { ...LEVEL, name: 'Level' }] },
			'a line is named in small letters'
		],
		[
			{ id: 'small', name: 'x', steps: [CORNER, { ...LEVEL, name: 'constructor' }] },
			'this name means something else to the program'
		],
		[{ id: 'small', name: 'x', steps: [CORNER, { ...A, form: 'bust' }] }, 'step "A": ']
	])('%j', (input, message) => {
		expect(complaint(input)).toContain(message);
	});
});

describe('allowances of its own', () => {
	const allowance = (key: string, values: WrittenStep): string =>
		withSteps([CORNER], {
			allowances: { [key]: { label: 'x', default: '1 cm', range: ['0 cm', '2 cm'], ...values } }
		});

	it('may not take a name that stands for something else', () => {
		for (const key of ['bustEase', 'bust']) {
			expect(allowance(key, {})).toBe(
				`small.yaml: allowances.${key}: this name is taken by another allowance or by a measurement`
			);
		}
	});

	it('have a default within their range, and lengths that can be read', () => {
		expect(allowance('gap', { default: '3 cm' })).toBe(
			'small.yaml: allowances.gap: x must lie from 0 cm to 2 cm, not 3 cm'
		);
		expect(allowance('gap', { range: ['0 cm', 'wide'] })).toContain(
			'small.yaml: allowances.gap: "wide" is not a length'
		);
	});
});
