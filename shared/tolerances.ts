import { mm, radians, type Mm, type Radians } from './units.ts';

/**
 * Every tolerance of the program, each with a name, a unit and a reason.
 */

const degrees = (value: number): Radians => radians((value * Math.PI) / 180);

/** How far a placed point may lie from its true place. Common practice, no source: 1 mm on paper, and as much again for the screen. */
export const POINT_TOLERANCE: Mm = mm(2);

/** Greatest distance allowed between a drawn curve and its true course: a hand-set curve holds half again of a point's tolerance. */
export const CURVE_TOLERANCE: Mm = mm(3);

/** How much longer or shorter than the true curve a drawn one may be: two such seams still ease together when sewn. */
const LENGTH_TOLERANCE: Mm = mm(3);

/**
 * How far a worked number may lie from the rule's, for each length that had to be read: it is read and written to a
 * millimetre, or a sixteenth of an inch, and so rounded twice by half of that.
 */
export const NUMBER_TOLERANCE: Mm = mm(1);

/** The lengths that a check allows. */
export interface Tolerances {
	readonly point: Mm;
	readonly curve: Mm;
	readonly length: Mm;
	/** By how much these are wider than what is asked for, or narrower, as the error of what was measured may have moved it. */
	readonly wider?: Mm;
}

/** The same, wider by a length; narrower where it is less than nothing. A line may be longer by it at both ends. */
export const widened = ({ point, curve, length }: Tolerances, by: Mm): Tolerances => ({
	point: mm(point + by),
	curve: mm(curve + by),
	length: mm(length + 2 * by),
	wider: by
});

export const LEVELS = ['strict', 'normal', 'beginner'] as const;
/** How strictly a teacher asks for work to be checked. */
export type Level = (typeof LEVELS)[number];

const scaled = (share: number): Tolerances => ({
	point: mm(POINT_TOLERANCE * share),
	curve: mm(CURVE_TOLERANCE * share),
	length: mm(LENGTH_TOLERANCE * share)
});

/** Strict is what paper and a sharp pencil can hold (1 mm for a point), beginner what an unsteady hand can (4 mm). */
export const TOLERANCES: Readonly<Record<Level, Tolerances>> = {
	strict: scaled(0.5),
	normal: scaled(1),
	beginner: scaled(2)
};

/** Direction of a line's end where it must be square to a centre line or fold: more shows as a point or a notch when the fold is opened. */
export const SQUARE_TOLERANCE: Radians = degrees(2);

/** Direction of any other end of a line: a 1 mm slip in a handle 12 mm long turns it by about this much. */
export const TANGENT_TOLERANCE: Radians = degrees(5);

/** How far a curve's handle may lie beside its way, as a share of a point's tolerance: 1 mm, which turns a short one by more than its direction may be off. */
export const HANDLE_SHARE = 0.5;

/** Below this a difference is not spoken of: it is less than the width of a pencil line. */
export const UNSPOKEN: Mm = mm(0.5);

/** Two places nearer than this are one place: floating-point noise over a metre stays a thousand times below it. */
export const SAME_PLACE: Mm = mm(1e-6);

/** Lengths below this are left out of worked directions: they would be printed as nothing. */
export const UNWRITTEN: Mm = mm(0.05);

/** How far a line drawn at a constant distance from a curve may stray from it: a twentieth of the 0.1 mm asked of a cutting line. */
export const PARALLEL_ERROR: Mm = mm(0.005);

/** Two curves that meet at less than this run on as one: over the few millimetres of a chord nobody can see or cut such a corner. */
export const SMOOTH_JOIN: Radians = degrees(1);
