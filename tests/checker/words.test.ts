import { describe, expect, it } from 'vitest';
import { mm, radians, type Unit } from '#shared/units.ts';
import type { Finding, Verdict } from '#shared/verdict.ts';
import { message } from '#shared/speech/message.ts';
import { verdictWords } from '#checker/words.ts';
import { english, speechFor } from '../support/speech.ts';
import { HERON_BACK, marked, sentences, verdictOn } from './drafts.ts';

const placed = (across: number, down: number): Verdict => verdictOn(HERON_BACK, 'A', marked(across, down));
const A = { name: 'A' };
const degrees = (angle: number) => radians((angle * Math.PI) / 180);

describe('a wrong point in words', () => {
	it('says how far off and which way, in millimetres', () => {
		expect(verdictWords(placed(9, 224), A, english)).toEqual({
			headline: 'A is not right yet.',
			sentences: ['It lies 9 mm too far out.']
		});
	});

	it('and in inches, to a sixteenth', () => {
		expect(sentences(placed(9, 224), 'in')).toEqual(['It lies 3/8″ too far out.']);
	});

	it.each([
		[12, 222, 'It lies 12 mm too far out.'],
		[-12, 222, 'It lies 12 mm too far in.'],
		[0, 234, 'It lies 12 mm too low.'],
		[0, 210, 'It lies 12 mm too high.'],
		[-3.14, 218, 'It lies 3.1 mm too far in, 4 mm too high.'],
		[0.4, 210, 'It lies 12 mm too high.'],
		[-0.5, 210, 'It lies 12 mm too high.'],
		[0, 345.6, 'It lies 12.4 cm too low.']
	])('placed at %d, %d: %s', (across, down, sentence) => {
		expect(sentences(placed(across, down))).toEqual([sentence]);
	});
});

describe('a right answer in words', () => {
	it.each([
		[0, 222, 'cm', 'A is right. Spot on.'],
		[0.3, 222.3, 'cm', 'A is right. Spot on.'],
		[0, 223.5, 'cm', 'A is right. Within 1.5 mm.'],
		[0, 220, 'cm', 'A is right. Within 2 mm.'],
		[0, 223.5, 'in', 'A is right. Within 1/16″.'],
		[0, 222.6, 'in', 'A is right. Within a hair.']
	] as const)('placed at %d, %d, in %s: %s', (across, down, unit, headline) => {
		expect(verdictWords(placed(across, down), A, english.inUnit(unit))).toEqual({ headline, sentences: [] });
	});
});

describe('the other answers in words', () => {
	it('cost nothing, and say so', () => {
		expect(verdictWords({ answer: 'unfinished' }, A, english)).toEqual({
			headline: 'Nothing is placed for A yet.',
			sentences: []
		});
		expect(
			verdictWords({ answer: 'not-valid', because: message('verdicts', 'notJoined') }, A, english)
		).toEqual({
			headline: 'That entry cannot be used; nothing is counted.',
			sentences: ['the pieces of the line do not join.']
		});
		expect(
			verdictWords(
				{ answer: 'our-fault', because: message('verdicts', 'fault', { words: 'no such step' }) },
				A,
				english
			)
		).toEqual({
			headline: 'The program could not judge this. That is our fault, and nothing is counted.',
			sentences: ['no such step']
		});
	});
});

describe('small lengths', () => {
	it.each([
		[0.5, '0.5 mm', 'a hair'],
		[0.79, '0.8 mm', 'a hair'],
		[0.8, '0.8 mm', '1/16″'],
		[3, '3 mm', '1/8″'],
		[4.94, '4.9 mm', '3/16″'],
		[5.4, '5 mm', '3/16″'],
		[25.4, '25 mm', '1″'],
		[99.4, '99 mm', '3 15/16″'],
		[100, '10 cm', '3 15/16″'],
		[123.4, '12.3 cm', '4 7/8″']
	])('%d mm is %s, or %s', (length, metric, inches) => {
		expect(english.words.verdicts.small(mm(length))).toBe(metric);
		expect(english.inUnit('mm').words.verdicts.small(mm(length))).toBe(metric);
		expect(english.inUnit('in').words.verdicts.small(mm(length))).toBe(inches);
	});
});

describe('ways', () => {
	it('what is less than a pencil line is not spoken of', () => {
		expect(english.words.verdicts.way({ across: mm(0.49), down: mm(-7) })).toBe('7 mm too high');
		expect(english.words.verdicts.way({ across: mm(-0.49), down: mm(0.49) })).toBe('a hair off');
		expect(english.inUnit('in').words.verdicts.way({ across: mm(0), down: mm(0) })).toBe('a hair off');
	});
});

