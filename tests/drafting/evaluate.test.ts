import { english, speechFor } from '../support/speech.ts';
import { describe, expect, it } from 'vitest';
import { refusalOf } from '../support/refusal.ts';
import { readBody } from '#shared/body.ts';
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import { mm, type Mm } from '#shared/units.ts';
import { evaluate, outlineOf, reasonWords, refusalWords, type Evaluation } from '#drafting/evaluate.ts';
import { pathEnd, pathStart } from '#geometry/path.ts';
import { distance } from '#geometry/point.ts';
import { backBlock } from './lesson-method.ts';
import { BODY, draftOf, FIGURE, mark, smallMethod } from './small-method.ts';

const BACK = backBlock();

const refusalsOf = (evaluation: Evaluation) => {
	if (evaluation.kind === 'drafted') throw new Error('it was drafted');
	return evaluation.refusals;
};

describe('allowances', () => {
	const method = smallMethod([mark('A', 'O', 'down', 'shoulderWidth / 2 + armholeDrop')]);
	it('the default, else the body’s own, else the one chosen now', () => {
		const own = readBody({ ...FIGURE, allowances: { armholeDrop: 4 } });
		const depth = (
			...[body, chosen]: Parameters<typeof evaluate> extends [unknown, ...infer Rest] ? Rest : never
		) => {
			const evaluation = evaluate(method, body, chosen);
			return evaluation.kind === 'drafted' ? evaluation.draft.points['A']?.y : undefined;
		};
		expect(depth(BODY)).toBe(220);
		expect(depth(own)).toBe(230);
		expect(depth(own, { armholeDrop: mm(25) })).toBe(215);
	});
});

describe('a measurement that is missing', () => {
	it('is bad input, and is named with the body', () => {
		const body = readBody({ name: 'Knot', bust: 90 });
		expect(refusalOf(() => evaluate(BACK, body))).toBe(
			'shoulderWidth: the shoulder width of Knot is missing'
		);
	});
});

describe('refusals', () => {
	const shallow = smallMethod([mark('A', 'O', 'down', 'backLength'), mark('B', 'A', 'across', 'neck / 6')], {
		refusals: [
			{
				name: 'notOut',
				need: { across: ['A', 'B'], atLeast: '6 cm' },
				odds: ['neck', 'shoulderWidth'],
				because: 'B must lie 6 cm out'
			},
			{
				name: 'notDown',
				need: { down: ['O', 'B'], atLeast: '42 cm' },
				odds: ['backLength', 'waistToHip'],
				because: 'B must lie 42 cm down'
			}
		]
	});
	const body = (figure: object) => readBody({ ...FIGURE, ...figure });

	it('what just reaches is drafted', () => {
		expect(evaluate(shallow, body({})).kind).toBe('drafted');
	});

	it('what falls short by a tenth of a millimetre is refused, with the gap seen', () => {
		expect(refusalsOf(evaluate(shallow, body({ neck: 35.94 })))).toEqual([
			{
				name: 'notOut',
				odds: ['neck', 'shoulderWidth'],
				because: 'B must lie 6 cm out',
				measured: expect.closeTo(59.9, 6) as Mm
			}
		]);
	});

	it('every rule that fails is told', () => {
		const odds = refusalsOf(evaluate(shallow, body({ neck: 30, backLength: 40 }))).map((each) => each.odds);
		expect(odds).toEqual([
			['neck', 'shoulderWidth'],
			['backLength', 'waistToHip']
		]);
	});

	it('the sentence names both measurements, in the words asked for', () => {
		const refusal = {
			name: 'notOut',
			odds: ['neck', 'shoulderWidth'],
			because: 'B must lie 6 cm out',
			measured: mm(59.9)
		};
		const why = 'disagree: B must lie 6 cm out (here it is 5.99 cm); measure both again';
		expect(refusalWords(refusal, english)).toBe(`the neck and the shoulder width ${why}`);
		expect(refusalWords(refusal, english, (key) => ({ name: key.toUpperCase() }))).toBe(
			`NECK and SHOULDERWIDTH ${why}`
		);
		expect(refusalWords({ name: 'D', odds: [], because: 'it is flat' }, english)).toBe(
			'this body cannot be drafted: it is flat'
		);
		expect(refusalWords(refusal, speechFor('es'))).toBe(
			'el contorno de cuello y el ancho de hombros no concuerdan: B must lie 6 cm out (aquí: 5,99 cm); vuelve a tomar las dos medidas'
		);
	});
});

// Each rule is broken alone, by moving one measurement of a body that can be drafted.
describe('the back is refused with the two measurements at odds', () => {
	it.each([
		['bust', 73.9, ['bust', 'shoulderWidth'], '1.48 cm'],
		['backLength', 26.9, ['shoulderWidth', 'backLength'], '4.9 cm'],
		['neck', 84.6, ['neck', 'shoulderWidth'], '3.9 cm']
	])('%s %d', (key, value, odds, gap) => {
		const [refusal, ...more] = refusalsOf(evaluate(BACK, readBody({ ...FIGURE, [key]: value })));
		expect(more).toEqual([]);
		expect(refusal?.odds).toEqual(odds);
		expect(refusal && reasonWords(refusal, english)).toContain(`(here it is ${gap})`);
	});

	it.each([
		['bust', 74],
		['backLength', 27],
		['neck', 84]
	])('%s %d just does', (key, value) => {
		expect(evaluate(BACK, readBody({ ...FIGURE, [key]: value })).kind).toBe('drafted');
	});
});

describe('the demo bodies', () => {
	it.each(DEMO_BODIES.map(({ id, body }) => ({ id, body })))(
		'$id drafts, with a closed outline',
		({ body }) => {
			const outline = outlineOf(BACK, draftOf(BACK, body));
			if (!outline) throw new Error('no outline');
			expect(distance(pathStart(outline), pathEnd(outline))).toBe(0);
			expect(outline).toHaveLength(9);
		}
	);
});

describe('outlineOf', () => {
	const corners = [mark('A', 'O', 'across', 'bust'), mark('B', 'A', 'down', 'waist')];
	const edge = (name: string, ...through: readonly string[]) => ({
		kind: 'straight',
		name,
		label: name,
		through
	});

	it('turns a line round where it was drawn the other way', () => {
		const method = smallMethod(
			[...corners, edge('top', 'O', 'A'), edge('side', 'B', 'A'), edge('slope', 'O', 'B')],
			{
				outline: ['top', 'side', 'slope']
			}
		);
		const outline = outlineOf(method, draftOf(method));
		expect(outline?.map(({ from }) => from)).toEqual([
			{ x: 0, y: 0 },
			{ x: 960, y: 0 },
			{ x: 960, y: 720 }
		]);
	});

	it('there is none where the method names none, and a gap is our fault', () => {
		const none = smallMethod(corners);
		expect(outlineOf(none, draftOf(none))).toBeUndefined();
		const gap = smallMethod(
			[...corners, mark('C', 'B', 'down', 'hip'), edge('top', 'O', 'A'), edge('low', 'B', 'C')],
			{
				outline: ['top', 'low']
			}
		);
		expect(() => outlineOf(gap, draftOf(gap))).toThrow(/the outline of .* does not join/);
	});
});
