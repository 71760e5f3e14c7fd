import { describe, expect, it } from 'vitest';
import {
	afterExample,
	afterTry,
	isRuleDue,
	knownAfter,
	knownOf,
	masterySchema,
	NO_MASTERY,
	standingOf,
	wantsExample,
	type Mastery,
	type Try
} from '#practice/mastery.ts';
import { seeds } from './methods.ts';

const RULE = 'mark:across:shoulderWidth/2';

/** A first, unaided try, each on a body of its own unless one is named. */
let bodies = 0;
const tried = (answer: Try['answer'], day: string, more: Partial<Try> = {}): Try => ({
	rule: RULE,
	body: `body ${bodies++}`,
	day,
	answer,
	first: true,
	helped: false,
	...more
});
const after = (...tries: readonly Try[]): Mastery => tries.reduce(afterTry, NO_MASTERY);
const known = (...tries: readonly Try[]): number => knownOf(after(...tries), RULE);

describe('knowledge tracing', () => {
	it('is Bayes’ rule and then learning, by hand', () => {
		// Known 1/5, learnt 3/20, luck 1/20, slip 1/10. Right: 18/100 of 22/100 is 9/11, then 9/11 + 2/11 * 3/20 = 93/110.
		expect(knownAfter(0.2, true)).toBeCloseTo(93 / 110, 12);
		// Wrong: 2/100 of 78/100 is 1/39, then 1/39 + 38/39 * 3/20 = 67/390.
		expect(knownAfter(0.2, false)).toBeCloseTo(67 / 390, 12);
	});

	it('gives the published run: 0.845, 0.991, after a miss 0.936, right again 0.997', () => {
		const run: number[] = [];
		let now = 0.2;
		for (const right of [true, true, false, true]) run.push((now = knownAfter(now, right)));
		expect(run.map((each) => each.toFixed(3))).toEqual(['0.845', '0.991', '0.936', '0.997']);
	});

	it('masters a rule with two right answers on different bodies, and not with one', () => {
		const day = '2026-11-25';
		expect(known(tried('right', day))).toBeLessThan(0.95);
		expect(known(tried('right', day), tried('right', day))).toBeGreaterThan(0.95);
		const same = { body: 'Curlew' };
		expect(known(tried('right', day, same), tried('right', day, same))).toBe(known(tried('right', day)));
		expect(known(tried('right', day, same), tried('right', '2026-12-25', same))).toBeLessThan(0.95);
	});

	it('counts nothing but first, unaided answers that are right or wrong', () => {
		const day = '2026-11-25';
		for (const answer of ['unfinished', 'not-valid', 'our-fault'] as const)
			expect(afterTry(NO_MASTERY, tried(answer, day))).toBe(NO_MASTERY);
		for (const more of [{ first: false }, { helped: true }]) {
			expect(afterTry(NO_MASTERY, tried('right', day, more))).toBe(NO_MASTERY);
			expect(afterTry(NO_MASTERY, tried('wrong', day, more))).toBe(NO_MASTERY);
		}
		expect(afterTry(NO_MASTERY, tried('wrong', day))).not.toEqual(NO_MASTERY);
	});

	it('keeps each rule for itself, and never changes what it was given', () => {
		const before = after(tried('right', '2026-11-25'));
		const copy = structuredClone(before);
		const then = afterTry(before, tried('wrong', '2026-11-25', { rule: 'meeting' }));
		expect(before).toEqual(copy);
		expect(knownOf(then, RULE)).toBe(knownOf(before, RULE));
		expect(knownOf(then, 'meeting')).toBeCloseTo(67 / 390, 12);
		expect(knownOf(then, 'division:1/2')).toBe(0.2);
	});

	it('remembers the last bodies alone, so that a record does not grow for ever', () => {
		const many = after(...seeds(100).map(() => tried('right', '2026-11-25')));
		expect(many.rules[RULE]?.bodies).toHaveLength(40);
	});
});

