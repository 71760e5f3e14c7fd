import { PARALLEL_ERROR } from '#shared/tolerances.ts';
import { mm, type Mm } from '#shared/units.ts';
import { segmentEndingAt } from './ends.ts';
import type { Path } from './path.ts';
import { alongness, distance, moved, squareTo, type Direction, type SheetPoint } from './point.ts';
import { lineMeeting } from './rays.ts';
import {
	cubic,
	segmentDirection,
	segmentPoint,
	straight,
	type CubicSegment,
	type Segment
} from './segment.ts';

/** Slowest run of a curve, in millimetres per unit of t, at which its turning can still be read. */
const STANDSTILL = 1e-6;
/** Where a curve stands still at an end, as it does where a handle lies on that end, its turning is read so far inside. */
const INSIDE = 1e-5;

/** How fast a cubic runs at t, in millimetres per unit of t, and how fast it turns from x toward y, in radians per unit of t. */
const runAt = (curve: CubicSegment, t: number): { readonly speed: number; readonly turning: number } => {
	const { from, leaving, arriving, to } = curve;
	const s = 1 - t;
	const [x1, y1] = [leaving.x - from.x, leaving.y - from.y];
	const [x2, y2] = [arriving.x - leaving.x, arriving.y - leaving.y];
	const [x3, y3] = [to.x - arriving.x, to.y - arriving.y];
	const vx = 3 * (s * s * x1 + 2 * s * t * x2 + t * t * x3);
	const vy = 3 * (s * s * y1 + 2 * s * t * y2 + t * t * y3);
	const speed = Math.hypot(vx, vy);
	if (speed <= STANDSTILL) {
		const atEnd = t < INSIDE || t > 1 - INSIDE;
		return { speed, turning: atEnd ? runAt(curve, t < 0.5 ? 2 * INSIDE : 1 - 2 * INSIDE).turning : 0 };
	}
	const ax = 6 * (s * (x2 - x1) + t * (x3 - x2));
	const ay = 6 * (s * (y2 - y1) + t * (y3 - y2));
	return { speed, turning: (vx * ay - vy * ax) / (speed * speed) };
};

/** A place of the line at a constant distance, and how it runs there. */
interface Course {
	readonly point: SheetPoint;
	/** The direction of the curve beside it. */
	readonly direction: Direction;
	/** In millimetres per unit of the curve's t; negative where the line runs back, inside a bend tighter than the distance. */
	readonly speed: number;
}

/** The line at distance `by` from a cubic, at t: its speed is the curve's, times 1 - by * curvature. */
const courseAt = (curve: CubicSegment, t: number, by: Mm): Course => {
	const direction = segmentDirection(curve, t) ?? segmentDirection(curve, 0) ?? { dx: 1, dy: 0 };
	const { speed, turning } = runAt(curve, t);
	return {
		point: moved(segmentPoint(curve, t), squareTo(direction), by),
		direction,
		speed: speed - by * turning
	};
};

/** The cubic that starts and ends as the line at a constant distance does, in place, direction and speed. */
const fitted = (start: Course, end: Course, span: number): CubicSegment =>
	cubic(
		start.point,
		moved(start.point, start.direction, mm((start.speed * span) / 3)),
		moved(end.point, end.direction, mm((-end.speed * span) / 3)),
		end.point
	);

/** Halvings allowed: a bend of a pencil lead's width needs six, and only a cusp, where there is no direction, more. */
const DEEPEST = 10;
/** Where a fitted cubic is compared with the true line. */
const COMPARED = [0.25, 0.5, 0.75];

const parallelOfCubic = (curve: CubicSegment, by: Mm): readonly Segment[] => {
	const pieces: Segment[] = [];
	const divide = (t: number, start: Course, span: number, end: Course, depth: number): void => {
		const piece = fitted(start, end, span);
		const strays = (share: number): boolean =>
			distance(segmentPoint(piece, share), courseAt(curve, t + share * span, by).point) > PARALLEL_ERROR;
		if (depth >= DEEPEST || !COMPARED.some(strays)) {
			pieces.push(piece);
			return;
		}
		const half = span / 2;
		const middle = courseAt(curve, t + half, by);
		divide(t, start, half, middle, depth + 1);
		divide(t + half, middle, half, end, depth + 1);
	};
	divide(0, courseAt(curve, 0, by), 1, courseAt(curve, 1, by), 0);
	return pieces;
};

/** Where a curve's bend is looked at, by t. */
const BENDS_AT = Array.from({ length: 33 }, (_, i) => i / 32);

/** Whether a path bends more tightly than a line at this distance can follow: the line would run back on itself there. */
export const runsBack = (path: Path, by: Mm): boolean =>
	path.some(
		(segment) => segment.kind === 'cubic' && BENDS_AT.some((t) => courseAt(segment, t, by).speed < 0)
	);

/** The line beside one segment; nothing for a segment of no length. */
const parallelOfSegment = (segment: Segment, by: Mm): readonly Segment[] => {
	const direction = segmentDirection(segment, 0);
	if (!direction) return [];
	if (segment.kind === 'cubic') return parallelOfCubic(segment, by);
	const side = squareTo(direction);
	return [straight(moved(segment.from, side, by), moved(segment.to, side, by))];
};

/**
 * The way from the end of one line to the start of the next round a corner of the path. On the outer side of
 * a turn of no more than a quarter both run on straight until they meet; otherwise they are joined by a straight piece.
 */
const roundCorner = (last: Segment, next: Segment, u: Direction, v: Direction, by: Mm): Segment[] => {
	const [from, to] = [last.to, next.from];
	const outer = by * (u.dx * v.dy - u.dy * v.dx) < 0;
	const tip = outer && alongness(u, v) >= 0 ? lineMeeting(from, u, to, v)?.point : undefined;
	return tip ? [straight(from, tip), straight(tip, to)] : [straight(from, to)];
};

/**
 * The line at a constant distance from a path. Positive `by` lies on the side of squareTo(direction), a quarter
 * turn from x toward y: on the sheet, the right hand of someone who walks along the path. Straight pieces are exact; a
 * curve is divided until cubics with the true ends and directions stay within PARALLEL_ERROR of the true line.
 *
 * At a corner within the path the two lines run on straight until they meet, on the outer side of a turn of no
 * more than a quarter; on the inner side, where they cross, and at sharper turns a straight piece joins
 * their ends. Inside a bend tighter than `by` the line turns back on itself, as the true one does. Both leave loops on the inner
 * side, which `withoutLoops` takes out of a closed outline. A path of no length is returned as it is.
 */
export const parallelPath = (path: Path, by: Mm): Path => {
	if (by === 0) return path;
	const line: Segment[] = [];
	let before: Segment | undefined;
	for (const segment of path) {
		const [next, ...rest] = parallelOfSegment(segment, by);
		if (!next) continue;
		const last = line.at(-1);
		const [u, v] = [before && segmentDirection(before, 1), segmentDirection(segment, 0)];
		if (last && u && v) {
			const gap = distance(last.to, next.from);
			if (gap <= PARALLEL_ERROR) line[line.length - 1] = segmentEndingAt(last, next.from);
			else line.push(...roundCorner(last, next, u, v, by));
		}
		line.push(next, ...rest);
		before = segment;
	}
	const [first, ...others] = line;
	return first ? [first, ...others] : path;
};
