import { mm, type Mm } from '#shared/units.ts';
import { boundsOf, pathSamples, type Bounds } from '#geometry/path.ts';
import type { SheetPoint } from '#geometry/point.ts';
import { drawingBounds, type Drawing } from '../drawing/drawing.ts';
import type { Tile } from './tiles.ts';

/** How far ink reaches beside a line's middle, with something to spare: half the widest line. */
const PEN: Mm = mm(1);
/** Places along a curve at which it is asked whether it crosses a page; between two of them it is taken for straight. */
const STEP: Mm = mm(5);

const apart = (a: Bounds, tile: Tile): boolean =>
	a.right < tile.left - PEN ||
	a.left > tile.left + tile.width + PEN ||
	a.bottom < tile.top - PEN ||
	a.top > tile.top + tile.height + PEN;

/** Whether a straight chord comes into a page. */
const chordIn = (from: SheetPoint, to: SheetPoint, tile: Tile): boolean => {
	let [enter, leave] = [0, 1];
	const sides: readonly (readonly [start: number, way: number, least: number, most: number])[] = [
		[from.x, to.x - from.x, tile.left - PEN, tile.left + tile.width + PEN],
		[from.y, to.y - from.y, tile.top - PEN, tile.top + tile.height + PEN]
	];
	for (const [start, way, least, most] of sides) {
		if (way === 0) {
			if (start < least || start > most) return false;
			continue;
		}
		const [a, b] = [(least - start) / way, (most - start) / way];
		enter = Math.max(enter, Math.min(a, b));
		leave = Math.min(leave, Math.max(a, b));
	}
	return enter <= leave;
};

/** Whether any line or word of the drawings comes into a page. */
export const hasInk = (drawings: readonly Drawing[], tile: Tile): boolean =>
	drawings.some((drawing) => {
		if (apart(drawingBounds(drawing), tile)) return false;
		const wordsIn = drawing.words.length > 0 && !apart(drawingBounds({ ...drawing, strokes: [] }), tile);
		return (
			wordsIn ||
			drawing.strokes.some(({ path, closed }) => {
				if (apart(boundsOf([path]), tile)) return false;
				const places = pathSamples(path, STEP);
				const first = places[0];
				const ring = closed && first ? [...places, first] : places;
				return ring.some((place, i) => i > 0 && chordIn(ring[i - 1] ?? place, place, tile));
			})
		);
	});
