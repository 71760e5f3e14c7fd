import { describe, expect, it } from 'vitest';
import { effortOf } from '../support/effort.ts';
import { refusalOf } from '../support/refusal.ts';
import { parseLength } from '#shared/reading.ts';
import {
	mm,
	MM_PER,
	printableRange,
	PRINTED_PARTS,
	printFine,
	printLength,
	printNumber,
	printOutside,
	printRange,
	printSmall,
	spellFractions,
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
		expect(refusalOf(() => parseLength(text, 'cm', 'x.json: bust'))).toContain(
			`x.json: bust: "${text}" is not a length; write a number such as 96`
		);
	});

	it('a very long one is refused at once', () => {
		const text = `9${' '.repeat(100_000)}x`;
		const refused = (): string => refusalOf(() => parseLength(text, 'cm'));
		expect(effortOf(refused)).toBeLessThan(200);
		expect(refused()).toContain('is not a length');
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

	it.each([
		[25.4 / 64, 'in', '1/64″'],
		[25.4 / 32, 'in', '1/32″'],
		[25.4 / 16, 'in', '1/16″'],
		[25.4 / 4, 'in', '1/4″'],
		[0.1, 'mm', '0.1 mm'],
		[10, 'mm', '10 mm']
	] as const)('a grid of %d mm in %s is written finely: %s', (length, unit, text) => {
		expect(printFine(mm(length), unit)).toBe(text);
	});

	it('writes finer parts where they are asked for', () => {
		const length = mm(25.4 * (2 + 21 / 64));
		expect([16, 32, 64].map((parts) => printNumber(length, 'in', parts))).toEqual([
			'2 5/16',
			'2 11/32',
			'2 21/64'
		]);
		expect(printLength(mm(238.75), 'cm', 1000)).toBe('23.875 cm');
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

describe('ranges', () => {
	it('are rounded inward, so that what is shown lies within', () => {
		expect(printRange([mm(10), mm(60)], 'in')).toBe('from 7/16″ to 2 5/16″');
		expect(printRange([mm(-40), mm(300)], 'in')).toBe('from -1 9/16″ to 11 3/4″');
		expect(printRange([mm(10), mm(60)], 'cm')).toBe('from 1 cm to 6 cm');
		expect(printRange([mm(25.4), mm(50.8)], 'in')).toBe('from 1″ to 2″');
		expect(printableRange([mm(10), mm(60)], 'in')).toEqual([25.4 * (7 / 16), 25.4 * (2 + 5 / 16)]);
	});

	it('a length outside is written so that it is seen to lie outside', () => {
		const range = [mm(50), mm(3000)] as const;
		expect(printOutside(mm(40), range, 'cm')).toBe('4 cm');
		expect(printOutside(mm(49.996), range, 'cm')).toBe('4.9996 cm');
		expect(printOutside(mm(3001), range, 'in')).toBe('118 1/8″');
		expect(printOutside(mm(48), range, 'in')).toBe('1 7/8″');
	});

	it('the parts in which lengths are printed grow finer', () => {
		for (const parts of Object.values(PRINTED_PARTS)) expect([...parts].sort((a, b) => a - b)).toEqual(parts);
	});
});

it('spellFractions parts a vulgar fraction from the number before it', () => {
	expect(spellFractions('37½ and ⅝')).toBe('37 1/2 and  5/8');
});
