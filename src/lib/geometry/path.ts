import { SAME_PLACE } from '#shared/tolerances.ts';
import { mm, type Mm } from '#shared/units.ts';
import { distance, type Direction, type SheetPoint } from './point.ts';
import {
	cubic,
	parameterAtLength,
	segmentDirection,
	segmentExtremes,
	segmentLength,
	segmentPoint,
	segmentReversed,
	straight,
	type Segment
} from './segment.ts';

/** A drawn line: one or more segments, each starting where the one before ends. Never empty. */
export type Path = readonly [Segment, ...Segment[]];

/** A rectangle on the sheet that holds something. */
export interface Bounds {
	readonly left: Mm;
	readonly top: Mm;
	readonly right: Mm;
	readonly bottom: Mm;
}

const lastOf = (path: Path): Segment => path.at(-1) ?? path[0];

/** The straight line through these places in turn. */
export const polyline = (first: SheetPoint, second: SheetPoint, ...rest: readonly SheetPoint[]): Path => {
	const corners = [second, ...rest];
	return [straight(first, second), ...rest.map((to, i) => straight(corners[i] ?? second, to))];
};

/** Where a path starts. */
export const pathStart = (path: Path): SheetPoint => path[0].from;

/** Where a path ends. */
export const pathEnd = (path: Path): SheetPoint => lastOf(path).to;

/** The direction in which a path leaves its start; undefined for a path of no length. */
export const startDirection = (path: Path): Direction | undefined => segmentDirection(path[0], 0);

/** The direction in which a path arrives at its end; undefined for a path of no length. */
export const endDirection = (path: Path): Direction | undefined => segmentDirection(lastOf(path), 1);

/** The length of a path. */
export const pathLength = (path: Path): Mm =>
	mm(path.reduce((sum, segment) => sum + segmentLength(segment), 0));

/** The same path run from its end to its start. */
export const pathReversed = (path: Path): Path => {
	const [first, ...rest] = [...path].reverse().map(segmentReversed);
	return [first ?? path[0], ...rest];
};

/**
 * The place a given length along a path from its start, or undefined where the path is not so long.
 * The last digit of a sum of lengths is noise, so a path's own whole length always reaches its end.
 */
export const pointAtLength = (path: Path, length: Mm): SheetPoint | undefined => {
	if (length < 0) return length < -SAME_PLACE ? undefined : pathStart(path);
	let left = length;
	for (const segment of path) {
		const whole = segmentLength(segment);
		if (left <= whole) return segmentPoint(segment, parameterAtLength(segment, left));
		left = mm(left - whole);
	}
	return left > SAME_PLACE ? undefined : pathEnd(path);
};

/** The same path with every place of it put elsewhere; straight stays straight. */
export const pathMapped = (path: Path, put: (place: SheetPoint) => SheetPoint): Path => {
	const [first, ...rest] = path.map((segment): Segment =>
		segment.kind === 'straight'
			? straight(put(segment.from), put(segment.to))
			: cubic(put(segment.from), put(segment.leaving), put(segment.arriving), put(segment.to))
	);
	return [first ?? path[0], ...rest];
};

/**
 * Places along a path; on curved parts no further apart than `step`, while straight parts give their
 * ends. A path so long that there would be more than `most` of them is sampled more coarsely.
 */
export const pathSamples = (path: Path, step: Mm, most = Infinity): readonly SheetPoint[] => {
	const samples = [pathStart(path)];
	const whole = path.reduce(
		(sum, segment) => sum + (segment.kind === 'cubic' ? greatestSpeed(segment) : 0),
		0
	);
	const apart = Math.max(step, whole / most);
	for (const segment of path) {
		const parts = segment.kind === 'straight' ? 1 : Math.max(1, Math.ceil(greatestSpeed(segment) / apart));
		for (let i = 1; i <= parts; i++) samples.push(segmentPoint(segment, i / parts));
	}
	return samples;
};

/** A cubic never runs faster, in millimetres per unit of t, than three times the longest side of its four places. */
const greatestSpeed = (segment: Extract<Segment, { kind: 'cubic' }>): Mm => {
	const { from, leaving, arriving, to } = segment;
	return mm(3 * Math.max(distance(from, leaving), distance(leaving, arriving), distance(arriving, to)));
};

/** The rectangle that just holds these paths and places. Throws for nothing at all. */
export const boundsOf = (paths: readonly Path[], places: readonly SheetPoint[] = []): Bounds => {
	const all = [...places, ...paths.flatMap((path) => path.flatMap(segmentExtremes))];
	if (all.length === 0) throw new Error('nothing has no bounds');
	const [xs, ys] = [all.map((p) => p.x), all.map((p) => p.y)];
	return {
		left: mm(Math.min(...xs)),
		top: mm(Math.min(...ys)),
		right: mm(Math.max(...xs)),
		bottom: mm(Math.max(...ys))
	};
};

/**
 * Lines end to end as one, each turned round where it must be; undefined for none, or where two do not
 * meet within SAME_PLACE.
 */
export const chained = (lines: readonly Path[]): Path | undefined => {
	const [first, second, ...rest] = lines;
	if (!first || !second) return first;
	const toSecond = (end: SheetPoint): number =>
		Math.min(distance(end, pathStart(second)), distance(end, pathEnd(second)));
	let whole = toSecond(pathEnd(first)) <= toSecond(pathStart(first)) ? first : pathReversed(first);
	for (const path of [second, ...rest]) {
		const end = pathEnd(whole);
		const next = distance(end, pathStart(path)) > distance(end, pathEnd(path)) ? pathReversed(path) : path;
		if (distance(end, pathStart(next)) > SAME_PLACE) return undefined;
		whole = [whole[0], ...whole.slice(1), ...next];
	}
	return whole;
};

/** How near to half of the last digit `toFixed`, which is exact and slow, is asked which way to round. */
const NEAR_HALF = 1e-4;

const written = (value: number, digits: number): string => {
	const parts = value * 10 ** digits;
	const whole = Math.round(parts);
	const isNearHalf = Math.abs(Math.abs(parts - whole) - 0.5) < NEAR_HALF;
	const rounded = isNearHalf ? Number(value.toFixed(digits)) : whole / 10 ** digits;
	return String(rounded === 0 ? 0 : rounded);
};

/** Writes a path as SVG path data in millimetres, with `digits` decimals; `closed` adds the closing Z. */
export const pathData = (path: Path, digits = 3, closed = false): string => {
	const write = (...points: SheetPoint[]): string =>
		points.map((p) => `${written(p.x, digits)} ${written(p.y, digits)}`).join(' ');
	const pieces = path.map((segment) =>
		segment.kind === 'straight'
			? `L${write(segment.to)}`
			: `C${write(segment.leaving, segment.arriving, segment.to)}`
	);
	return `M${write(pathStart(path))}${pieces.join('')}${closed ? 'Z' : ''}`;
};
