import { mm } from '#shared/units.ts';
import { english } from '../support/speech.ts';
import { describe, expect, it } from 'vitest';
import { refusalOf } from '../support/refusal.ts';
import { readBody, type Body } from '#shared/body.ts';
import { evaluate, reasonWords, outlineOf, type Refusal } from '#drafting/evaluate.ts';
import { BODY, draftOf, FIGURE, mark, smallMethod, type WrittenStep, warned } from './small-method.ts';

const bodyWith = (figure: Readonly<Record<string, number>>): Body => readBody({ ...FIGURE, ...figure });
const edge = (name: string, through: readonly string[], more: WrittenStep = {}): WrittenStep => ({
	kind: 'straight',
	name,
	label: `the ${name}`,
	through,
	...more
});

/** A goes down the front length; B stands beside it only where the front is longer than the back, C only where it is not. */
const DEPENDENT = smallMethod([
	mark('A', 'O', 'down', 'frontLength'),
	{ ...mark('B', 'A', 'across', 'waist / 4'), when: 'frontLength - backLength' },
	{ ...mark('C', 'A', 'across', 'hip / 4'), unless: 'frontLength - backLength' },
	{
		...mark('D', 'A', 'in', 'hip / 4'),
		when: 'frontLength - backLength',
		unless: 'frontLength - bustHeight * 2'
	},
	edge('long', ['A', 'B'], { when: 'frontLength - backLength' })
]);
const namesFor = (figure: Readonly<Record<string, number>>): readonly string[] => {
	const { points, lines } = draftOf(DEPENDENT, bodyWith(figure));
	return [...Object.keys(points), ...Object.keys(lines)];
};

describe('steps that depend on a formula', () => {
	it('are drafted where it is more than nothing (when), or is not (unless)', () => {
		expect(namesFor({ frontLength: 45 })).toEqual(['O', 'A', 'B', 'D', 'long']);
		expect(namesFor({ frontLength: 41 })).toEqual(['O', 'A', 'C']);
	});

	it('nothing is not more than nothing, and neither is the noise of a sum', () => {
		expect(namesFor({ frontLength: 42 })).toEqual(['O', 'A', 'C']);
		// 0.1 and 0.2 make 0.30000000000000004: what is left over is no length.
		const noisy = smallMethod([{ ...mark('A', 'O', 'down', 'bust'), when: 'waist + hip - neck' }]);
		const body = bodyWith({});
		const measurements = { ...body.measurements, waist: 0.1, hip: 0.2, neck: 0.3 } as Body['measurements'];
		expect(Object.keys(draftOf(noisy, { ...body, measurements }).points)).toEqual(['O']);
	});

	it('a thousandth of a millimetre is something', () => {
		expect(namesFor({ frontLength: 42.0001 })).toContain('B');
	});

	it('keep both, where both are given', () => {
		expect(namesFor({ frontLength: 45, bustHeight: 22 })).toEqual(['O', 'A', 'B', 'long']);
		expect(namesFor({ frontLength: 45, bustHeight: 22.5 })).toContain('D');
	});

	it('come after what their dependence leans on, and count its measurements as needed', () => {
		const method = smallMethod([
			{ ...mark('A', 'O', 'down', 'bust'), when: 'length(low) - distance(O, C)' },
			edge('low', ['O', 'B']),
			mark('B', 'O', 'across', 'hip'),
			mark('C', 'O', 'across', 'neck')
		]);
		expect(method.steps.map(({ name }) => name)).toEqual(['O', 'B', 'low', 'C', 'A']);
		expect(Object.keys(draftOf(method).points)).toContain('A');
		expect(Object.keys(draftOf(method, bodyWith({ neck: 104 })).points)).not.toContain('A');
	});

	it('a measurement that only a dependence names is one that the method needs', () => {
		expect(DEPENDENT.measurements).toEqual(['waist', 'hip', 'backLength', 'frontLength', 'bustHeight']);
	});
});

/** O, and A 9 cm across and 12 down from it. */
const LIMITED = (need: WrittenStep, more: WrittenStep = {}) =>
	smallMethod([mark('B', 'O', 'across', 'neck'), mark('A', 'B', 'down', 'bustSpan')], {
		refusals: [{ name: 'limited', need, odds: ['neck', 'bustSpan'], because: 'it must keep', ...more }]
	});
const refusalsOf = (need: WrittenStep, figure: Readonly<Record<string, number>>, more: WrittenStep = {}) => {
	const evaluation = evaluate(LIMITED(need, more), bodyWith(figure));
	return evaluation.kind === 'refused' ? evaluation.refusals.map((each) => reasonWords(each, english)) : [];
};

