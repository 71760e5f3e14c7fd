import { describe, expect, it } from 'vitest';
import {
	mm,
	MM_PER,
	parseLength,
	printLength,
	printNumber,
	printSmall,
	spellFractions,
	UnreadableLength,
	type Unit
} from '#shared/units.ts';

describe('parseLength reads what people write', () => {
	const rows: readonly [text: string, unit: Unit, mm: number][] = [
		['96', 'cm', 960],
		['96.5', 'cm', 965],
		['96,5', 'cm', 965],
		['96.', 'cm', 960],
		['.5', 'cm', 5],
		[',25', 'cm', 2.5],
		['  7  ', 'mm', 7],
		['-4', 'cm', -40],
		['−3', 'cm', -30],
		['+2', 'cm', 20],
		['3/4', 'in', 19.05],
		['37 3/4', 'in', 958.85],
		['37-3/4', 'in', 958.85],
		['37¾', 'in', 958.85],
		['½', 'cm', 5],
		['-1 1/2', 'cm', -15]
	];
	it.each(rows)('%j in %s is %d mm', (text, unit, expected) => {
		expect(parseLength(text, unit)).toBeCloseTo(expected, 9);
	});

	it.each([
		['37 3/4"', 958.85],
		['37¾″', 958.85],
		["2''", 50.8],
		['3”', 76.2],
		['4 in', 101.6],
		['5 inches', 127],
		['6 INCH', 152.4],
		['8 cm', 80],
		['9mm', 9]
	])('a written unit wins: %j', (text, expected) => {
		for (const unit of ['cm', 'mm', 'in'] as const) expect(parseLength(text, unit)).toBeCloseTo(expected, 9);
	});

	it.each([
		'',
		'   ',
		'abc',
		'9x6',
		'1/0',
		'3 1/0',
		'1e3',
		'96,5,1',
		'1,234.5',
		'3 4',
		'--4',
		'cm',
		'5 ft',
		'NaN',
		'1/2/3'
	])('%j is not a length, and the error says what was seen', (text) => {
		expect(() => parseLength(text, 'cm')).toThrow(UnreadableLength);
		expect(() => parseLength(text, 'cm')).toThrow(`"${text}" is not a length: write a number such as 96`);
	});
});

describe('printing', () => {
	it.each<[length: number, unit: Unit, text: string]>([
		[222, 'cm', '22.2 cm'],
		[222, 'mm', '222 mm'],
		[222, 'in', '8 3/4″'],
		[124.0166, 'cm', '12.4 cm'],
		[79.3668, 'cm', '7.94 cm'],
		[79.3668, 'mm', '79.4 mm'],
		[0, 'cm', '0 cm'],
		[-0.001, 'cm', '0 cm'],
		[-0.001, 'in', '0″'],
		[-6.35, 'in', '-1/4″'],
		[25.4, 'in', '1″'],
		[24.9, 'in', '1″'],
		[1.5875, 'in', '1/16″'],
		[-41.5, 'cm', '-4.15 cm']
	])('%d mm in %s is written %s', (length, unit, text) => {
		expect(printLength(mm(length), unit)).toBe(text);
	});

	it('leaves the unit out of a bare number', () => {
		expect(printNumber(mm(958.85), 'in')).toBe('37 3/4');
		expect(printNumber(mm(192), 'cm')).toBe('19.2');
	});

	it('writes a small difference in half millimetres, or in sixteenths of an inch', () => {
		expect(printSmall(mm(9.3), 'cm')).toBe('9.5 mm');
		expect(printSmall(mm(2.1), 'mm')).toBe('2 mm');
		expect(printSmall(mm(9.3), 'in')).toBe('3/8″');
	});

	it('reads back what it prints', () => {
		for (const unit of ['cm', 'mm', 'in'] as const) {
			const finest = unit === 'in' ? MM_PER.in / 16 : 0.1;
			for (const steps of [1, 7, 160, 1234, 6001]) {
				const length = mm(steps * finest);
				expect(parseLength(printLength(length, unit), unit)).toBeCloseTo(length, 6);
			}
		}
	});
});

it('spellFractions parts a vulgar fraction from the number before it', () => {
	expect(spellFractions('37½ and ⅝')).toBe('37 1/2 and  5/8');
});
