import { SAME_PLACE } from '#shared/tolerances.ts';
import { mm } from '#shared/units.ts';
import { between, distance, moved, opposite, type Direction, type SheetPoint } from './point.ts';
import { lineMeeting } from './rays.ts';
import { cubic, type CubicSegment } from './segment.ts';

/**
 * Share of the way from an end to the corner at which a handle lies: with it a cubic follows a
 * quarter circle within 0.03 % of its radius. 4 (sqrt 2 - 1) / 3.
 */
export const CORNER_SHARE = (4 * (Math.SQRT2 - 1)) / 3;

/** An end of a curve: a place, and the direction in which the curve runs through it. */
export interface CurveEnd {
	readonly point: SheetPoint;
	readonly heading: Direction;
}

/** The corner of a curve: where the line ahead of its start meets the line back from its end. Undefined where there is none ahead of both. */
export const curveCorner = (start: CurveEnd, end: CurveEnd): SheetPoint | undefined => {
	const meeting = lineMeeting(start.point, start.heading, end.point, opposite(end.heading));
	return meeting && meeting.alongFirst > SAME_PLACE && meeting.alongSecond > SAME_PLACE
		? meeting.point
		: undefined;
};

/** A curve whose handles lie a third of the chord's length along the headings of its two ends. */
export const thirdsCurve = (start: CurveEnd, end: CurveEnd): CubicSegment => {
	const third = mm(distance(start.point, end.point) / 3);
	return cubic(
		start.point,
		moved(start.point, start.heading, third),
		moved(end.point, opposite(end.heading), third),
		end.point
	);
};

/**
 * A curve set into the corner of its two ends: each handle lies CORNER_SHARE of the way to it.
 * Where the ends have no corner ahead of both, the handles lie a third of the chord's length along.
 * The rule is the method's own (common practice draws such curves by eye).
 */
export const cornerCurve = (start: CurveEnd, end: CurveEnd): CubicSegment => {
	const corner = curveCorner(start, end);
	if (!corner) return thirdsCurve(start, end);
	return cubic(
		start.point,
		between(start.point, corner, CORNER_SHARE),
		between(end.point, corner, CORNER_SHARE),
		end.point
	);
};