describe('a need, on its bound and a tenth of a millimetre to either side', () => {
	const ACROSS = { across: ['O', 'A'] };
	const DOWN = { down: ['O', 'A'] };
	const VALUE = { value: 'neck - bustSpan' };
	it.each([
		['across', 'atLeast', ACROSS, '36 cm', [35.99], [36, 36.01]],
		['across', 'moreThan', ACROSS, '36 cm', [35.99, 36], [36.01]],
		['across', 'atMost', ACROSS, '36 cm', [36.01], [35.99, 36]],
		['value', 'atLeast', VALUE, '18 cm', [35.99], [36, 36.01]],
		['value', 'moreThan', VALUE, '180 mm', [35.99, 36], [36.01]],
		['value', 'atMost', VALUE, '18 cm', [36.01], [35.99, 36]]
	])('%s, %s: the neck', (_way, bound, measured, limit, broken, kept) => {
		const need = { ...measured, [bound]: limit };
		for (const neck of broken) expect(refusalsOf(need, { neck }), `neck ${neck}`).toHaveLength(1);
		for (const neck of kept) expect(refusalsOf(need, { neck }), `neck ${neck}`).toEqual([]);
	});

	it.each([
		['atLeast', [17.99], [18, 18.01]],
		['moreThan', [17.99, 18], [18.01]],
		['atMost', [18.01], [17.99, 18]]
	])('down, %s: the bust span', (bound, broken, kept) => {
		const need = { ...DOWN, [bound]: '18 cm' };
		for (const bustSpan of broken) expect(refusalsOf(need, { bustSpan }), `${bustSpan}`).toHaveLength(1);
		for (const bustSpan of kept) expect(refusalsOf(need, { bustSpan }), `${bustSpan}`).toEqual([]);
	});

	it('has a sign: from the first point to the second, and a bound below nothing', () => {
		const back = { across: ['A', 'O'], atLeast: '-36 cm' };
		expect(refusalsOf(back, { neck: 36 })).toEqual([]);
		expect(refusalsOf(back, { neck: 36.01 })).toEqual(['it must keep (here it is -36.01 cm)']);
	});

	it('may have two bounds', () => {
		const need = { ...ACROSS, atLeast: '30 cm', atMost: '40 cm' };
		const broken = [29.9, 30, 40, 40.1].map((neck) => refusalsOf(need, { neck }).length);
		expect(broken).toEqual([1, 0, 0, 1]);
	});

	it('says the length that was seen', () => {
		expect(refusalsOf({ ...DOWN, atMost: '17 cm' }, {})).toEqual(['it must keep (here it is 18 cm)']);
	});

	it('holds only where its own dependence says so', () => {
		const need = { ...ACROSS, atLeast: '50 cm' };
		expect(refusalsOf(need, {}, { when: 'frontLength - backLength' })).toHaveLength(1);
		expect(refusalsOf(need, { frontLength: 42 }, { when: 'frontLength - backLength' })).toEqual([]);
		expect(refusalsOf(need, {}, { unless: 'frontLength - backLength' })).toEqual([]);
		expect(refusalsOf(need, { frontLength: 42 }, { unless: 'frontLength - backLength' })).toHaveLength(1);
	});
});

describe('warnings', () => {
	const method = smallMethod([mark('A', 'O', 'down', 'backLength')], {
		warnings: [
			{
				name: 'frontShort',
				need: { value: 'frontLength - backLength', atLeast: '-0.5 cm' },
				odds: ['frontLength', 'backLength'],
				because: 'the front is short'
			},
			{
				name: 'backLong',
				need: { down: ['O', 'A'], atMost: '50 cm' },
				odds: ['backLength', 'waist'],
				because: 'the back is long'
			}
		]
	});

	it('are told with both measurements, and the body is drafted', () => {
		expect(warned(draftOf(method, bodyWith({ frontLength: 41 })))).toEqual([
			'the front length and the back length: the front is short (here it is -1 cm)'
		]);
		expect(warned(draftOf(method, bodyWith({ backLength: 51 })))).toEqual([
			'the front length and the back length: the front is short (here it is -6 cm)',
			'the back length and the waist: the back is long (here it is 51 cm)'
		]);
	});

	it('are not told on the bound', () => {
		expect(draftOf(method, bodyWith({ frontLength: 41.5 })).warnings).toEqual([]);
		expect(draftOf(method, bodyWith({ frontLength: 41.49 })).warnings).toHaveLength(1);
	});
});

