import { at, distance, type SheetPoint } from '#geometry/point.ts';
import { lengthOf, rowOf, spreadOf, unknownsOf, type Held, type Pair } from './net.ts';
import { greatestOf, inverted, solved } from './normal.ts';

/** Where points lie by the distances between them: least squares by Levenberg and Marquardt's way, from places that are nearly right. */

/** A distance that was read, in mm. */
export interface Reading extends Pair {
	readonly length: number;
	/** How many times it was read, and is the mean of: once, if nothing is said. It counts for as much. */
	readonly times?: number;
}

/** Where the points lie, and how well the readings agree about it. */
export interface Solution {
	readonly places: readonly SheetPoint[];
	readonly held: Held;
	/** The sum of the squares of what the readings miss by, in squares of a reading's error. */
	readonly misses: number;
	/** How many more readings there are than are needed. */
	readonly spare: number;
	/** The inverse of the normal equations, in squares of a reading's error. */
	readonly inverse: Float64Array;
}

const MOST_TURNS = 60;
/** A step shorter than this, in mm, changes nothing that a tape could show. */
const STILL = 1e-4;
/** How strongly steps are held back at first, and how that changes as they go well or badly. */
const [HELD_BACK, WELL, BADLY] = [1e-3, 0.2, 8] as const;

const missesAt = (places: readonly SheetPoint[], readings: readonly Reading[], error: number): number =>
	readings.reduce(
		(sum, each) => sum + (each.times ?? 1) * ((lengthOf(each, places) - each.length) / error) ** 2,
		0
	);

/** The normal equations about where the points lie now: their matrix, and what the readings miss by. */
const normalAt = (places: readonly SheetPoint[], readings: readonly Reading[], held: Held) => {
	const size = unknownsOf(places.length);
	const matrix = new Float64Array(size * size);
	const right = new Float64Array(size);
	for (const each of readings) {
		const { at: unknowns, by } = rowOf(each, places, held);
		const miss = each.length - lengthOf(each, places);
		for (const [i, row] of unknowns.entries()) {
			const share = (each.times ?? 1) * (by[i] ?? 0);
			right[row] = (right[row] ?? 0) + share * miss;
			for (const [j, column] of unknowns.entries())
				matrix[row * size + column] = (matrix[row * size + column] ?? 0) + share * (by[j] ?? 0);
		}
	}
	return { matrix, right, size };
};

/** The points after a step. */
const stepped = (places: readonly SheetPoint[], step: Float64Array, held: Held): readonly SheetPoint[] => {
	const [origin, axis] = [places[held.origin], places[held.axis]];
	let next = 0;
	return places.map((place, i) => {
		if (i === held.origin) return place;
		if (i !== held.axis) {
			const moved = at(place.x + (step[next] ?? 0), place.y + (step[next + 1] ?? 0));
			next += 2;
			return moved;
		}
		const far = origin && axis ? distance(origin, axis) : 0;
		const by = far === 0 || !origin ? 0 : (step.at(-1) ?? 0) / far;
		return origin ? at(place.x + by * (place.x - origin.x), place.y + by * (place.y - origin.y)) : place;
	});
};

/**
 * Where the points lie that these readings fit best, from places that are nearly right; undefined where the readings leave
 * something open.
 *
 * @param error how far a reading may be off, as a standard deviation in mm
 */
export const settled = (
	begun: readonly SheetPoint[],
	readings: readonly Reading[],
	held: Held,
	error: number
): Solution | undefined => {
	let places = begun;
	let misses = missesAt(places, readings, error);
	let back = HELD_BACK;
	for (let turn = 0; turn < MOST_TURNS; turn++) {
		const { matrix, right, size } = normalAt(places, readings, held);
		for (let i = 0; i < size; i++) matrix[i * size + i] = (matrix[i * size + i] ?? 0) + back;
		const step = solved(matrix, right, size);
		if (!step) return undefined;
		const tried = stepped(places, step, held);
		const now = missesAt(tried, readings, error);
		if (now <= misses) {
			places = tried;
			misses = now;
			back *= WELL;
		} else back *= BADLY;
		if (Math.max(...step.map(Math.abs)) < STILL || back > 1e12) break;
	}
	const { matrix, size } = normalAt(places, readings, held);
	const inverse = inverted(matrix, size);
	return inverse && { places, held, misses, spare: readings.length - size, inverse };
};

/**
 * How wide the circle is that holds a place in 95 of 100 cases, in standard deviations of the way on which it strays most, by how
 * much less it strays across that: Leenhouts 1985 ("On the computation of bi-normal radial error", Navigation 32), from memory.
 */
const circle = (share: number): number =>
	1.96079 + 0.004071 * share + 0.114276 * share ** 2 + 0.371625 * share ** 3;

/** The circle about each point that holds it in 95 of 100 cases, in readings' errors. */
export const circlesOf = ({ places, inverse, held }: Solution): readonly number[] =>
	places.map((_, point) => {
		const [xx, xy, yy] = spreadOf(point, inverse, places, held);
		const most = greatestOf(xx, xy, yy);
		const least = Math.max(0, xx + yy - most);
		return most > 0 ? Math.sqrt(most) * circle(Math.sqrt(least / most)) : 0;
	});

/** How much of a reading the others tell without it, from 0, where they tell nothing of it, to 1. */
export const spareOf = ({ places, inverse, held }: Solution, reading: Reading): number => {
	const { at: unknowns, by } = rowOf(reading, places, held);
	const size = unknownsOf(places.length);
	let told = 0;
	for (const [i, row] of unknowns.entries())
		for (const [j, column] of unknowns.entries())
			told += (by[i] ?? 0) * (by[j] ?? 0) * (inverse[row * size + column] ?? 0);
	return 1 - (reading.times ?? 1) * told;
};
