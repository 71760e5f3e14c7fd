import { entrySchema } from './entry.ts';
import { z } from './shape.ts';

/**
 * What a learner hands in, as it goes from the browser to the class server: every change of a step's entry is an event of
 * its own, named by the browser, the page in it and its number there. What was sent twice is so known to be the same.
 */

const name = z.string().check(z.minLength(1), z.maxLength(100));
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

/** What was done: the step's entry as it is since then. */
export const doneSchema = z.strictObject({ assignment: name, method: name, step: name, entry: handedEntry });

export const eventSchema = z.strictObject({ key: keySchema, done: doneSchema });

export type EventKey = z.infer<typeof keySchema>;
export type HandedEntry = z.infer<typeof handedEntry>;
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
