import { keptFor } from './kept.ts';
import { z } from './shape.ts';

/**
 * What a learner put down for a step. Places are [across, down] in millimetres on the sheet. What
 * was typed is kept as it was written, beside the place it gave.
 */

/** Nothing is drafted further than this from the corner; a place beyond it was not meant. */
const SHEET_LIMIT_MM = 5000;

const coordinate = z.number().check(z.minimum(-SHEET_LIMIT_MM), z.maximum(SHEET_LIMIT_MM));
const place = z.tuple([coordinate, coordinate]);
const unit = z.enum(['mm', 'cm', 'in']);
const writing = z.string().check(z.maxLength(100));

/**
 * How far a place that was measured may lie from where it is said to lie, in mm: the radius of the circle about it that holds
 * the true place in 95 of 100 cases; of a line, of each place on it. A mark that was put down on the sheet itself has none.
 */
const error = z.optional(z.number().check(z.minimum(0), z.maximum(SHEET_LIMIT_MM)));

const typed = z.discriminatedUnion('form', [
	z.strictObject({
		form: z.literal('distance'),
		sum: writing,
		from: z.string(),
		go: z.enum(['up', 'down', 'across', 'in']),
		unit
	}),
	z.strictObject({ form: z.literal('coordinates'), across: writing, down: writing, unit })
]);

const segment = z.union([
	z.strictObject({ from: place, leaving: place, arriving: place, to: place }),
	z.strictObject({ from: place, to: place })
]);

/** A placement: one point, or one line of straight and curved pieces. */
export const placementSchema = z.discriminatedUnion('kind', [
	z.strictObject({ kind: z.literal('point'), at: place, typed: z.optional(typed), error }),
	z.strictObject({
		kind: z.literal('line'),
		segments: z.array(segment).check(z.minLength(1), z.maxLength(20)),
		error
	})
]);

export type Placement = z.infer<typeof placementSchema>;

const read = keptFor((placement: object) => placementSchema.safeParse(placement));
/** A placement as it is taken up, or what is wrong with it. None is changed once it was put down: it is looked at once, not by the judge, the desk and what keeps it each. */
export const readPlacement = (placement: unknown): ReturnType<typeof read> =>
	typeof placement === 'object' && placement ? read(placement) : placementSchema.safeParse(placement);

export type LinePlacement = Extract<Placement, { kind: 'line' }>;
/** A place as it is stored: [across, down] in millimetres. */
export type Place = z.infer<typeof place>;
/** What a learner typed, as written. */
export type Typed = z.infer<typeof typed>;

/** Parts of it that answers to exercises have too. */
export { place as placeSchema, unit as unitSchema, writing as writingSchema };
