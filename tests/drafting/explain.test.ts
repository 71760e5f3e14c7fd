import { english } from '../support/speech.ts';
import { describe, expect, it } from 'vitest';
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import { parseLength } from '#shared/reading.ts';
import { mm, MM_PER, type Unit } from '#shared/units.ts';
import { explain } from '#drafting/explain.ts';
import { capital } from '#shared/speech/en/grammar.ts';
import { offsetIn } from '#shared/speech/en/ways.ts';
import { offsetTo } from '#drafting/steps/step-rules.ts';
import { at } from '#geometry/point.ts';
import { backBlock } from './lesson-method.ts';
import { BODY, draftOf, mark, smallMethod } from './small-method.ts';

const BACK = backBlock();
const HERON = DEMO_BODIES[0]?.body;
if (!HERON) throw new Error('Heron is gone');
const DRAFT = draftOf(BACK, HERON);
const explained = (step: string, unit: Unit = 'cm') =>
	explain(BACK, step, HERON, DRAFT, english.inUnit(unit));

describe('the back block, explained for Heron', () => {
	it('says the rule with its arithmetic, in centimetres and in inches', () => {
		expect(explained('A').arithmetic).toBe('half the shoulder width + 3 = 19.2 + 3 = 22.2 cm');
		expect(explained('A', 'in').arithmetic).toBe(
			'half the shoulder width + 1 3/16 = 7 9/16 + 1 3/16 = 8 3/4″'
		);
	});

	it('uses finer parts of an inch where the sum would not add up, or says "about"', () => {
		const of = (id: string, step: string): string | undefined => {
			const body = DEMO_BODIES.find((each) => each.id === id)?.body;
			return body && explain(BACK, step, body, draftOf(BACK, body), english.inUnit('in')).arithmetic;
		};
		expect(of('gannet', 'A')).toBe('half the shoulder width + 1 3/16 = 8 21/32 + 1 3/16 = 9 27/32″');
		expect(of('plover', 'N')).toBe('a sixth of the neck + 25/64 = 2 21/64 + 25/64 = 2 23/32″');
		expect(of('lark', 'N')).toBe('a sixth of the neck + 3/8 = 2 3/8 + 3/8 = about 2 13/16″');
	});

	it.each(['in', 'cm', 'mm'] as const)('every sum adds up as it is written, in %s', (unit) => {
		const value = (text: string): number => parseLength(text.trim(), unit) / MM_PER[unit];
		for (const { id, body } of DEMO_BODIES) {
			const draft = draftOf(BACK, body);
			for (const step of ['A', 'N', 'U', 'W1', 'J', 'armholeLevel']) {
				const said = explain(BACK, step, body, draft, english.inUnit(unit)).arithmetic ?? '';
				const [, terms = '', result = ''] = said.split(' = ');
				const [first = '', second = '', ...more] = terms.split(' + ');
				expect(more, `${id} ${step}: ${said}`).toEqual([]);
				const off = Math.abs(value(first) + value(second) - value(result.replace('about ', '')));
				if (result.startsWith('about ')) expect(off, `${id} ${step}: ${said}`).toBeGreaterThan(0.001);
				else expect(off, `${id} ${step}: ${said}`).toBeLessThan(1e-9);
			}
		}
	});

	it('has three rungs: where to look, the rule, the worked number', () => {
		expect(explained('A')).toEqual({
			where: 'Start at O and go straight down.',
			rule: 'From O to A: half the shoulder width + the armhole drop.',
			worked: 'Half the shoulder width + 3 = 19.2 + 3 = 22.2 cm, straight down from O.',
			arithmetic: 'half the shoulder width + 3 = 19.2 + 3 = 22.2 cm'
		});
	});

	it.each([
		['W', 'From O to W: the back length.', 'The back length = 42.5 cm, straight down from O.'],
		['C', 'From O to C: the back neck depth.', 'The back neck depth = 2.5 cm, straight down from O.'],
		[
			'M',
			'From P to M: the back armhole hollow.',
			'The back armhole hollow = 1 cm, straight in toward the centre from P.'
		],
		[
			'U',
			'From A to U: a quarter of the bust + a quarter of the bust ease.',
			'A quarter of the bust + a quarter of 8 = 24 + 2 = 26 cm, straight across from A.'
		],
		[
			'Q',
			'Q lies where the square line down from K meets the square line across from A.',
			'Q is as far across as K, 19.2 cm, and as far down as A, 22.2 cm.'
		],
		['P', 'P lies half way from S to Q.', 'S to Q is 18.2 cm; half way is 9.1 cm: from S go 9.1 cm down.'],
		[
			'hipLevel',
			'Square across from H: the whole line at one depth, and as long as a quarter of the hip + a quarter of the hip ease.',
			'Across from H, neither up nor down, for a quarter of the hip + a quarter of 6 = 25.5 + 1.5 = 27 cm.'
		],
		['shoulder', 'A straight line from N to S.', 'Choose N, then S: the line is 12.68 cm long.'],
		['centre', 'A straight line from C to H, through W.', 'Choose C, then H: the line is 60.5 cm long.'],
		[
			'hip',
			'Each handle lies a third of the straight distance from its own end.',
			'Handles: out of V, 0.94 cm across and 6.83 cm down; into J, 6.9 cm up from it. The curve is 20.72 cm long.'
		]
	])('%s', (step, rule, worked) => {
		expect(explained(step)).toMatchObject({ rule, worked });
	});

	it('says how a curve runs, and the handles of each of its pieces', () => {
		const { where, worked } = explained('armhole');
		expect(where).toBe(
			'Look at how the curve runs: through S square to the shoulder, then M straight down, then U straight across.'
		);
		expect(worked).toContain('out of S, 0.55 cm in and 1.66 cm down; into M, 3.36 cm up from it; ');
		expect(worked).toContain(
			'out of M, 5.03 cm down; into U, 4.31 cm in from it. The curve is 22.47 cm long.'
		);
	});

	it('speaks of every step, in every unit, without a gap', () => {
		for (const unit of ['cm', 'mm', 'in'] as const) {
			for (const { name } of BACK.steps) {
				const text = Object.values(explained(name, unit)).join(' ');
				expect(text).not.toMatch(/undefined|NaN|Infinity|\[object/);
			}
		}
	});

	it('leans on the earlier points that it is given: the learner’s own', () => {
		const mine = { ...DRAFT, points: { ...DRAFT.points, K: at(180, 0) } };
		expect(explain(BACK, 'Q', HERON, mine, english).worked).toContain('as far across as K, 18 cm');
	});

	it('uses the allowance chosen now', () => {
		const chosen = { armholeDrop: mm(45) };
		expect(explain(BACK, 'A', HERON, DRAFT, english, chosen).arithmetic).toBe(
			'half the shoulder width + 4.5 = 19.2 + 4.5 = 23.7 cm'
		);
	});
});

describe('the kinds that the back does not use', () => {
	const method = smallMethod([
		mark('A', 'O', 'across', 'waist / 9'),
		{ kind: 'straight', name: 'edge', label: 'the edge', through: ['O', 'A'] },
		{ kind: 'along', name: 'B', label: 'b', on: { line: 'edge', from: 'end' }, by: 'neck / 12' },
		{ kind: 'along', name: 'C', label: 'c', on: { from: 'O', toward: 'A' }, by: 'distance(O, B)' },
		{
			kind: 'swing',
			name: 'D',
			label: 'd',
			from: 'A',
			length: 'length(edge)',
			level: 'shoulderDropFront',
			side: 'outward'
		},
		{ kind: 'division', name: 'E', label: 'e', from: 'O', to: 'D', at: '1 / 3' }
	]);
	const draft = draftOf(method);
	const said = (step: string) => explain(method, step, BODY, draft, english);

	it('along a drawn line, and from point to point', () => {
		expect(said('B').worked).toBe('A twelfth of the neck = 3 cm, along the edge from the end of the edge.');
		expect(said('C')).toMatchObject({
			where: 'Start at O and go straight toward A.',
			rule: 'From O to C, straight toward A: the distance O–B.',
			worked: 'The distance O–B = 5 cm, straight toward A from O.'
		});
	});

	it('a swing', () => {
		expect(said('D')).toMatchObject({
			where: 'Swing a length about A, outward, until its end lies on the level 4 cm down.',
			rule: 'A to D is the length of the edge, and D lies the front shoulder drop below the corner.',
			worked: 'Swing the length of the edge = 8 cm from A to the level 4 cm below the corner.'
		});
	});

	it('a division that is no simple share', () => {
		expect(said('E').rule).toBe('E lies 0.333 of the way from O to D.');
	});

	it('the corner', () => {
		expect(said('O').worked).toBe('It lies 0 across and 0 down.');
	});
});

describe('words', () => {
	it('lists names', () => {
		expect([[], ['A'], ['A', 'B'], ['A', 'B', 'C']].map((names) => english.list(names))).toEqual([
			'',
			'A',
			'A and B',
			'A, B and C'
		]);
	});

	it.each([
		[at(46, 34), '3.6 cm across and 1.4 cm down'],
		[at(5, 13), '0.5 cm in and 0.7 cm up'],
		[at(10, 32), '1.2 cm down'],
		[at(3, 20.04), '0.7 cm in'],
		[at(10.04, 19.96), 'on the spot']
	])('from (10, 20) to %j: %s', (to, words) => {
		expect(offsetIn(english, offsetTo(at(10, 20), to))).toBe(words);
	});

	it('begins a sentence', () => {
		expect(capital('half the neck')).toBe('Half the neck');
	});
});