const complaint = (more: WrittenStep): string =>
	refusalOf(() => smallMethod([mark('A', 'O', 'down', 'bust')], more));

describe('conditions that cannot be read', () => {
	const condition = { name: 'tested', odds: ['bust', 'hip'], because: 'x' };
	it.each([
		[
			{ refusals: [{ ...condition, need: { down: ['O', 'A'] } }] },
			'small.yaml: refusals: tested: a need says atLeast, moreThan or atMost'
		],
		[
			{ warnings: [{ ...condition, need: { across: ['O', 'Z'], atMost: '1 cm' } }] },
			'small.yaml: warnings: tested: there is no point "Z"'
		],
		[
			{ warnings: [{ ...condition, need: { value: 'bst', atMost: '1 cm' } }] },
			'small.yaml: warnings: tested: value: position 1 of "bst": there is no measurement or allowance "bst" (did you mean "bust"?)'
		],
		[
			{ refusals: [{ ...condition, need: { value: 'bust', atMost: 'wide' } }] },
			'small.yaml: refusals: tested: "wide" is not a length'
		],
		[{ refusals: [{ ...condition, need: { value: '1 / 2', atMost: '1 cm' } }] }, 'this is not a length'],
		[
			{ refusals: [{ ...condition, when: 'hips', need: { value: 'bust', atMost: '1 cm' } }] },
			'small.yaml: refusals: tested: when: position 1 of "hips"'
		]
	])('%j', (more, message) => {
		expect(complaint(more)).toContain(message);
	});
});

describe('the outline, where lines may be absent', () => {
	const corners = [
		mark('A', 'O', 'across', 'bust'),
		mark('B', 'A', 'down', 'waist'),
		mark('C', 'A', 'down', 'neck')
	];
	const dartless = (top: readonly string[]) =>
		smallMethod(
			[
				...corners,
				edge('top', top),
				edge('whole', ['A', 'B'], { unless: 'frontLength - backLength' }),
				edge('above', ['A', 'C'], { when: 'frontLength - backLength' }),
				edge('below', ['B', 'C'], { when: 'frontLength - backLength' }),
				edge('slope', ['B', 'O'])
			],
			{ outline: ['top', 'whole', 'above', 'below', 'slope'] }
		);
	const cornersOf = (top: readonly string[], frontLength: number) => {
		const method = dartless(top);
		return outlineOf(method, draftOf(method, bodyWith({ frontLength })))?.map(({ from }) => [from.x, from.y]);
	};

	it('passes over a line that this body has not', () => {
		expect(cornersOf(['O', 'A'], 42)).toEqual([
			[0, 0],
			[960, 0],
			[960, 720]
		]);
		expect(cornersOf(['O', 'A'], 45)).toEqual([
			[0, 0],
			[960, 0],
			[960, 360],
			[960, 720]
		]);
	});

	it('turns the first line round where the second joins its start', () => {
		expect(cornersOf(['A', 'O'], 42)).toEqual(cornersOf(['O', 'A'], 42));
		expect(cornersOf(['A', 'O'], 45)).toEqual(cornersOf(['O', 'A'], 45));
	});

	it('is the line itself where only one is there', () => {
		const method = smallMethod(
			[...corners, edge('top', ['O', 'A']), edge('gone', ['A', 'B'], { when: 'backLength - frontLength' })],
			{ outline: ['gone', 'top'] }
		);
		expect(outlineOf(method, draftOf(method, BODY))).toHaveLength(1);
	});
});

describe('a step that the body leaves out and another starts from', () => {
	it('is a fault of the method, and says what is not drafted', () => {
		const method = smallMethod([
			{ ...mark('A', 'O', 'down', 'bust'), when: 'backLength - frontLength' },
			mark('B', 'A', 'across', 'hip')
		]);
		expect(() => evaluate(method, BODY)).toThrow('the point "A" is not drafted');
	});
});

// Kept here so that a refusal's own shape cannot change unseen.
it('a refusal holds its name, the pair at odds, the reason and what was measured', () => {
	const evaluation = evaluate(LIMITED({ across: ['O', 'A'], atLeast: '40 cm' }), BODY);
	const expected: readonly Refusal[] = [
		{ name: 'limited', odds: ['neck', 'bustSpan'], because: 'it must keep', measured: mm(360) }
	];
	expect(evaluation).toEqual({ kind: 'refused', refusals: expected });
});
