import { describe, expect, it } from 'vitest';
import { isDue, reviewed, type Review } from '#practice/review.ts';
import { seeds } from './methods.ts';

const days = (from: string, to: string): number => (Date.parse(to) - Date.parse(from)) / 86_400_000;
const wait = ({ last, due }: Review): number => days(last, due);

describe('spaced review', () => {
	it('begins with the model’s own first waits: about two days if right, one if wrong', () => {
		// The first stabilities of the published weights are 2.3065 days (right) and 0.212 (wrong).
		const right = reviewed(undefined, '2026-11-25', true);
		expect(right).toMatchObject({ last: '2026-11-25', due: '2026-11-27' });
		expect(right.stability).toBeCloseTo(2.3065, 4);
		const wrong = reviewed(undefined, '2026-11-25', false);
		expect(wrong).toMatchObject({ due: '2026-11-26' });
		expect(wrong.stability).toBeCloseTo(0.212, 4);
	});

	it('waits longer each time the answer is right on the day it is due, up to a year', () => {
		let review = reviewed(undefined, '2026-01-01', true);
		const waits = [wait(review)];
		for (const _ of seeds(9)) {
			review = reviewed(review, review.due, true);
			waits.push(wait(review));
		}
		for (const [i, each] of waits.entries())
			if (i > 0) expect(each, String(waits)).toBeGreaterThanOrEqual(Math.min(365, (waits[i - 1] ?? 0) * 1.5));
		expect(waits.at(-1)).toBe(365);
	});

	it('comes back sooner after a wrong answer', () => {
		const known = [...seeds(4)].reduce<Review>(
			(review) => reviewed(review, review.due, true),
			reviewed(undefined, '2026-01-01', true)
		);
		const missed = reviewed(known, known.due, false);
		expect(wait(missed)).toBeLessThan(wait(known) / 4);
		expect(missed.difficulty).toBeGreaterThan(known.difficulty);
	});

	it('takes the first answer of a day alone, right or wrong', () => {
		const first = reviewed(undefined, '2026-11-25', true);
		for (const right of [true, false]) expect(reviewed(first, '2026-11-25', right)).toBe(first);
	});

	it('takes nothing from a clock that was set back', () => {
		const first = reviewed(undefined, '2026-11-25', true);
		expect(reviewed(first, '2026-11-20', false)).toBe(first);
	});

	it('counts days over the ends of months, years and summer time', () => {
		expect(reviewed(undefined, '2026-12-30', true).due).toBe('2027-01-01');
		expect(reviewed(undefined, '2028-02-28', true).due).toBe('2028-03-01');
		expect(reviewed(undefined, '2026-03-28', true).due).toBe('2026-03-30');
	});

	it('is due on its day and after, not before', () => {
		const review = reviewed(undefined, '2026-11-25', true);
		expect(['2026-11-26', '2026-11-27', '2026-11-28', '2027-01-01'].map((day) => isDue(review, day))).toEqual(
			[false, true, true, true]
		);
	});

	it('gives the same days for the same answers', () => {
		const run = (): Review =>
			[true, true, false, true].reduce<Review>(
				(review, right) => reviewed(review, review.due, right),
				reviewed(undefined, '2026-11-25', true)
			);
		expect(run()).toEqual(run());
	});
});
