import { z } from '#shared/shape.ts';
import type { Verdict } from '#shared/verdict.ts';
import {
	BODIES_REMEMBERED,
	DAYS_TO_BE_SECURE,
	KNOWLEDGE,
	MASTERED,
	TRIES_BEFORE_EXAMPLE
} from './constants.ts';
import { daySchema } from './day.ts';
import { isDue, reviewed, reviewSchema } from './review.ts';

/**
 * What a learner seems to have mastered, rule by rule. It steers what is asked next and is shown as a
 * guide; it is never a grade.
 */

const VERSION = 1;

const ruleRecordSchema = z.object({
	/** How likely the rule is known, 0 to 1. */
	known: z.number().check(z.minimum(0), z.maximum(1)),
	/** Tries that counted since the rule was last mastered, or its worked example last seen. */
	tries: z.int().check(z.minimum(0)),
	/** Bodies on which it was tried, the latest last: none counts twice. */
	bodies: z.array(z.string()),
	/** Days on which it was right, the first ones only: as many as make it secure. */
	rightDays: z.array(daySchema),
	review: reviewSchema
});

/** A learner's mastery as it is saved. Rules that were never tried are absent. */
export const masterySchema = z.object({
	version: z._default(z.literal(VERSION), VERSION),
	rules: z._default(z.record(z.string(), ruleRecordSchema), {})
});

export type Mastery = z.infer<typeof masterySchema>;
type RuleRecord = z.infer<typeof ruleRecordSchema>;

/** Nothing was tried yet. */
export const NO_MASTERY: Mastery = { version: VERSION, rules: {} };

/** One answer to an exercise. */
export interface Try {
	readonly rule: string;
	/** What tells the exercise's body from others: its seed, written out. */
	readonly body: string;
	/** The learner's own day, as 2026-11-25. */
	readonly day: string;
	readonly answer: Verdict['answer'];
	/** Whether it is the first answer to this exercise that was right or wrong. */
	readonly first: boolean;
	/** Whether help was open: the answer then says nothing of what was known. */
	readonly helped: boolean;
}

/** How likely a rule is known after one more answer: Bayes' rule, and then the chance of having learnt it at this try. */
export const knownAfter = (known: number, right: boolean): number => {
	const { learnt, luck, slip } = KNOWLEDGE;
	const ifKnown = known * (right ? 1 - slip : slip);
	const ifNot = (1 - known) * (right ? luck : 1 - luck);
	const then = ifKnown / (ifKnown + ifNot);
	return then + (1 - then) * learnt;
};

const counted = (before: RuleRecord | undefined, { body, day, answer }: Try): RuleRecord => {
	const right = answer === 'right';
	const known = knownAfter(before?.known ?? KNOWLEDGE.known, right);
	const days = before?.rightDays ?? [];
	const isNewDay = right && days.length < DAYS_TO_BE_SECURE && !days.includes(day);
	return {
		known,
		tries: known >= MASTERED ? 0 : (before?.tries ?? 0) + 1,
		bodies: [...(before?.bodies ?? []), body].slice(-BODIES_REMEMBERED),
		rightDays: isNewDay ? [...days, day] : days,
		review: reviewed(before?.review, day, right)
	};
};

/**
 * Mastery after one more answer. Only a first, unaided answer that is right or wrong counts, and only once for each
 * body: a second try knows what was said of the first, and a body met again is remembered.
 */
export const afterTry = (mastery: Mastery, tried: Try): Mastery => {
	const before = mastery.rules[tried.rule];
	const isJudged = tried.answer === 'right' || tried.answer === 'wrong';
	if (!isJudged || !tried.first || tried.helped || before?.bodies.includes(tried.body)) return mastery;
	return { ...mastery, rules: { ...mastery.rules, [tried.rule]: counted(before, tried) } };
};

/** Whether a worked example should come before the next try: trying alone has not helped for long. */
export const wantsExample = (mastery: Mastery, rule: string): boolean =>
	(mastery.rules[rule]?.tries ?? 0) >= TRIES_BEFORE_EXAMPLE;

/** Mastery after a rule's worked example was seen: its tries are counted anew. */
export const afterExample = (mastery: Mastery, rule: string): Mastery => {
	const before = mastery.rules[rule];
	return before ? { ...mastery, rules: { ...mastery.rules, [rule]: { ...before, tries: 0 } } } : mastery;
};

/** How a rule stands with a learner, in the words that are shown. */
export type Standing = 'new' | 'begun' | 'coming' | 'secure' | 'due';

/** How a rule stands on a day. It is begun while it was never right at once, and secure once it is mastered and was right on different bodies and days. */
export const standingOf = (mastery: Mastery, rule: string, day: string): Standing => {
	const record = mastery.rules[rule];
	if (!record) return 'new';
	if (record.rightDays.length === 0) return 'begun';
	if (record.known < MASTERED || record.rightDays.length < DAYS_TO_BE_SECURE) return 'coming';
	return isDue(record.review, day) ? 'due' : 'secure';
};

/** How likely a rule is known, 0 to 1. */
export const knownOf = (mastery: Mastery, rule: string): number =>
	mastery.rules[rule]?.known ?? KNOWLEDGE.known;

/** Whether a rule that was tried before is to be tried again on a day. */
export const isRuleDue = (mastery: Mastery, rule: string, day: string): boolean => {
	const record = mastery.rules[rule];
	return record !== undefined && isDue(record.review, day);
};
