import { entrySchema } from './entry.ts';
import { placeSchema, placementSchema, unitSchema, writingSchema } from './placement.ts';
import { MOST_ATTEMPTS, MOST_EXERCISES } from './hand-in-limits.ts';
import { z } from './shape.ts';

/**
 * What a learner hands in, as it goes from the browser to the class server: every change of a step's entry, and
 * every answer to an exercise, is an event of its own, named by the browser, the page in it and its number there. What was sent twice is so known to be the same.
 */

const name = z.string().check(z.minLength(1), z.maxLength(100));
/** A misstep, or several at once. */
const note = z.string().check(z.minLength(1), z.maxLength(500));
/** Eight random bytes in small hexadecimal letters. */
const random = z.string().check(z.regex(/^[0-9a-f]{16}$/));

/** Which event it is, for ever: the browser, the page that was open in it, and its number on that page. */
export const keySchema = z.strictObject({
	device: random,
	tab: random,
	sequence: z.int().check(z.minimum(1), z.maximum(0xffff_ffff))
});

/** A step's entry without what it has cost: tries are counted by who marks. */
const handedEntry = z.strictObject({
	placement: entrySchema.shape.placement,
	checked: z.boolean(),
	kept: z.boolean(),
	help: z.int().check(z.minimum(0), z.maximum(3)),
	shown: z.boolean()
});

/** Where it belongs: an assignment, and which of the learner's attempts at it; the first where none is said. */
const where = {
	assignment: name,
	attempt: z.optional(z.int().check(z.minimum(1), z.maximum(MOST_ATTEMPTS)))
};

/** What was done at a step: its entry as it is since then. */
const stepDone = z.strictObject({ ...where, method: name, step: name, entry: handedEntry });

const kind = <K extends string, S extends z.core.$ZodType>(of: K, answer: S) =>
	z.strictObject({ kind: z.literal(of), answer });

/** An answer to an exercise, as its kind is answered; practice/exercises/ says what of it is right. */
const givenAnswer = z.discriminatedUnion('kind', [
	kind('find-start', z.strictObject({ point: name })),
	kind('next-point', placementSchema),
	kind('find-wrong', z.strictObject({ point: name, choice: z.optional(note) })),
	kind('work-number', z.strictObject({ typed: writingSchema, unit: unitSchema })),
	kind(
		'true-seams',
		z.strictObject({
			longer: z.enum(['first', 'second']),
			by: writingSchema,
			unit: unitSchema,
			moved: z.optional(placeSchema)
		})
	)
]);

/** What was done at an exercise of a practice that was set: it was answered, or help was opened. */
const exerciseDone = z.strictObject({
	...where,
	/** Counted from 1. */
	exercise: z.int().check(z.minimum(1), z.maximum(MOST_EXERCISES)),
	given: z.optional(givenAnswer),
	/** Rungs of help opened, 0 to 3. */
	help: z.int().check(z.minimum(0), z.maximum(3))
});

export const doneSchema = z.union([stepDone, exerciseDone]);

export const eventSchema = z.strictObject({ key: keySchema, done: doneSchema });

export type EventKey = z.infer<typeof keySchema>;
export type HandedEntry = z.infer<typeof handedEntry>;
export type StepDone = z.infer<typeof stepDone>;
export type ExerciseDone = z.infer<typeof exerciseDone>;
export type Given = z.infer<typeof givenAnswer>;
export type Done = z.infer<typeof doneSchema>;
export type HandedEvent = z.infer<typeof eventSchema>;

/** What became of an event that was handed in: kept for good as this receipt says, or not, and why. */
export type Answered =
	| {
			/** Counts the events of this learner's assignment from 1. */
			readonly number: number;
			/** When the server had it, by its own clock: milliseconds since 1970. */
			readonly at: number;
	  }
	| { readonly refused: NotTaken };

/** *conflict*: another event has its key, so it was kept aside; *unreadable*: it is none; *notThere*: the learner has no such assignment open; *full*: more than anybody draws. */
export type NotTaken = 'conflict' | 'unreadable' | 'notThere' | 'full';
