import { SMOOTH_JOIN } from '#shared/tolerances.ts';
import type { Mm } from '#shared/units.ts';
import type { Path } from './path.ts';
import { angleBetween, distance, type SheetPoint } from './point.ts';
import {
	segmentDirection,
	segmentPoint,
	turningParameters,
	type CubicSegment,
	type Segment
} from './segment.ts';

/** Halvings of a parameter step: finer than any drawing is written. */
const HALVINGS = 30;

/** Curves that run on smoothly into one another. The parameter goes from 0 to their count, one for each. */
type Curve = readonly [CubicSegment, ...CubicSegment[]];

/** Whether a segment goes on where another ends without a corner. */
const runsOn = (before: Segment, next: Segment): boolean => {
	const [from, to] = [segmentDirection(before, 1), segmentDirection(next, 0)];
	return from !== undefined && to !== undefined && angleBetween(from, to) < SMOOTH_JOIN;
};

/** A path's parts between corners: each straight line alone, and curves as far as they run on smoothly. */
const partsOf = (path: Path): readonly (Segment | Curve)[] => {
	const parts: (Segment | [CubicSegment, ...CubicSegment[]])[] = [];
	for (const segment of path) {
		const last = parts.at(-1);
		const before = Array.isArray(last) ? last.at(-1) : undefined;
		if (segment.kind === 'straight') parts.push(segment);
		else if (Array.isArray(last) && before && runsOn(before, segment)) last.push(segment);
		else parts.push([segment]);
	}
	return parts;
};

const placeAt = (curve: Curve, at: number): SheetPoint => {
	const i = Math.min(curve.length - 1, Math.floor(at));
	return segmentPoint(curve[i] ?? curve[0], at - i);
};

/** A segment's ends and handles measured from a place: how far along a direction each lies. */
const measuredAlong = (
	{ from, leaving, arriving, to }: CubicSegment,
	start: SheetPoint,
	dx: number,
	dy: number
): readonly [number, number, number, number] => {
	const along = ({ x, y }: SheetPoint): number => (x - start.x) * dx + (y - start.y) * dy;
	return [along(from), along(leaving), along(arriving), along(to)];
};

/**
 * How far a curve strays from the chord between two of its parameters: to either side of it, and past its ends. Both are
 * cubics of the parameter, so the furthest place is one where such a cubic turns, or where two segments meet.
 */
const strayed = (curve: Curve, from: number, to: number): number => {
	const [a, b] = [placeAt(curve, from), placeAt(curve, to)];
	const chord = distance(a, b);
	const [dx, dy] = chord === 0 ? [1, 0] : [(b.x - a.x) / chord, (b.y - a.y) / chord];
	let most = 0;
	for (let i = Math.floor(from); i < to; i++) {
		const segment = curve[i];
		if (!segment) break;
		const turns = [
			...turningParameters(...measuredAlong(segment, a, dx, dy)),
			...turningParameters(...measuredAlong(segment, a, -dy, dx))
		].filter((t) => t > 0 && t < 1);
		for (const t of [...turns, 1]) {
			if (i + t <= from || i + t >= to) continue;
			const { x, y } = segmentPoint(segment, t);
			const along = (x - a.x) * dx + (y - a.y) * dy;
			const aside = Math.abs((y - a.y) * dx - (x - a.x) * dy);
			most = Math.max(most, aside, -along, along - chord);
		}
	}
	return most;
};

/** The furthest parameter to which one chord may reach from `from`. */
const reach = (curve: Curve, from: number, within: Mm): number => {
	const end = curve.length;
	let good = from;
	// Whole segments first, so that a curve that comes back to where it was does not mislead the halving.
	for (let next = Math.floor(from) + 1; next <= end && strayed(curve, from, next) <= within; next++)
		good = next;
	if (good === end) return end;
	let bad = Math.floor(good) + 1;
	for (let i = 0; i < HALVINGS; i++) {
		const middle = (good + bad) / 2;
		if (strayed(curve, from, middle) <= within) good = middle;
		else bad = middle;
	}
	return good;
};

/** The fewest chords of a curve, each as long as it may be: where they begin and end. */
const curvePlaces = (curve: Curve, within: Mm): readonly SheetPoint[] => {
	const places: SheetPoint[] = [curve[0].from];
	for (let from = 0; from < curve.length;) {
		const next = reach(curve, from, within);
		from = next <= from ? curve.length : next;
		places.push(placeAt(curve, from));
	}
	return places;
};

/**
 * The parts of a path between its corners, each as a chain of straight chords that nowhere stray from it by more than `within`,
 * with as few points as chords with both ends on the curve can have. Corners and the ends of straight parts are kept exactly.
 */
export const flattenedParts = (path: Path, within: Mm): readonly (readonly SheetPoint[])[] =>
	partsOf(path).map((part) => ('kind' in part ? [part.from, part.to] : curvePlaces(part, within)));

/** A path as one chain of straight chords that nowhere stray from it by more than `within`, with as few points as can be. */
export const flattened = (path: Path, within: Mm): readonly SheetPoint[] => [
	path[0].from,
	...flattenedParts(path, within).flatMap((places) => places.slice(1))
];
