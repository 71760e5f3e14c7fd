import { at, directionTo, distance, type SheetPoint } from '#geometry/point.ts';
import { pinnedFrom, type Held } from './net.ts';
import type { Reading } from './solve.ts';

/** Nearly right places to begin with: one point after the other, each where the distances from two earlier ones cross. */

/** What a distance that does not fit may count at most, in mm: it may be misread, and must not settle on which side a point lies. */
const MOST_COUNTED = 60;
/** What the way to where a point should lie counts beside what the distances say. */
const SHOULD = 0.1;

/** Where two circles cross, or come nearest to crossing. */
const crossings = (a: SheetPoint, fromA: number, b: SheetPoint, fromB: number): readonly SheetPoint[] => {
	const way = directionTo(a, b);
	if (!way) return [];
	const apart = distance(a, b);
	const along = (apart * apart + fromA * fromA - fromB * fromB) / (2 * apart);
	const beside = Math.sqrt(Math.max(0, fromA * fromA - along * along));
	return [1, -1].map((side) =>
		at(a.x + along * way.dx - side * beside * way.dy, a.y + along * way.dy + side * beside * way.dx)
	);
};

/** The other end of a reading. */
const otherOf = ({ from, to }: Reading, point: number): number => (from === point ? to : from);

/** One point where others put it: of all crossings the one that its distances, and a little where it should lie, speak for. */
export const placed = (
	point: number,
	readings: readonly Reading[],
	should: readonly SheetPoint[],
	found: ReadonlyMap<number, SheetPoint>
): SheetPoint | undefined => {
	const own = readings.flatMap((each) => {
		if (each.from !== point && each.to !== point) return [];
		const place = found.get(otherOf(each, point));
		const right = should[otherOf(each, point)];
		return place && right ? [{ place, right, length: each.length }] : [];
	});
	const [here] = [should[point]];
	if (!here) return undefined;
	/** Where it should lie from where the others do. */
	const wanted = at(
		own.reduce((sum, { place, right }) => sum + place.x + here.x - right.x, 0) / own.length,
		own.reduce((sum, { place, right }) => sum + place.y + here.y - right.y, 0) / own.length
	);
	const cost = (place: SheetPoint): number =>
		SHOULD * Math.min(MOST_COUNTED, distance(place, wanted)) +
		own.reduce(
			(sum, each) => sum + Math.min(MOST_COUNTED, Math.abs(distance(place, each.place) - each.length)),
			0
		);
	const all = own.flatMap((a, i) =>
		own.slice(i + 1).flatMap((b) => crossings(a.place, a.length, b.place, b.length))
	);
	const [best] = all.map((place) => ({ place, cost: cost(place) })).toSorted((a, b) => a.cost - b.cost);
	return best?.place;
};

/** What is pinned down by some readings: which points, and about where they lie. */
export interface Begun {
	readonly points: readonly number[];
	readonly places: readonly SheetPoint[];
}

/**
 * The points that some readings pin down from the origin on, and about where each lies. `should` is where all would lie in a draft
 * without a fault.
 */
export const begunWith = (
	readings: readonly Reading[],
	should: readonly SheetPoint[],
	origin: number
): Begun => {
	const first = readings
		.filter(({ from, to }) => from === origin || to === origin)
		.map((each) => ({ each, points: pinnedFrom(each, readings, should.length) }))
		.toSorted((a, b) => b.points.length - a.points.length)[0];
	if (!first) return { points: [], places: [] };
	const second = otherOf(first.each, origin);
	const [begin, toward] = [should[origin], should[second]];
	const way = begin && toward && directionTo(begin, toward);
	if (!way) return { points: [], places: [] };
	const far = first.each.length;
	const found = new Map([
		[origin, begin],
		[second, at(begin.x + far * way.dx, begin.y + far * way.dy)]
	]);
	for (const point of first.points) {
		if (found.has(point)) continue;
		const place = placed(point, readings, should, found);
		if (place) found.set(point, place);
	}
	const points = [...found.keys()].toSorted((a, b) => a - b);
	return { points, places: points.flatMap((point) => found.get(point) ?? []) };
};

/** Readings by the numbers that their points have among those that are pinned down. */
export const among = (readings: readonly Reading[], points: readonly number[]): readonly Reading[] =>
	readings.flatMap((each) => {
		const [from, to] = [points.indexOf(each.from), points.indexOf(each.to)];
		return from < 0 || to < 0 ? [] : [{ ...each, from, to }];
	});

/** Which points hold the rest: the origin, and the one that is furthest from it. */
export const heldBy = (places: readonly SheetPoint[], origin: number): Held => {
	const begin = places[origin];
	const far = places.map((place) => (begin ? distance(begin, place) : 0));
	return { origin, axis: far.indexOf(Math.max(...far) as (typeof far)[number]) };
};
