import type { Policy } from '#shared/policy.ts';
import type { Verdict } from '#shared/verdict.ts';

/** One answer to a step, with what went before it. */
export interface Attempt {
	readonly verdict: Verdict;
	/** Right only from the learner's own earlier points. */
	readonly followThrough: boolean;
	/** Wrong tries at this step before this one. */
	readonly wrongBefore: number;
	/** Rungs of help that were open, 0 to 3. */
	readonly help: number;
}

const FOLLOW_THROUGH_SHARE: Readonly<Record<Policy['followThrough'], number>> = {
	full: 1,
	half: 0.5,
	none: 0
};

/** Marks are kept to hundredths of a step. Every mark goes through here, so that two screens never round one differently. */
export const roundMark = (mark: number): number => Math.round(mark * 100) / 100;

/** The mark of one attempt, 0 to 1. Only a wrong answer costs; an unfinished, invalid or unjudged one, or one that is to be measured again, earns nothing and takes nothing. */
export const attemptMark = (
	{ verdict, followThrough, wrongBefore, help }: Attempt,
	{ attempts, wrongCost, hintCost, followThrough: share }: Policy
): number => {
	if (verdict.answer !== 'right' || (attempts !== null && wrongBefore >= attempts)) return 0;
	const worth = followThrough ? FOLLOW_THROUGH_SHARE[share] : 1;
	return roundMark(Math.max(0, worth - wrongCost * wrongBefore - hintCost * help));
};
