import { mm, type Mm } from '#shared/units.ts';
import { integral } from './quadrature.ts';
import { at, between, directionOf, directionTo, distance, type Direction, type SheetPoint } from './point.ts';

/** One piece of a drawn line: straight, or a cubic Bezier with a handle for each end. */
export type Segment = StraightSegment | CubicSegment;

/** A straight piece. */
export interface StraightSegment {
	readonly kind: 'straight';
	readonly from: SheetPoint;
	readonly to: SheetPoint;
}

/** A curved piece: it leaves `from` toward `leaving` and arrives at `to` out of `arriving`. */
export interface CubicSegment {
	readonly kind: 'cubic';
	readonly from: SheetPoint;
	readonly leaving: SheetPoint;
	readonly arriving: SheetPoint;
	readonly to: SheetPoint;
}

/** A straight piece between two places. */
export const straight = (from: SheetPoint, to: SheetPoint): StraightSegment => ({
	kind: 'straight',
	from,
	to
});

/** A curved piece with its two handles. */
export const cubic = (
	from: SheetPoint,
	leaving: SheetPoint,
	arriving: SheetPoint,
	to: SheetPoint
): CubicSegment => ({ kind: 'cubic', from, leaving, arriving, to });

/** The places that a segment is given by: its ends, and the handles of a curve. */
export const segmentPlaces = (segment: Segment): readonly SheetPoint[] =>
	segment.kind === 'straight'
		? [segment.from, segment.to]
		: [segment.from, segment.leaving, segment.arriving, segment.to];

/** The place at parameter t, 0 at the start and 1 at the end. */
export const segmentPoint = (segment: Segment, t: number): SheetPoint => {
	if (segment.kind === 'straight') return between(segment.from, segment.to, t);
	const { from, leaving, arriving, to } = segment;
	const s = 1 - t;
	const [a, b, c, d] = [s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t];
	return at(
		a * from.x + b * leaving.x + c * arriving.x + d * to.x,
		a * from.y + b * leaving.y + c * arriving.y + d * to.y
	);
};

/** How fast a cubic runs at t, in millimetres per unit of t, along x and y. */
const velocity = ({ from, leaving, arriving, to }: CubicSegment, t: number): readonly [number, number] => {
	const s = 1 - t;
	const [a, b, c] = [3 * s * s, 6 * s * t, 3 * t * t];
	return [
		a * (leaving.x - from.x) + b * (arriving.x - leaving.x) + c * (to.x - arriving.x),
		a * (leaving.y - from.y) + b * (arriving.y - leaving.y) + c * (to.y - arriving.y)
	];
};

/** Error allowed in a computed length: ten thousand times below a hundredth of a millimetre. */
const LENGTH_ERROR: Mm = mm(1e-6);

/** The speed of a cubic as a function of t. A length asks for it dozens of times: no pair is made, and a square root does. */
const speedOf = ({ from, leaving, arriving, to }: CubicSegment): ((t: number) => number) => {
	const [x1, x2, x3] = [3 * (leaving.x - from.x), 6 * (arriving.x - leaving.x), 3 * (to.x - arriving.x)];
	const [y1, y2, y3] = [3 * (leaving.y - from.y), 6 * (arriving.y - leaving.y), 3 * (to.y - arriving.y)];
	return (t) => {
		const s = 1 - t;
		const [a, b, c] = [s * s, s * t, t * t];
		const x = a * x1 + b * x2 + c * x3;
		const y = a * y1 + b * y2 + c * y3;
		return Math.sqrt(x * x + y * y);
	};
};

/** Whole lengths of cubics, each worked once: a line is measured where it is drafted, sewn, notched and cut. */
const LENGTHS = new WeakMap<CubicSegment, Mm>();

/** The length of a segment, or of its part up to parameter `upTo`. */
export const segmentLength = (segment: Segment, upTo = 1): Mm => {
	if (segment.kind === 'straight') return mm(distance(segment.from, segment.to) * upTo);
	if (upTo !== 1) return mm(integral(speedOf(segment), 0, upTo, LENGTH_ERROR));
	const known = LENGTHS.get(segment);
	if (known !== undefined) return known;
	const length = mm(integral(speedOf(segment), 0, 1, LENGTH_ERROR));
	LENGTHS.set(segment, length);
	return length;
};

/** Difference of two parameters that are one: a billionth of a millimetre in a segment of a metre. */
const SAME_PARAMETER = 1e-12;
/** Rounds that always do: halving alone needs forty, and Newton's method four. */
const MOST_ROUNDS = 60;

/**
 * The parameter at which a segment has run `length` from its start, 0 to 1: by Newton's method, since the speed is how a
 * length grows, and by halving where that would leave the part in which the place must lie, as it does at a cusp.
 */
export const parameterAtLength = (segment: Segment, length: Mm): number => {
	const whole = segmentLength(segment);
	if (whole === 0) return 0;
	if (segment.kind === 'straight') return length / whole;
	if (length >= whole) return 1;
	if (!(length > 0)) return 0;
	const speed = speedOf(segment);
	let [low, high, t] = [0, 1, length / whole];
	for (let round = 0; round < MOST_ROUNDS; round++) {
		const over = integral(speed, 0, t, LENGTH_ERROR) - length;
		if (over > 0) high = t;
		else low = t;
		const ahead = t - over / speed(t);
		const next = ahead >= low && ahead <= high ? ahead : (low + high) / 2;
		if (Math.abs(next - t) <= SAME_PARAMETER) return next;
		t = next;
	}
	return t;
};

/** The direction in which a segment runs at t; where a handle lies on its own end, the next handle decides. */
export const segmentDirection = (segment: Segment, t: number): Direction | undefined => {
	const { from, to } = segment;
	if (segment.kind === 'straight') return directionTo(from, to);
	const { leaving, arriving } = segment;
	if (t <= 0) return directionTo(from, leaving) ?? directionTo(from, arriving) ?? directionTo(from, to);
	if (t >= 1) return directionTo(arriving, to) ?? directionTo(leaving, to) ?? directionTo(from, to);
	return directionOf(...velocity(segment, t));
};

/** The same segment run from its end to its start. */
export const segmentReversed = (segment: Segment): Segment =>
	segment.kind === 'straight'
		? straight(segment.to, segment.from)
		: cubic(segment.to, segment.arriving, segment.leaving, segment.from);

/** Where one coordinate of a cubic, given by its ends and handles, stops growing or shrinking. */
export const turningParameters = (p0: number, p1: number, p2: number, p3: number): number[] => {
	const [a, b, c] = [-p0 + 3 * p1 - 3 * p2 + p3, 2 * (p0 - 2 * p1 + p2), p1 - p0];
	if (Math.abs(a) < 1e-12) return Math.abs(b) < 1e-12 ? [] : [-c / b];
	const root = Math.sqrt(b * b - 4 * a * c);
	return Number.isNaN(root) ? [] : [(-b + root) / (2 * a), (-b - root) / (2 * a)];
};

/** Places that reach the furthest left, right, up and down of a segment (with its ends). */
export const segmentExtremes = (segment: Segment): readonly SheetPoint[] => {
	const { from, to } = segment;
	if (segment.kind === 'straight') return [from, to];
	const { leaving, arriving } = segment;
	const turns = [
		...turningParameters(from.x, leaving.x, arriving.x, to.x),
		...turningParameters(from.y, leaving.y, arriving.y, to.y)
	].filter((t) => t > 0 && t < 1);
	return [from, ...turns.map((t) => segmentPoint(segment, t)), to];
};
