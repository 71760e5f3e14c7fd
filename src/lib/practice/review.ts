import { fsrs, Rating, S_MIN } from 'ts-fsrs';
import { z } from '#shared/shape.ts';
import { REVIEW } from './constants.ts';
import { dayNumber, dayOf, daySchema } from './day.ts';

/**
 * Spaced review by ts-fsrs. Its memory model and its waits are used, not its cards: those keep moments in
 * time, and a rule comes up again on a day.
 */

/** When a rule was last tried and comes up again, and the memory model's two numbers for it. */
export const reviewSchema = z.object({
	/** Days after which the rule is still known with REVIEW's chance. */
	stability: z.number().check(z.minimum(S_MIN)),
	/** 1 to 10. */
	difficulty: z.number().check(z.minimum(1), z.maximum(10)),
	last: daySchema,
	due: daySchema
});
export type Review = z.infer<typeof reviewSchema>;

const model = fsrs(REVIEW);

/** The review of a rule after an answer. Only the first of a day counts: more on one day stretch the waits without cause. */
export const reviewed = (before: Review | undefined, day: string, right: boolean): Review => {
	const elapsed = before ? dayNumber(day) - dayNumber(before.last) : 0;
	// A clock that was set back would count days below nothing.
	if (before && elapsed <= 0) return before;
	const { stability, difficulty } = model.next_state(
		before ?? null,
		elapsed,
		right ? Rating.Good : Rating.Again
	);
	const wait = model.next_interval(stability, elapsed);
	return { stability, difficulty, last: day, due: dayOf(dayNumber(day) + wait) };
};

/** Whether a rule comes up again on this day or came up before. Days written so sort as they follow each other. */
export const isDue = ({ due }: Review, day: string): boolean => due <= day;