describe('a finding that only just failed', () => {
	const said = (finding: Finding, unit: Unit = 'cm') =>
		sentences({ answer: 'wrong', findings: [finding] }, unit);
	const length = (by: number): Finding => ({
		aspect: 'length',
		within: false,
		note: 'length',
		by: mm(by),
		tolerance: mm(3)
	});
	const direction = (turned: number): Finding => ({
		aspect: 'direction',
		within: false,
		note: 'direction:not-square',
		point: 'C',
		way: 'leaving',
		square: true,
		turned: degrees(turned),
		tolerance: degrees(2)
	});
	const course = (across: number, down: number): Finding => ({
		aspect: 'course',
		within: false,
		note: 'course',
		away: mm(Math.hypot(across, down)),
		where: [mm(0), mm(0)],
		across: mm(across),
		down: mm(down),
		tolerance: mm(3)
	});

	it('is never said to be just what is allowed', () => {
		expect(said(length(3.04))).toEqual(['It is a little over 3 mm too long; up to 3 mm is allowed.']);
		expect(said(length(-3.04))).toEqual(['It is a little over 3 mm too short; up to 3 mm is allowed.']);
		expect(said(length(3.4), 'in')).toEqual(['It is a little over 1/8″ too long; up to 1/8″ is allowed.']);
		expect(said(direction(2.03))).toEqual([
			'It leaves C a little over 2° off square; up to 2° is allowed there.'
		]);
		expect(said(course(0, 3.02))).toEqual([
			'At its worst it runs a little over 3 mm too low; up to 3 mm is allowed.'
		]);
		expect(sentences(placed(0, 224.03))).toEqual(['It lies a little over 2 mm too low.']);
		expect(sentences(placed(-2.3, 222), 'in')).toEqual(['It lies a little over 1/16″ too far in.']);
	});

	it('beside a greater one is said as it is: the two together are what is too much', () => {
		expect(sentences(placed(9, 224.03))).toEqual(['It lies 9 mm too far out, 2 mm too low.']);
	});

	it('is said plainly as soon as it can be told apart', () => {
		expect(said(length(3.06))).toEqual(['It is 3.1 mm too long; up to 3 mm is allowed.']);
		expect(said(length(4), 'in')).toEqual(['It is 3/16″ too long; up to 1/8″ is allowed.']);
		expect(said(direction(2.06))).toEqual(['It leaves C 2.1° off square; up to 2° is allowed there.']);
		expect(said(course(-3.06, 0))).toEqual([
			'At its worst it runs 3.1 mm too far in; up to 3 mm is allowed.'
		]);
	});

	it('two ways that are each allowed and together are not, are told together', () => {
		expect(said(course(2.4, -3.2))).toEqual([
			'At its worst it runs 2.4 mm too far out, 3.2 mm too high, together 4 mm; up to 3 mm is allowed.'
		]);
		expect(said(course(1.808, 2.41))).toEqual([
			'At its worst it runs 1.8 mm too far out, 2.4 mm too low, together a little over 3 mm; up to 3 mm is allowed.'
		]);
	});
});

describe('a verdict in Spanish', () => {
	const spanish = speechFor('es');
	const shoulder = { name: 'hombro', article: 'el' };
	const said = (verdict: Verdict) => {
		const { headline, sentences } = verdictWords(verdict, A, spanish);
		return [headline, ...sentences];
	};

	it('says which way, and how near', () => {
		expect(said(placed(9, 224))).toEqual(['A no está bien todavía.', 'Está 9 mm demasiado hacia fuera.']);
		expect(said(placed(-3.14, 218))).toContain('Está 3,1 mm demasiado hacia dentro y 4 mm demasiado arriba.');
		expect(said(placed(0, 223.5))).toEqual(['A está bien. A 1,5 mm como mucho.']);
		expect(said(placed(0, 222))).toEqual(['A está bien. Exacto.']);
		expect(verdictWords(placed(0, 222), shoulder, spanish).headline).toBe('El hombro está bien. Exacto.');
	});

	it('says what cannot be used', () => {
		expect(said({ answer: 'not-valid', because: message('verdicts', 'asksForPoint') })).toEqual([
			'Esa entrada no se puede usar; no se cuenta nada.',
			'este paso pide un punto, y se ha trazado una línea.'
		]);
		expect(said({ answer: 'unfinished' })).toEqual(['Todavía no has colocado nada para A.']);
	});
});
