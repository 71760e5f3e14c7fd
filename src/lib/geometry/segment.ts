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

const speed = (segment: CubicSegment, t: number): number => Math.hypot(...velocity(segment, t));

/** The length of a segment, or of its part up to parameter `upTo`. */
export const segmentLength = (segment: Segment, upTo = 1): Mm =>
	segment.kind === 'straight'
		? mm(distance(segment.from, segment.to) * upTo)
		: mm(integral((t) => speed(segment, t), 0, upTo, LENGTH_ERROR));

/** The parameter at which a segment has run `length` from its start, by bisection (a length always grows with t). */
export const parameterAtLength = (segment: Segment, length: Mm): number => {
	const whole = segmentLength(segment);
	if (whole === 0) return 0;
	if (segment.kind === 'straight') return length / whole;
	let [low, high] = [0, 1];
	while (high - low > 1e-12) {
		const middle = (low + high) / 2;
		if (segmentLength(segment, middle) < length) low = middle;
		else high = middle;
	}
	return (low + high) / 2;
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
