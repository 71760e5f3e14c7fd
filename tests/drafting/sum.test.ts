import { describe, expect, it } from 'vitest';
import { ruleOf } from '../support/refusal.ts';
import { readDistance, readSum, withUnit } from '#drafting/formula/sum.ts';

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

	it('a number with a unit, or with a fraction after it, is one number', () => {
		expect(readSum('12x2', 'cm').value).toBe(240);
		expect(readSum('+3', 'cm').value).toBe(30);
		expect(readSum('5 + +3', 'cm').value).toBe(80);
		expect(readSum('10 cm + 2.5 cm', 'in').value).toBeCloseTo(125, 9);
		expect(readSum('10 cm / 2', 'in').value).toBeCloseTo(50, 9);
		expect(readSum('(38.4/2+3) cm', 'in').value).toBeCloseTo(222, 9);
		expect(readSum('38.4/2 cm', 'in').value).toBeCloseTo(192, 9);
		expect(readSum("3''", 'cm').value).toBeCloseTo(76.2, 9);
	});
});

describe('what cannot be read is answered in plain words', () => {
	it.each([
		['', 'write a number, or a sum such as 38.4/2+3'],
		['  ', 'write a number, or a sum such as 38.4/2+3'],
		[
			'bust/4',
			'write numbers only, such as 12/2+1; "bust" is a word, and its number is shown beside the step'
		],
		[
			'shoulderWidth/2+3',
			'write numbers only, such as 12/2+1; "shoulderWidth" is a word, and its number is shown beside the step'
		],
		['distance(A, B)', 'write numbers only, such as 12/2+1; "distance" is a word'],
		['NaN', 'write numbers only, such as 12/2+1; "NaN" is a word'],
		['1e3', 'write numbers only, such as 12/2+1; "e3" is a word'],
		['22.2 down', '"down" has a field of its own; write only the number here'],
		['5 ft', '"ft" is not known here; write cm, mm or in after a number'],
		['22.2.2', '"22.2.2" is not a number; write it with one point or comma, such as 12.5'],
		['96,5,1', '"96,5,1" is not a number; write it with one point or comma, such as 12.5'],
		['5%', '"%" cannot stand in a sum; write numbers with + − × ÷ and brackets'],
		['2(3+4)', 'write a sign (+ − × ÷) between "2" and "("'],
		['2 3', 'write a sign (+ − × ÷) between "2" and "3"'],
		['(4 5)', 'write a sign (+ − × ÷) between "4" and "5"'],
		['½½', 'write a sign (+ − × ÷) between "2" and "1"'],
		['4 cm cm', 'write a sign (+ − × ÷) between "cm" and "cm"'],
		['3 +', 'a number is missing after "+"'],
		['38.4//2', 'a number is missing after "/"'],
		['()', 'a number is missing after "("'],
		['/3', 'a number is missing before "/"'],
		['cm', 'a number is missing before "cm"'],
		['(4', 'a bracket is opened and not closed'],
		['4)', 'a bracket is closed that was not opened'],
		['5/0', '"5/0" divides by nothing'],
		['5/(2-2)', '"5/(2-2)" divides by nothing'],
		['0/0', '"0/0" divides by nothing'],
		[`1${'+1'.repeat(50)}`, 'that is too long; a sum may have 100 signs and figures']
	])('%j: %s', (text, rule) => {
		expect(ruleOf(() => readSum(text, 'cm'))).toBe(rule);
	});
});

describe('a distance to be laid off', () => {
	it.each([
		['630', 'cm', 'that is 6.3 m: did you mean mm?'],
		['-501', 'cm', 'that is 5.01 m: did you mean mm?'],
		['630', 'in', 'that is 16 m: did you mean mm?'],
		['6300', 'mm', 'that is 6.3 m, further than the sheet goes'],
		['7000 mm', 'cm', 'that is 7 m, further than the sheet goes'],
		['5001', 'cm', 'that is 50 m, further than the sheet goes']
	] as const)('%j in %s is refused: %s', (text, unit, rule) => {
		expect(ruleOf(() => readDistance(text, unit))).toBe(rule);
	});

	it('may be as long as the sheet', () => {
		expect(readDistance('500', 'cm').value).toBe(5000);
		expect(readDistance('38.4/2+3', 'cm').value).toBe(222);
	});
});

describe('an entry that was typed in another unit', () => {
	it.each([
		['20.5', 'cm', '20.5 cm'],
		[' 20.5 ', 'cm', '20.5 cm'],
		['37 3/4', 'in', '37 3/4 in'],
		['-4', 'in', '-4 in'],
		['38.4/2', 'cm', '38.4/2 cm'],
		['38.4/2+3', 'cm', '(38.4/2+3) cm'],
		['(96+4)/4', 'cm', '(96+4)/4 cm'],
		['30 mm + 4', 'cm', '7 cm'],
		['12 cm + 1/2 in', 'cm', '12 cm + 1/2 in'],
		['12 cm + 5', 'in', '247 mm'],
		['254 mm + 5', 'in', '15″'],
		['0', 'cm', '0'],
		['', 'cm', ''],
		['bust', 'cm', 'bust']
	] as const)('%j in %s is shown as %j', (text, unit, shown) => {
		expect(withUnit(text, unit)).toBe(shown);
		if (!/\d/.test(shown)) return;
		for (const other of ['mm', 'cm', 'in'] as const)
			expect(readSum(shown, other).value).toBeCloseTo(readSum(text, unit).value, 9);
	});

	it.each(['1 cm + 1/3', '12 cm + 7', '3 mm + 3/128', '10.03 in + 1 cm', '1/7 cm + 1'])(
		'a sum of mixed units is not moved: %s',
		(text) => {
			for (const unit of ['mm', 'cm', 'in'] as const) {
				const shown = withUnit(text, unit);
				for (const other of ['mm', 'cm', 'in'] as const)
					expect(readSum(shown, other).value).toBeCloseTo(readSum(text, unit).value, 5);
			}
		}
	);
});
