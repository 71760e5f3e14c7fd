import { describe, expect, it } from 'vitest';
import { mm, type Unit } from '#shared/units.ts';
import type { Term } from '#checker/missteps/terms.ts';
import { comparedWith, isWorked, typedTerms } from '#checker/missteps/typed-sum.ts';
import { readSum } from '#drafting/formula/sum.ts';

const term = (base: number, share: number): Term => ({
	leaf: { kind: 'number', value: base },
	base: mm(base),
	share
});

/** A quarter of the bust 96 and of the ease 4, in millimetres. */
const QUARTERS = [term(960, 1 / 4), term(40, 1 / 4)];
/** Half the shoulder width 38.4 and 3. */
const HALF = [term(384, 1 / 2), term(30, 1)];
/** A sixth of the neck 37 and 1: 7.1667. */
const SIXTH = [term(370, 1 / 6), term(10, 1)];
/** Half of 45.5 - 42.5. */
const DIFFERENCE = [term(455, 1 / 2), term(425, -1 / 2)];
/** A quarter of 37 3/4 inches. */
const INCHES = [term(37.75 * 25.4, 1 / 4), term(25.4, 1)];

const compared = (text: string, terms: readonly Term[], unit: Unit = 'cm') =>
	comparedWith(typedTerms(readSum(text, unit).formula), terms, unit);

describe('a typed sum beside a rule', () => {
	it.each([
		['96/4+4/4', QUARTERS],
		['4/4+96/4', QUARTERS],
		['(96+4)/4', QUARTERS],
		['(4+96)/4', QUARTERS],
		['100/4', QUARTERS],
		['96/4+1', QUARTERS],
		['24+1', QUARTERS],
		['1+24', QUARTERS],
		['0.25*96+1', QUARTERS],
		['96*1/4 + 4*1/4', QUARTERS],
		['1/4*(96+4)', QUARTERS],
		['96/2/2+1', QUARTERS],
		['960mm/4+1', QUARTERS],
		['38.4/2+3', HALF],
		['3+38,4/2', HALF],
		['19.2+3', HALF],
		['38.4*0.5+3', HALF],
		['37/6+1', SIXTH],
		['6.17+1', SIXTH],
		['6.2+1', SIXTH],
		['(45.5-42.5)/2', DIFFERENCE],
		['45.5/2-42.5/2', DIFFERENCE],
		['3/2', DIFFERENCE],
		['22.75-21.25', DIFFERENCE]
	])('%s is the sum itself', (text, terms) => {
		expect(compared(text, terms)).toBe('sum');
	});

	it.each([
		['25', QUARTERS],
		['50/2', QUARTERS],
		['20+5', QUARTERS],
		['96.1/4+1', QUARTERS],
		['78/4+5.5', QUARTERS],
		['22.2', HALF],
		['7.17', SIXTH],
		['7.2', SIXTH],
		['1.5', DIFFERENCE]
	])('%s only comes to the same number', (text, terms) => {
		expect(compared(text, terms)).toBe('number');
	});

	it.each([
		['96/2+1', QUARTERS],
		['26', QUARTERS],
		['25.1', QUARTERS],
		['24.9', QUARTERS],
		['24-1', QUARTERS],
		['7', SIXTH],
		['-1.5', DIFFERENCE],
		['(42.5-45.5)/2', DIFFERENCE]
	])('%s is not', (text, terms) => {
		expect(compared(text, terms)).toBeUndefined();
	});

	it('inches with their fractions are one number', () => {
		expect(compared('37 3/4 / 4 + 1', INCHES, 'in')).toBe('sum');
		expect(compared('9 7/16 + 1', INCHES, 'in')).toBe('sum');
		expect(compared('1 + 37.75/4', INCHES, 'in')).toBe('sum');
		expect(compared('10 7/16', INCHES, 'in')).toBe('number');
		expect(compared('10 1/2', INCHES, 'in')).toBeUndefined();
		expect(compared('37 3/4 / 4 + 3/4', [INCHES[0] ?? term(0, 1), term(19.05, 1)], 'in')).toBe('sum');
		expect(compared('37 3/4 / 2 + 1', INCHES, 'in')).toBeUndefined();
	});

	it('a divisor that is a sum counts as its number', () => {
		expect(compared('96/(3+1)+1', QUARTERS)).toBe('sum');
	});

	it('a sum of very many terms is compared by its number alone', () => {
		expect(compared('24+0.1+0.1+0.1+0.1+0.1+0.1+0.1+0.3', QUARTERS)).toBe('number');
	});

	it('a term of very many numbers too, at once', () => {
		expect(compared(`${'1*'.repeat(40)}96/4+1`, QUARTERS)).toBe('number');
	});

	it('a bare number shows no working', () => {
		const worked = (text: string) => isWorked(typedTerms(readSum(text, 'cm').formula));
		expect(['25', '-25', '1*25', '24+1', '100/4', '2*12.5'].map(worked)).toEqual([
			false,
			false,
			false,
			true,
			true,
			true
		]);
	});
});
