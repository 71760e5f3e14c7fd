import { describe, expect, it } from 'vitest';
import { parseLength } from '#shared/reading.ts';
import { printLength, type Mm } from '#shared/units.ts';
import { parseFormula } from '#drafting/formula/parse.ts';
import { numberOf, type Scope } from '#drafting/formula/value.ts';
import { draftOf, mark, smallMethod } from '../drafting/small-method.ts';

/** Works a rule as a book prints it, from lengths in inches or centimetres. */
const worked = (rule: string, lengths: Readonly<Record<string, string>>): Mm => {
	const ours = {
		neck: 'neck',
		waist: 'waist',
		hip: 'hip',
		shoulderWidth: 'shoulderWidth',
		backLength: 'backLength'
	};
	const others = Object.keys(lengths).filter((key) => !(key in ours));
	const formula = parseFormula(rule, 'book', { allowances: others, points: [], lines: [] });
	const value = (key: string): Mm => parseLength(lengths[key] ?? '', 'in');
	const nothing = (): never => {
		throw new Error('a rule of a book names no points');
	};
	const scope: Scope = {
		measurement: value,
		allowance: value,
		share: nothing,
		point: nothing,
		line: nothing,
		has: () => false
	};
	return numberOf(formula, scope) as Mm;
};

const inches = (rule: string, lengths: Readonly<Record<string, string>>): string =>
	printLength(worked(rule, lengths), 'in');

// Common practice, no source.
describe('trade facts', () => {
	it('half a shoulder width of 38 is 19, and with a drop of 3 the armhole lies 22 down', () => {
		expect(worked('shoulderWidth / 2 + armholeDrop', { shoulderWidth: '38 cm', armholeDrop: '3 cm' })).toBe(
			220
		);
	});

	it('a quarter of a bust of 100 is 25', () => {
		expect(worked('bustGirth / 4', { bustGirth: '100 cm' })).toBe(250);
	});

	it('a neck of 36 is 7 wide and, in front, 8 deep', () => {
		const neck = { neck: '36 cm', neckAllow: '1 cm', frontNeckDrop: '1 cm' };
		expect(worked('neck / 6 + neckAllow', neck)).toBe(70);
		expect(worked('neck / 6 + neckAllow + frontNeckDrop', neck)).toBe(80);
	});
});

// I. Rosenfeld, The Practical Designer (cloaks and suits edition), New York 1911, p. 261, Lesson 142 "The Shirt Waist",
// size 36: fractions are taken of half the size, 18. "from A to B is 7 inches ... two-thirds of size, or 12 inches; H is
// one-half of B and G ... from A to K is one-sixth of size, or 3 inches; from K to L is 1 inch up ... one-twelfth, 1 1/2".
describe('Rosenfeld 1911, p. 261', () => {
	const method = smallMethod(
		[
			mark('B', 'O', 'down', 'depth'),
			mark('C', 'O', 'down', 'waistLine'),
			mark('D', 'C', 'down', 'below'),
			mark('G', 'B', 'across', '2 * halfSize / 3'),
			mark('E', 'D', 'across', '2 * halfSize / 3'),
			{ kind: 'division', name: 'H', label: 'one-half of B and G', from: 'B', to: 'G', at: '1 / 2' },
			mark('K', 'O', 'across', 'halfSize / 6'),
			mark('L', 'K', 'up', 'rise'),
			mark('Z', 'D', 'across', 'halfSize / 12')
		],
		{
			allowances: {
				halfSize: { label: 'half the size', default: '18 in', range: ['15 in', '25 in'] },
				depth: { label: 'the depth', default: '7 in', range: ['6 in', '9 in'] },
				waistLine: { label: 'the natural waist', default: '15 1/2 in', range: ['14 in', '18 in'] },
				below: { label: 'below the waist', default: '6 in', range: ['5 in', '7 in'] },
				rise: { label: 'the neck curve', default: '1 in', range: ['0 in', '2 in'] }
			}
		}
	);
	const { points } = draftOf(method);
	const placed = (name: string): string[] =>
		[points[name]?.x, points[name]?.y].map((length) => printLength(length as Mm, 'in'));

	it.each([
		['G', '12″', '7″'],
		['E', '12″', '21 1/2″'],
		['H', '6″', '7″'],
		['K', '3″', '0″'],
		['L', '3″', '-1″'],
		['Z', '1 1/2″', '21 1/2″']
	])('%s lies %s across and %s down', (name, across, down) => {
		expect(placed(name)).toEqual([across, down]);
	});
});

// I. Rosenfeld, The Practical Designer (cloaks and suits edition), New York 1911: skirts are set out on half of the waist
// and half of the hip. p. 139, Lesson 73 "Circle Skirt"; p. 154, Lesson 84 "The Stout Skirt", waist 30, hip 45; p. 199,
// Lesson 106 "Child's One-Piece Skirt", waist 25 1/2, hip 34, breast 30. ("One-third of 15" is 5: fractions are of half the size.)
describe('Rosenfeld 1911, skirts', () => {
	it.each([
		['p. 139', 'waist / 2', { waist: '25' }, '12 1/2″'],
		['p. 154', 'waist / 2', { waist: '30' }, '15″'],
		['p. 154', 'hip / 2', { hip: '45' }, '22 1/2″'],
		['p. 199', 'waist / 2', { waist: '25 1/2' }, '12 3/4″'],
		['p. 199', 'hip / 2', { hip: '34' }, '17″'],
		['p. 199', 'breast / 2 / 3', { breast: '30' }, '5″']
	] as const)('%s: %s of %o is %s', (_, rule, given, length) => {
		expect(inches(rule, given)).toBe(length);
	});
});

