import paper from 'paper/dist/paper-core.js';
import { mm, type Mm } from '#shared/units.ts';
import { isClockwise } from '../area.ts';
import { segmentEndingAt } from '../ends.ts';
import { pathReversed, type Path } from '../path.ts';
import { segmentLength, type Segment } from '../segment.ts';
import { outlineOf, paperOutline } from './outline.ts';

/**
 * How far a place of an outline is nudged where two straight parts of it lie on each other: paper takes such a part for a
 * way there and back, and cuts it out. A hundred-thousandth of a millimetre is ten times what it takes for one place.
 */
const NUDGE: Mm = mm(1e-5);
/** Pieces shorter than this are left over from cutting at two places that are one, nudged or not. */
const CRUMB: Mm = mm(1e-3);

/** Moves every place by less than six nudges, and no two neighbours alike. */
const nudged = (outline: paper.Path): paper.Path => {
	const moved = outline.clone({ insert: false });
	for (const [i, segment] of moved.segments.entries()) {
		const { x, y } = segment.point;
		segment.point = new paper.Point(x + NUDGE * (((3 * i) % 11) - 5), y + NUDGE * (((5 * i) % 13) - 6));
	}
	return moved;
};

/** The outline without crumbs: the piece before one ends where the piece after it starts. */
const withoutCrumbs = (outline: Path): Path => {
	const pieces = outline.filter((segment) => segmentLength(segment) > CRUMB);
	const [first, ...rest] = pieces.map((segment, i): Segment => {
		const next = pieces[(i + 1) % pieces.length] ?? segment;
		return segmentEndingAt(segment, next.from);
	});
	return first ? [first, ...rest] : outline;
};

/** The largest of the closed parts that paper made of an outline. */
const largestPart = (item: paper.PathItem): paper.Path | undefined => {
	const parts = item instanceof paper.CompoundPath ? item.children : [item];
	return parts
		.filter((part) => part instanceof paper.Path)
		.reduce<paper.Path | undefined>(
			(best, part) => (best && Math.abs(best.area) >= Math.abs(part.area) ? best : part),
			undefined
		);
};

/**
 * A closed outline without the loops that it makes across itself: its outer boundary, of which the largest part is
 * kept, run the same way round. Curves stay curves. An outline that does not cross itself is returned as it is.
 * It takes about a tenth of a millisecond to see that there is no loop, and a few times that to take one out.
 */
export const withoutLoops = (outline: Path): Path => {
	const closed = paperOutline(outline);
	const crossed = closed.getIntersections(
		closed,
		(place: paper.CurveLocation) => place.hasOverlap() || place.isCrossing()
	);
	if (crossed.length === 0) return outline;
	const clear = crossed.some((place) => place.hasOverlap()) ? nudged(closed) : closed;
	const largest = largestPart(clear.unite(clear, { insert: false }));
	const found = largest && outlineOf(largest);
	if (!found) return outline;
	const boundary = withoutCrumbs(found);
	return isClockwise(boundary) === isClockwise(outline) ? boundary : pathReversed(boundary);
};
