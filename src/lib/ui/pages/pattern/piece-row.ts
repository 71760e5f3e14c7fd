import { mm, px, type Px } from '#shared/units.ts';
import type { Piece } from '#garment/piece.ts';
import type { SheetView } from '#ui/drawing/view.ts';
import { pieceBounds } from '#ui/garments/piece-ink.ts';

/** A piece in a row of small ones: where the sheet is seen from, so that it stands in its place. */
export interface Standing {
	readonly piece: Piece;
	readonly view: SheetView;
}

/** Pieces that stand in rows one under another, all to one scale. */
export interface Rows {
	readonly height: Px;
	readonly standing: readonly Standing[];
}

/** Pixels between two neighbours. */
const GAP = 10;
/** Pixels to the millimetre, the largest first: a single skirt may be large, a dress of nine pieces is small. */
const SCALES = [0.3, 0.27, 0.24, 0.21, 0.18, 0.16, 0.14, 0.12, 0.1];
const SMALLEST = 0.08;

/** Pieces in rows of at most so many pixels, all to `scale` pixels to the millimetre. */
const rowsAt = (pieces: readonly Piece[], width: Px, scale: number): Rows => {
	const standing: Standing[] = [];
	let [left, top, tallest] = [0, 0, 0];
	for (const piece of pieces) {
		const bounds = pieceBounds(piece, 'all');
		const [across, down] = [(bounds.right - bounds.left) * scale, (bounds.bottom - bounds.top) * scale];
		if (left > 0 && left + across > width) [left, top, tallest] = [0, top + tallest + GAP, 0];
		standing.push({
			piece,
			view: { scale, left: mm(bounds.left - left / scale), top: mm(bounds.top - top / scale) }
		});
		left += across + GAP;
		tallest = Math.max(tallest, down);
	}
	return { height: px(top + tallest), standing };
};

/** Pieces in rows, in turn, as large as they come in so much room. */
export const rowsWithin = (pieces: readonly Piece[], width: Px, height: Px): Rows => {
	const fitting = SCALES.map((scale) => rowsAt(pieces, width, scale)).find((rows) => rows.height <= height);
	return fitting ?? rowsAt(pieces, width, SMALLEST);
};
