import { keptFor } from '#shared/kept.ts';
import { mm, type Mm } from '#shared/units.ts';
import { chordMeets } from '#geometry/chord.ts';
import { boundsOf, pathSamples, pathStart, type Bounds } from '#geometry/path.ts';
import {
	drawingBounds,
	grown,
	isEmpty,
	markerBounds,
	wordsBounds,
	type Drawing,
	type Stroke
} from '../drawing/drawing.ts';
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

/** What leaves ink on a drawing: a line, words or a marker, and the rectangle that holds it. */
interface Inked {
	readonly bounds: Bounds;
	readonly stroke?: Stroke;
}

/** The ink of a drawing, looked at once for all pages. */
const inkedOn = keptFor((drawing: Drawing): readonly Inked[] => [
	...drawing.words.map((words) => ({ bounds: wordsBounds(words) })),
	...(drawing.markers ?? []).map((marker) => ({ bounds: markerBounds(marker) })),
	...drawing.strokes.map((stroke) => ({ bounds: boundsOf([stroke.path]), stroke }))
]);

const comesInto = ({ path, closed }: Stroke, page: Bounds): boolean => {
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
			inkedOn(drawing).some(
				({ bounds, stroke }) => !apart(bounds, page) && (!stroke || comesInto(stroke, page))
			)
	);
};
