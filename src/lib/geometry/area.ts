import type { Path } from './path.ts';
import type { SheetPoint } from './point.ts';
import type { Segment } from './segment.ts';

/** Twice the area that turns from one place to another about `about`: positive where that is a turn from x toward y. */
const turned = (about: SheetPoint, a: SheetPoint, b: SheetPoint): number =>
	(a.x - about.x) * (b.y - about.y) - (a.y - about.y) * (b.x - about.x);

/** The area between a segment and its chord, by Green's theorem: the integral of a cubic's own polynomial, worked out once. */
const bulge = (segment: Segment): number => {
	if (segment.kind === 'straight') return 0;
	const { from, leaving, arriving, to } = segment;
	return (
		(3 / 20) * (turned(from, leaving, arriving) + turned(from, leaving, to) + 2 * turned(from, arriving, to))
	);
};

/**
 * The area within a closed outline in square millimetres, exact for straight pieces and curves alike. Positive
 * where the outline runs from x toward y: clockwise, as the sheet is seen. An outline whose end is not at its
 * start is closed by a straight piece. Where it crosses itself, each part counts as often as it is gone round.
 */
export const enclosedArea = (outline: Path): number => {
	// Seen from the outline's own start the products stay small, so that a far-off outline loses no digits.
	const about = outline[0].from;
	return outline.reduce(
		(sum, segment) => sum + turned(about, segment.from, segment.to) / 2 + bulge(segment),
		0
	);
};

/** Whether a closed outline runs clockwise, as the sheet is seen: from x toward y. */
export const isClockwise = (outline: Path): boolean => enclosedArea(outline) > 0;