// I. Rosenfeld, The Practical Designer, revised edition, New York 1918, collars. p. 130, Lesson 53 "Standing Collar": 15 with
// 1 for seams, so a neck of 14. p. 135, "Convertible Collar", size 36: a twelfth is 1 1/2. (It prints "1/6 of size and 1 inch
// allowance" as 3 1/2 inches; by its own rule of half the size it is 3 + 1.)
it('Rosenfeld 1918, pp. 130 and 135: collars', () => {
	expect(inches('collar - seams', { collar: '15', seams: '1' })).toBe('14″');
	expect(inches('size / 2 / 12', { size: '36' })).toBe('1 1/2″');
	expect(inches('size / 2 / 6 + more', { size: '36', more: '1' })).toBe('4″');
});

// School Sewing, "Drafting a Foundation Shirt Waist Pattern, the Front" (read in a reprint without author, year or page
// numbers): 2 inches along shoulder and front for a neck of 12, an eighth more for each half inch of neck.
it('School Sewing: a neck of 13 is set out at 2 1/4', () => {
	expect(inches('usual + (neck - small) / 4', { usual: '2', neck: '13', small: '12' })).toBe('2 1/4″');
});

// I. Rosenfeld, The Practical Designer, revised edition, New York 1918, p. 9: a height of 66 inches in eight units.
it('Rosenfeld 1918, p. 9: eighths of 66 inches', () => {
	const eighths = [2, 3, 4, 5, 6, 7, 8].map((n) => inches(`${n} * height / 8`, { height: '66' }));
	expect(eighths).toEqual(['16 1/2″', '24 3/4″', '33″', '41 1/4″', '49 1/2″', '57 3/4″', '66″']);
});

// I. Rosenfeld, The Practical Designer, revised edition, New York 1918, p. 16: an inch more height, a quarter more waist length.
it('Rosenfeld 1918, p. 16: a natural waist of 15 1/2 at 66 inches is 16 at 68', () => {
	expect(inches('waistLine + (height - usual) / 4', { waistLine: '15 1/2', height: '68', usual: '66' })).toBe(
		'16″'
	);
});

// The Perfect Dressmaking System, 1914 (Wikisource, page image 13): waist 25, hips 40, five gores. (The book's bottom
// width for four gores, 17 1/2, is a rounding: (81 - 10) / 4 is 17 3/4.)
it('The Perfect Dressmaking System 1914: five gores', () => {
	expect(inches('waist / 5', { waist: '25' })).toBe('5″');
	expect(inches('hip / 5', { hip: '40' })).toBe('8″');
	expect(inches('(bottom - front) / 4', { bottom: '81', front: '10' })).toBe('17 3/4″');
});

// Carrie Crane Ingalls, Text-Book on Domestic Art (c. 1911), "Gored Skirt 38", half waist 12: a third is front and back
// gore, the front an inch narrower; the rest in three. "Five-Gored Underskirt Draft", waist 24: an eighth, a sixth, the rest.
describe('Ingalls c. 1911', () => {
	it('Gored Skirt 38: front 1 1/2, back 2 1/2, sides 2 2/3, front hip 2 1/4', () => {
		const given = { halfWaist: '12', inch: '1', more: '3/4' };
		expect(inches('(halfWaist / 3 - inch) / 2', given)).toBe('1 1/2″');
		expect(inches('(halfWaist / 3 + inch) / 2', given)).toBe('2 1/2″');
		expect(worked('(halfWaist - halfWaist / 3) / 3', given) / 25.4).toBeCloseTo(2 + 2 / 3, 12);
		expect(inches('(halfWaist / 3 - inch) / 2 + more', given)).toBe('2 1/4″');
	});

	it('Five-Gored Underskirt: raised top lines and the hip lines below them', () => {
		const method = smallMethod(
			[
				mark('A', 'O', 'across', 'girth / 8'),
				mark('B', 'A', 'up', 'quarter'),
				mark('C', 'O', 'across', 'girth / 6'),
				mark('D', 'C', 'up', '2 * quarter'),
				mark('E', 'O', 'across', 'distance(O, B) + 4 * quarter'),
				mark('F', 'O', 'across', '3 * distance(O, D) / 2')
			],
			{
				allowances: {
					girth: { label: 'the waist', default: '24 in', range: ['20 in', '40 in'] },
					quarter: { label: 'a quarter inch', default: '1/4 in', range: ['1/4 in', '1/4 in'] }
				}
			}
		);
		const { points } = draftOf(method);
		expect([points['A'], points['C']].map((point) => printLength(point?.x as Mm, 'in'))).toEqual([
			'3″',
			'4″'
		]);
		expect((points['E']?.x ?? NaN) / 25.4).toBeCloseTo(4.0104, 4);
		expect((points['F']?.x ?? NaN) / 25.4).toBeCloseTo(6.0467, 4);
	});
});

// Laura I. Baldt, Clothing for Women: Selection, Design, Construction, Lippincott 1916, "To Draft Shirt", back, Fig. 45
// (read in a reprint without page numbers): AC = 1/2 AB, AD = 1/2 AC, AE = 1/6 neck, DG = 1/2 width of back + 3/4,
// BK = 1/4 waist + 1 1/4. The book gives the rules; the sample numbers are ours, chosen to be easy in the head.
describe('Baldt 1916, Fig. 45', () => {
	it.each([
		['backLength / 2', '8″'],
		['backLength / 2 / 2', '4″'],
		['neck / 6', '2 1/4″'],
		['shoulderWidth / 2 + more', '7 1/4″'],
		['waist / 4 + much', '7 3/4″']
	])('%s is %s', (rule, length) => {
		const given = {
			backLength: '16',
			neck: '13 1/2',
			shoulderWidth: '13',
			waist: '26',
			more: '3/4',
			much: '1 1/4'
		};
		expect(inches(rule, given)).toBe(length);
	});
});
