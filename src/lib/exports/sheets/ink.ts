import { mm, type Mm } from '#shared/units.ts';
import { chordMeets } from '#geometry/chord.ts';
import { boundsOf, pathSamples, pathStart, type Bounds } from '#geometry/path.ts';
import { drawingBounds, grown, isEmpty, type Drawing, type Stroke } from '../drawing/drawing.ts';
import type { Tile } from './tiles.ts';

/** How far ink reaches beside a line's middle, with something to spare: half the widest line. */
const PEN: Mm = mm(1);
/** Places along a curve at which it is asked whether it crosses a page; between two of them it is taken for straight. */
const STEP: Mm = mm(5);

/** The part of the sheet whose lines a page shows some ink of. */
const reachOf = ({ left, top, width, height }: Tile): Bounds =>
	grown({ left, top, right: mm(left + width), bottom: mm(top + height) }, PEN);

const apart = (a: Bounds, b: Bounds): boolean =>
	a.right < b.left || a.left > b.right || a.bottom < b.top || a.top > b.bottom;

const strokeIn = ({ path, closed }: Stroke, page: Bounds): boolean => {
	if (apart(boundsOf([path]), page)) return false;
	const places = pathSamples(path, STEP);
	const ring = closed ? [...places, pathStart(path)] : places;
	return ring.some((place, i) => i > 0 && chordMeets(ring[i - 1] ?? place, place, page));
};

/** Whether any line or word of the drawings comes into a page. */
export const hasInk = (drawings: readonly Drawing[], tile: Tile): boolean => {
	const page = reachOf(tile);
	return drawings.some(
		(drawing) =>
			!isEmpty(drawing) &&
			!apart(drawingBounds(drawing), page) &&
			(drawing.words.some(
				(words) => !apart(drawingBounds({ ...drawing, strokes: [], words: [words] }), page)
			) ||
				drawing.strokes.some((stroke) => strokeIn(stroke, page)))
	);
};