describe('how a rule stands', () => {
	const [monday, tuesday, later] = ['2026-11-23', '2026-11-24', '2027-11-24'];

	it('is new, coming, secure on another day, and due again', () => {
		expect(standingOf(NO_MASTERY, RULE, monday)).toBe('new');
		const oneDay = [tried('right', monday), tried('right', monday), tried('right', monday)];
		expect(standingOf(after(...oneDay), RULE, monday)).toBe('coming');
		const twoDays = after(...oneDay, tried('right', tuesday));
		expect(standingOf(twoDays, RULE, tuesday)).toBe('secure');
		expect(isRuleDue(twoDays, RULE, tuesday)).toBe(false);
		expect(standingOf(twoDays, RULE, later)).toBe('due');
		expect(isRuleDue(twoDays, RULE, later)).toBe(true);
		expect(standingOf(afterTry(twoDays, tried('right', later)), RULE, later)).toBe('secure');
	});

	it('falls back to coming with a miss, and returns with the next right answer', () => {
		const secure = [tried('right', monday), tried('right', tuesday)];
		expect(standingOf(after(...secure), RULE, tuesday)).toBe('secure');
		const missed = after(...secure, tried('wrong', tuesday));
		expect(standingOf(missed, RULE, tuesday)).toBe('coming');
		expect(standingOf(afterTry(missed, tried('right', tuesday)), RULE, tuesday)).toBe('secure');
	});

	it('is begun, neither new nor coming, while it was only missed', () => {
		expect(standingOf(after(tried('wrong', monday)), RULE, monday)).toBe('begun');
		expect(standingOf(after(tried('wrong', monday), tried('right', monday)), RULE, monday)).toBe('coming');
	});
});

describe('the way out to a worked example', () => {
	const miss = (count: number): Mastery => after(...seeds(count).map(() => tried('wrong', '2026-11-25')));

	it('opens after ten tries without mastery', () => {
		expect(wantsExample(NO_MASTERY, RULE)).toBe(false);
		expect(wantsExample(miss(9), RULE)).toBe(false);
		expect(wantsExample(miss(10), RULE)).toBe(true);
	});

	it('closes when the example was seen, and opens again after ten more', () => {
		const seen = afterExample(miss(10), RULE);
		expect(wantsExample(seen, RULE)).toBe(false);
		expect(knownOf(seen, RULE)).toBe(knownOf(miss(10), RULE));
		const again = seeds(10).reduce((mastery) => afterTry(mastery, tried('wrong', '2026-11-25')), seen);
		expect(wantsExample(again, RULE)).toBe(true);
		expect(afterExample(NO_MASTERY, RULE)).toBe(NO_MASTERY);
	});

	it('is not for one who has mastered the rule, however many tries it took', () => {
		const day = '2026-11-25';
		const mastered = [tried('right', day), tried('right', day), tried('right', day)].reduce(
			afterTry,
			miss(9)
		);
		expect(knownOf(mastered, RULE)).toBeGreaterThan(0.95);
		expect(wantsExample(mastered, RULE)).toBe(false);
	});
});

describe('the saved record', () => {
	it('reads back what was written, and begins with nothing', () => {
		const mastery = after(tried('right', '2026-11-25'), tried('wrong', '2026-11-26'));
		expect(masterySchema.parse(JSON.parse(JSON.stringify(mastery)))).toEqual(mastery);
		expect(masterySchema.parse({})).toEqual(NO_MASTERY);
	});

	it('refuses another version, and numbers that cannot be', () => {
		const mastery = after(tried('right', '2026-11-25'));
		const damaged = (change: object): boolean =>
			masterySchema.safeParse({ ...mastery, rules: { [RULE]: { ...mastery.rules[RULE], ...change } } })
				.success;
		expect(damaged({})).toBe(true);
		expect(masterySchema.safeParse({ ...mastery, version: 2 }).success).toBe(false);
		for (const change of [{ known: 1.5 }, { known: null }, { tries: -1 }, { rightDays: ['yesterday'] }])
			expect(damaged(change), JSON.stringify(change)).toBe(false);
		const { review } = mastery.rules[RULE] ?? {};
		for (const change of [{ stability: 0 }, { difficulty: 0 }, { due: '2026-13-01' }])
			expect(damaged({ review: { ...review, ...change } }), JSON.stringify(change)).toBe(false);
	});
});
