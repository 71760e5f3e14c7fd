import { SAME_PLACE } from '#shared/tolerances.ts';
import type { Path } from './path.ts';
import { distance, type SheetPoint } from './point.ts';
import { lineMeeting } from './rays.ts';
import type { PathPosition } from './section.ts';
import { segmentDirection, segmentPoint, type Segment } from './segment.ts';

/** A place that two paths share, and where it lies on each. */
export interface PathMeeting {
	readonly point: SheetPoint;
	readonly onFirst: PathPosition;
	readonly onSecond: PathPosition;
}

/** Step of t over which the speed of a segment is read. */
const SPEED_STEP = 1e-4;
/** Rounds that are tried; from a start within a millimetre three reach the last digit. */
const ROUNDS = 12;

/** The parameter of a segment a length further on, as if its speed were the same all the way. */
const furtherOn = (segment: Segment, t: number, length: number): number => {
	const from = Math.min(t, 1 - SPEED_STEP);
	const speed = distance(segmentPoint(segment, from), segmentPoint(segment, from + SPEED_STEP)) / SPEED_STEP;
	return Math.min(1, Math.max(0, t + length / speed));
};

/**
 * Where the last segments of two paths cross, looked for from their ends by going along the tangents to where these meet,
 * again and again (Newton's method). It finds crossings at a thousandth of a turn, which a search by bounds can miss;
 * undefined where it comes to none.
 */
export const meetingOfEnds = (first: Path, second: Path): PathMeeting | undefined => {
	const [one, other] = [first.at(-1) ?? first[0], second.at(-1) ?? second[0]];
	let [s, t] = [1, 1];
	for (let round = 0; round < ROUNDS; round++) {
		const [p, q] = [segmentPoint(one, s), segmentPoint(other, t)];
		if (distance(p, q) <= SAME_PLACE) {
			return { point: p, onFirst: first.length - 1 + s, onSecond: second.length - 1 + t };
		}
		const [u, v] = [segmentDirection(one, s), segmentDirection(other, t)];
		const ahead = u && v && lineMeeting(p, u, q, v);
		if (!ahead) return undefined;
		[s, t] = [furtherOn(one, s, ahead.alongFirst), furtherOn(other, t, ahead.alongSecond)];
	}
	return undefined;
};
