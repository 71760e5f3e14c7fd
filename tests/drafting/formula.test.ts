import { the } from '#shared/speech/en/grammar.ts';
import { english } from '../support/speech.ts';
import { describe, expect, it } from 'vitest';
import { refusalOf } from '../support/refusal.ts';
import { mm } from '#shared/units.ts';
import { formulaKeys, formulaNeeds } from '#drafting/formula/formula.ts';
import { parseFormula } from '#drafting/formula/parse.ts';
import { numberOf, type Scope } from '#drafting/formula/value.ts';
import { formulaArithmetic, formulaNoun, type Telling } from '#drafting/formula/words.ts';
import { polyline } from '#geometry/path.ts';
import { at } from '#geometry/point.ts';

const KNOWN = { allowances: ['armholeDrop', 'bustEase'], points: ['A', 'B', 'N1'], lines: ['edge'] };
const read = (text: string, wanted: 'length' | 'share' = 'length') =>
	parseFormula(text, 'm.yaml: step X: by', KNOWN, wanted);

/** Everything is a different number of millimetres. */
const SCOPE: Scope = {
	measurement: (key) => mm({ bust: 960, neck: 360, shoulderWidth: 384 }[key as string] ?? 0),
	allowance: (key) => mm(key === 'armholeDrop' ? 30 : 40),
	share: () => 0.5,
	point: (name) => (name === 'A' ? at(10, 20) : at(40, 60)),
	line: () => polyline(at(0, 0), at(0, 70), at(5, 70)),
	has: () => true
};
const TELLING: Telling = {
	speech: english,
	allowance: (key) => ({ article: 'the', name: key === 'armholeDrop' ? 'armhole drop' : 'bust ease' }),
	line: (name) => ({ article: 'the', name })
};

describe('values', () => {
	it.each([
		['bust', 960],
		['shoulderWidth / 2 + armholeDrop', 222],
		['bust / 4 + bustEase / 4', 250],
		['(bust + bustEase) / 4', 250],
		['bust - bustEase - armholeDrop', 890],
		['bust - (bustEase - armholeDrop)', 950],
		['-armholeDrop + bust', 930],
		['2 * neck / 3', 240],
		['neck * bust / shoulderWidth', 900],
		['distance(A, B)', 50],
		['length(edge) + distance(B, A) / 5', 85],
		['1.5 * bustEase', 60]
	])('%s is %d mm', (text, value) => {
		expect(numberOf(read(text), SCOPE)).toBeCloseTo(value, 9);
	});

	it.each([
		['1 / 2', 0.5],
		['0.25', 0.25],
		['1 - 2 / 3', 1 / 3],
		['neck / bust', 0.375],
		['distance(A, B) / length(edge)', 2 / 3]
	])('%s is the share %d', (text, value) => {
		expect(numberOf(read(text, 'share'), SCOPE)).toBeCloseTo(value, 12);
	});
});

describe('what a formula leans on', () => {
	it('names points and lines in turn, and keys by kind', () => {
		const formula = read('-(bust - distance(N1, A)) / 2 + length(edge) - armholeDrop + neck');
		expect(formulaNeeds(formula)).toEqual(['N1', 'A', 'edge']);
		expect(formulaKeys(formula, 'measurement')).toEqual(['bust', 'neck']);
		expect(formulaKeys(formula, 'allowance')).toEqual(['armholeDrop']);
	});
});

