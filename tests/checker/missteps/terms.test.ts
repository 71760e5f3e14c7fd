import { describe, expect, it } from 'vitest';
import { mm } from '#shared/units.ts';
import { digitSwaps } from '#checker/missteps/digits.ts';
import { sumOf, termsOf } from '#checker/missteps/terms.ts';
import { parseFormula } from '#drafting/formula/parse.ts';
import type { Scope } from '#drafting/formula/value.ts';
import { polyline } from '#geometry/path.ts';
import { at } from '#geometry/point.ts';

const KNOWN = { allowances: ['ease', 'drop'], points: ['A', 'B'], lines: ['edge'] };
/** Bust 960, waist 720; ease 40, drop 30; A to B 3, 4, 5 tens; the edge 70. */
const SCOPE: Scope = {
	measurement: (key) => mm(key === 'bust' ? 960 : 720),
	allowance: (key) => mm(key === 'ease' ? 40 : 30),
	share: () => 0.5,
	point: (name) => (name === 'A' ? at(0, 0) : at(30, 40)),
	line: () => polyline(at(0, 0), at(0, 70)),
	has: () => true
};

const terms = (text: string) => termsOf(parseFormula(text, 'm', KNOWN), SCOPE);
const shares = (text: string) => terms(text).map(({ base, share }) => [Number(base), share]);

describe('a formula as a sum of shares', () => {
	it.each([
		['bust', [[960, 1]]],
		[
			'bust / 4 + ease / 4',
			[
				[960, 0.25],
				[40, 0.25]
			]
		],
		[
			'(bust + ease) / 4',
			[
				[960, 0.25],
				[40, 0.25]
			]
		],
		[
			'bust / 2 - drop',
			[
				[960, 0.5],
				[30, -1]
			]
		],
		[
			'(bust - waist) / 2',
			[
				[960, 0.5],
				[720, -0.5]
			]
		],
		[
			'bust - (waist - drop)',
			[
				[960, 1],
				[720, -1],
				[30, 1]
			]
		],
		[
			'-drop + 2 * ease',
			[
				[30, -1],
				[40, 2]
			]
		],
		['bust * (1 / 2 + 1 / 4)', [[960, 0.75]]],
		['1 / 2 * bust / 2', [[960, 0.25]]],
		[
			'distance(A, B) + length(edge) / 2',
			[
				[50, 1],
				[70, 0.5]
			]
		]
	])('%s', (text, expected) => {
		expect(shares(text)).toEqual(expected);
	});

	it('a product of lengths is a part of its own, with its value', () => {
		expect(shares('bust * ease / waist + drop')).toEqual([
			[(960 * 40) / 720, 1],
			[30, 1]
		]);
	});

	it('adds up to the formula’s value', () => {
		expect(sumOf(terms('bust / 4 + ease / 4 - drop'))).toBe(220);
	});
});

describe('two digits in the wrong order', () => {
	it.each([
		[960, 'cm', [690]],
		[384, 'cm', [834, 348]],
		[1020, 'cm', [1200]],
		[71.67, 'cm', [27]],
		[880, 'cm', []],
		[205, 'cm', [250]],
		[384, 'mm', [834, 348]],
		// 37 3/4 inches become 73 3/4, 7 7/8 has one whole digit, 3/4 none.
		[37.75 * 25.4, 'in', [73.75 * 25.4]],
		[7.875 * 25.4, 'in', []],
		[0.75 * 25.4, 'in', []],
		[-205, 'cm', []]
	] as const)('%d mm in %s', (length, unit, swapped) => {
		const found = digitSwaps(mm(length), unit);
		expect(found).toHaveLength(swapped.length);
		found.forEach((each, i) => expect(each).toBeCloseTo(swapped[i] ?? NaN, 9));
	});
});
