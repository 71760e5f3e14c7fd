import { describe, expect, it } from 'vitest';
import { BadInput } from '#shared/bad-input.ts';
import { readSum } from '#drafting/formula/sum.ts';

describe('readSum reads a sum as a drafter types it', () => {
	it.each([
		['38.4/2+3', 'cm', 222],
		['38,4 : 2 + 3', 'cm', 222],
		['10+2.5', 'cm', 125],
		['2 × (7 − 4)', 'cm', 60],
		['37 3/4 / 2', 'in', 479.425],
		['7½ + 1', 'in', 215.9],
		['1 in', 'cm', 25.4],
		['12 cm + 1/2 in', 'cm', 132.7],
		['5″', 'cm', 127],
		['-4', 'cm', -40],
		['30 mm + 4', 'cm', 70]
	] as const)('%j in %s is %d mm', (text, unit, value) => {
		expect(readSum(text, unit).value).toBeCloseTo(value, 9);
	});

	it.each(['', '  ', '5/0', '5/(2-2)', 'bust / 4', '3 +', '2 3', 'NaN', '(4'])('%j is refused', (text) => {
		expect(() => readSum(text, 'cm')).toThrow(BadInput);
	});
});