describe('errors name the place, the position, and the nearest known name', () => {
	it.each([
		[
			'shoulderwidht / 2',
			1,
			'there is no measurement or allowance "shoulderwidht" (did you mean "shoulderWidth"?)'
		],
		['bust / 4 + bustEse', 12, 'there is no measurement or allowance "bustEse" (did you mean "bustEase"?)'],
		['bust + zzzzzzzz', 8, 'there is no measurement or allowance "zzzzzzzz"'],
		['bustEase + bus', 12, 'there is no measurement or allowance "bus" (did you mean "bust"?)'],
		['distance(A, Q)', 13, 'there is no point "Q"'],
		['length(egde)', 8, 'there is no line "egde" (did you mean "edge"?)'],
		['bust + sqrt(4)', 8, '"sqrt" is not known; a formula may hold numbers, + - * /'],
		['distance(A)', 1, 'distance() takes 2 name(s), not 1'],
		['bust + length(edge, edge)', 8, 'length() takes 1 name(s), not 2'],
		['distance(A, 3)', 1, 'distance() and length() take the names of points and lines, nothing else'],
		['bust % 4', 6, '"%" is not allowed; a formula may hold numbers'],
		['bust ** 2', 6, '"**" is not allowed'],
		['bust / 0', 6, 'it divides by nothing'],
		['bust / (1 - 1)', 1, 'it divides by nothing, or comes to more than any draft measures'],
		['bust * 1e308 * 1e308', 1, 'it divides by nothing, or comes to more'],
		['bust * 1e3080', 1, 'it divides by nothing, or comes to more'],
		['choice(bust, bust, bust / (1 - 1))', 1, 'it divides by nothing, or comes to more'],
		['bust + 3', 1, 'a plain number cannot be added to a length or taken from it; name an allowance instead'],
		['3 - bust', 1, 'a plain number cannot be added to a length'],
		['bust * neck', 1, 'this is not a length'],
		['1 / 2', 1, 'this is not a length'],
		['bust / neck', 1, 'this is not a length'],
		['"bust"', 1, 'this cannot stand in a formula'],
		['bust.neck', 1, 'this cannot stand in a formula'],
		['bust neck', 1, 'this cannot stand in a formula'],
		['!bust', 1, 'this cannot stand in a formula'],
		['bust ? 1 : 2', 1, 'this cannot stand in a formula'],
		['', 1, 'this cannot stand in a formula'],
		['(bust / 4', 10, 'Unclosed (']
	])('%j at %d: %s', (text, position, what) => {
		expect(refusalOf(() => read(text))).toContain(
			`m.yaml: step X: by: position ${position} of "${text}": ${what}`
		);
	});

	it('a length is not a share', () => {
		expect(refusalOf(() => read('bust', 'share'))).toContain('this must be a plain share such as 1 / 2');
	});
});

describe('words', () => {
	it.each([
		['shoulderWidth / 2 + armholeDrop', 'half the shoulder width + the armhole drop'],
		['(bust + bustEase) / 4', 'a quarter of (the bust + the bust ease)'],
		['bust - (neck - bustEase)', 'the bust − (the neck − the bust ease)'],
		['bust / 7', 'the bust ÷ 7'],
		['2 * (bust + neck)', '2 × (the bust + the neck)'],
		['-armholeDrop', '− the armhole drop'],
		['distance(A, B) / 3', 'a third of the distance A–B'],
		['length(edge) / 12', 'a twelfth of the length of the edge']
	])('%s is said "%s"', (text, words) => {
		expect(the(formulaNoun(read(text), SCOPE, TELLING))).toBe(words);
	});

	it.each([
		['shoulderWidth / 2 + armholeDrop', 'cm', 'half the shoulder width + 3 = 19.2 + 3 = 22.2 cm'],
		['shoulderWidth / 2 + armholeDrop', 'mm', 'half the shoulder width + 30 = 192 + 30 = 222 mm'],
		['shoulderWidth / 2 + armholeDrop', 'in', 'half the shoulder width + 1 3/16 = 7 9/16 + 1 3/16 = 8 3/4″'],
		['bust / 4 + bustEase / 4', 'cm', 'a quarter of the bust + a quarter of 4 = 24 + 1 = 25 cm'],
		['bust - (neck - bustEase)', 'cm', 'the bust − (the neck − 4) = 96 − (36 − 4) = 64 cm'],
		['neck / 6', 'cm', 'a sixth of the neck = 6 cm'],
		['armholeDrop', 'cm', 'the armhole drop = 3 cm']
	] as const)('%s in %s is worked "%s"', (text, unit, words) => {
		expect(formulaArithmetic(read(text), SCOPE, { ...TELLING, speech: english.inUnit(unit) })).toBe(words);
	});
});
