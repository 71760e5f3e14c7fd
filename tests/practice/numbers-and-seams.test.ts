import { describe, expect, it } from 'vitest';
import type { Judged, Seam, TrueSeams } from '#practice/exercises/exercise.ts';
import { asksOf, explanationOf, judge, judgedWords } from '#practice/exercises/kinds.ts';
import { givenLengths } from '#drafting/explain.ts';
import { partOf } from '#shared/speech/en/nouns.ts';
import { the } from '#shared/speech/en/grammar.ts';
import { english } from '../support/speech.ts';
import { made } from './answers.ts';
import { seeds } from './methods.ts';

const cm = (length: number | undefined): number => (length ?? NaN) / 10;

const words = (judged: Judged): readonly string[] => judgedWords(judged, english).sentences;
const named = ({ parts }: Seam): string =>
	english.list(parts.map(({ noun, of }) => the(of ? partOf(noun, of) : noun)));

describe('working the number', () => {
	const asked = made('work-number', 3, 'back-block', 'U');
	const bust = cm(asked.body.measurements.bust);
	const type = (typed: string, unit: 'cm' | 'in' | 'mm' = 'cm') => judge(asked, { typed, unit });

	it('is a quarter of the bust and of its ease, by hand', () => {
		expect(cm(asked.right)).toBeCloseTo((bust + 8) / 4, 9);
		expect(asksOf(asked, english)).toBe('Start at A and go straight across. How far is it to U, underarm?');
	});

	it('takes a number or a sum, in any unit', () => {
		for (const typed of [`${bust}/4+2`, `(${bust} + 8) / 4`, `${bust / 4 + 2} cm`, `${bust / 4} : 1 + 20 mm`])
			expect(type(typed).answer, typed).toBe('right');
		expect(type(`(${bust}/4 + 2) / 2.54`, 'in').answer).toBe('right');
	});

	it('allows a millimetre, and no more', () => {
		expect(type(String(asked.right + 1), 'mm').answer).toBe('right');
		expect(type(String(asked.right - 1), 'mm').answer).toBe('right');
		for (const off of [1.1, -1.1])
			expect(type(String(asked.right + off), 'mm').answer, String(off)).toBe('wrong');
	});

	it('names the misstep of a wrong number and of a wrong sum, never one of the way', () => {
		expect(type(`${bust}/2+2`)).toMatchObject({ answer: 'wrong', note: 'fraction:half-for-quarter' });
		expect(type(`${bust}/4`)).toMatchObject({ answer: 'wrong', note: 'allowance:left-out:bustEase' });
		expect(words(type(`${bust}/4`))).toEqual(['It is 20 mm too little.', 'You left out the bust ease.']);
		for (let typed = -100; typed < 900; typed += 7) {
			const { note, answer } = type(String(typed), 'mm');
			if (answer === 'wrong')
				expect(note).toMatch(/^(number|term|fraction|allowance|measurement|unit|decimal|tape|digits)/);
		}
	});

	it('does not take a number for another way, though it leads to the same place', () => {
		const dart = made('work-number', 3, 'front-block', 'D');
		expect(dart.right).toBe(60);
		// Six centimetres the other way would be a point that was laid off away from V.
		expect(judge(dart, { typed: '-6', unit: 'cm' })).toMatchObject({ answer: 'wrong', note: 'number' });
		expect(words(judge(dart, { typed: '12', unit: 'cm' }))).toContain(
			'Perhaps you took the dart depth twice.'
		);
	});

	it('tells nothing from a wrong entry', () => {
		for (const typed of ['', '  ']) expect(type(typed).answer).toBe('unfinished');
		for (const typed of ['abc', '1/0', '12 13', '=4', 'bust/4']) {
			expect(type(typed).answer, typed).toBe('not-valid');
			expect(words(type(typed)).join(' ')).not.toContain(String(cm(asked.right)));
		}
	});

	it('gives a length that must be read off the draft, and allows for its rounding', () => {
		const neck = made('work-number', 3, 'front-block', 'C');
		const givens = givenLengths(neck.method, neck.step, neck.body, neck.soFar, english);
		expect(givens.map(({ noun }) => noun.name)).toEqual(['O to N']);
		const width = cm(givens[0]?.length);
		expect(width).toBeCloseTo(cm(neck.body.measurements.neck) / 6 + 1, 9);
		expect(judge(neck, { typed: `${width.toFixed(1)}+1`, unit: 'cm' }).answer).toBe('right');
	});
});

