import { z } from 'zod';
import type { Mm, Radians } from './units.ts';

/**
 * What the checker says of a placement. Six answers are not "right", and only *wrong* costs
 * anything: *unfinished* (nothing placed yet), *not-valid* (an entry that cannot be read as a
 * placement), *wrong*, *cannot-tell* (it was measured, and its error leaves open whether it keeps the
 * tolerance: it is to be measured again), *excused* (the learner's own earlier marks leave the step no
 * place: those are to be put right first), and *our-fault* (the program could not judge it).
 */

const mm = z.custom<Mm>((value) => typeof value === 'number');
const angle = z.custom<Radians>((value) => typeof value === 'number');
const place = z.tuple([mm, mm]);
const message = z.object({ area: z.string(), key: z.string(), values: z.array(z.unknown()).readonly() });

/** One thing that was looked at; `within` says whether it kept the tolerance. `note` is stable and holds no numbers. */
export const findingSchema = z.discriminatedUnion('aspect', [
	z.object({
		aspect: z.enum(['place', 'start', 'end']),
		within: z.boolean(),
		note: z.string(),
		offBy: mm,
		across: mm,
		down: mm,
		tolerance: mm,
		/** Of a part that turns: how far it was turned and how far the rule turns it, clockwise as the sheet is seen. */
		turn: z.object({ drawn: angle, wanted: angle }).optional()
	}),
	z.object({
		aspect: z.literal('direction'),
		within: z.boolean(),
		note: z.string(),
		/** The point at which the direction was looked at, and whether the line leaves or reaches it. */
		point: z.string(),
		way: z.enum(['leaving', 'arriving']),
		/** Whether the rule asks for a square angle there, and not only for a course. */
		square: z.boolean(),
		/** The way that the rule asks for: one of the sheet's, square to a drawn line, or only the course. */
		wanted: z.enum(['up', 'down', 'across', 'in', 'square', 'course']).optional(),
		turned: angle,
		tolerance: angle
	}),
	z.object({
		aspect: z.literal('course'),
		within: z.boolean(),
		note: z.string(),
		away: mm,
		/** Where on the learner's line, and the way from the true line to it. */
		where: place,
		across: mm,
		down: mm,
		tolerance: mm
	}),
	z.object({
		aspect: z.enum(['length', 'reach']),
		within: z.boolean(),
		note: z.string(),
		/** Positive: too long. */
		by: mm,
		tolerance: mm
	})
]);

export const verdictSchema = z.discriminatedUnion('answer', [
	z.object({ answer: z.literal('right'), findings: z.array(findingSchema) }),
	z.object({ answer: z.literal('wrong'), findings: z.array(findingSchema) }),
	/** `findings` are those of the place as it was measured, `error` how far it may lie from there. */
	z.object({ answer: z.literal('cannot-tell'), findings: z.array(findingSchema), error: mm }),
	z.object({ answer: z.literal('unfinished') }),
	z.object({ answer: z.literal('not-valid'), because: message }),
	z.object({ answer: z.literal('excused'), because: message }),
	z.object({ answer: z.literal('our-fault'), because: message })
]);

export type Finding = z.infer<typeof findingSchema>;
/** The findings that can be of aspect A. */
export type FindingOf<A extends Finding['aspect']> = Finding extends infer F
	? F extends { readonly aspect: infer B }
		? A extends B
			? F
			: never
		: never
	: never;
export type Verdict = z.infer<typeof verdictSchema>;