const seams: readonly TrueSeams[] = seeds(40).flatMap((seed) => [
	made('true-seams', seed, 'front-block', 'shoulder'),
	made('true-seams', seed, 'front-block', 'sideSeam')
]);

const straightLength = (asked: TrueSeams): number => {
	const { movesFrom, right } = asked;
	return Math.hypot(right.x - movesFrom.at.x, right.y - movesFrom.at.y);
};

describe('truing two seams', () => {
	it('differ by what is asked, from 8 to 20 mm, both ways', () => {
		for (const { first, second, difference, draft } of seams) {
			expect(draft.warnings).toEqual([]);
			expect(first.length - second.length).toBeCloseTo(difference, 6);
			expect(Math.abs(difference)).toBeGreaterThanOrEqual(8);
			expect(Math.abs(difference)).toBeLessThanOrEqual(20);
			for (const seam of [first, second])
				expect(seam.parts.reduce((sum, { length }) => sum + length, 0)).toBeCloseTo(seam.length, 9);
		}
		expect(seams.filter(({ difference }) => difference > 0).length).toBeGreaterThan(20);
		expect(seams.filter(({ difference }) => difference < 0).length).toBeGreaterThan(20);
	});

	it('are as long as each other once the point is moved, along its own line', () => {
		for (const asked of seams) {
			const { first, second, right, standsAt, movesFrom } = asked;
			const rest = first.length - (first.parts.at(-1)?.length ?? NaN);
			expect(rest + straightLength(asked)).toBeCloseTo(second.length, 6);
			// Square to the line the move is nothing.
			const [x, y] = [standsAt.x - movesFrom.at.x, standsAt.y - movesFrom.at.y];
			const aside = (right.x - standsAt.x) * y - (right.y - standsAt.y) * x;
			expect(Math.abs(aside / Math.hypot(x, y))).toBeLessThan(1e-6);
			expect(first.parts.at(-1)?.path.at(-1)?.to).toEqual(standsAt);
		}
	});

	it('are the shoulder against the back’s, and the side with its dart closed where there is a dart', () => {
		const shoulder = made('true-seams', 0, 'front-block', 'shoulder');
		expect([named(shoulder.first), named(shoulder.second), shoulder.point]).toEqual([
			'the shoulder',
			"the back's shoulder",
			'S'
		]);
		const sides = seams.filter(({ key }) => key.step === 'sideSeam');
		const names = new Set(sides.map(({ first }) => named(first)));
		expect(names).toEqual(new Set(['the side seam', 'the side above the dart and the side below the dart']));
		for (const { point, movesFrom, first } of sides)
			expect([point, movesFrom.point]).toEqual(['V', first.parts.length === 1 ? 'U' : 'R']);
	});

	it('judges the longer, the difference and the place, each by itself', () => {
		for (const asked of seams) {
			const [longer, other] = asked.difference > 0 ? ['first', 'second'] : ['second', 'first'];
			const by = String(Math.abs(asked.difference));
			const say = (answer: object) => judge(asked, { longer, by, unit: 'mm', ...answer });
			const parts = (answer: object): readonly string[] =>
				say(answer).parts.map((each) => `${each.part} ${each.answer}`);
			expect(say({}).answer).toBe('unfinished');
			expect(parts({})).toEqual(['longer right', 'difference right', 'place unfinished']);
			expect(parts({ longer: other })).toEqual(['longer wrong', 'difference right']);
			expect(say({ longer: other }).answer).toBe('wrong');
			expect(parts({ by: `${by} + 4.5` })).toEqual(['longer right', 'difference wrong']);
			expect(say({ by: `${by} + 4.5` }).answer).toBe('wrong');
			const { right, standsAt } = asked;
			expect(say({ moved: [right.x, right.y] }).answer).toBe('right');
			expect(say({ moved: [standsAt.x, standsAt.y] }).answer).toBe('wrong');
			expect(say({ moved: [right.x + 2.1, right.y] }).answer).toBe('wrong');
			expect(say({ by: 'much' }).answer).toBe('not-valid');
		}
	});

	it('says what each seam measures, and how to true it', () => {
		const asked = made('true-seams', 1, 'front-block', 'shoulder');
		const way = asked.difference > 0 ? 'toward' : 'away from';
		const rule = explanationOf(asked, english);
		expect(rule.worked).toContain(`Move S ${Math.abs(asked.difference) / 10} cm along its line, ${way} N`);
		expect(rule.worked).toContain(
			`so that it lies ${Number(cm(asked.second.length).toFixed(2))} cm from there`
		);
	});
});
