import { mm, px, type Mm, type Px } from '#shared/units.ts';
import type { Piece } from '#garment/piece.ts';
import { boundsOf, type Bounds } from '#geometry/path.ts';
import { at, type SheetPoint } from '#geometry/point.ts';
import type { ScreenSize, SheetView } from '#ui/drawing/view.ts';

/** A drawing of a piece: its size on the screen, and what of the sheet it shows. */
export interface PieceLeaf {
	readonly size: ScreenSize;
	readonly view: SheetView;
}

/** Pixels round a piece: room for the word at its fold, and at the foot for the scale. */
export const MARGIN = 22;
const FOOT = 34;
/** How tall a drawing may be for its room's width. */
const TALLEST = 1.4;
/** Pixels to the millimetre at which a small piece is large enough. */
const LARGE_ENOUGH = 1.2;
/** A drawing is at least so wide, so that its scale stands in it. */
const LEAST_WIDTH = 150;

/** What of a piece is drawn: all of it, or its stitching line alone. */
export type Shown = 'all' | 'stitching';

/** The rectangle that holds what is drawn of a piece. */
export const pieceBounds = ({ outline, cutting }: Piece, show: Shown): Bounds =>
	boundsOf(show === 'all' ? [outline, cutting.outline] : [outline]);

/** Pixels to the millimetre for pieces that are drawn to one scale, the largest first: few, so that a piece that grows is seen to. */
const SCALES = [LARGE_ENOUGH, 1, 0.8, 0.64, 0.52, 0.42, 0.33, 0.26, 0.2, 0.16];
const SMALLEST = 0.12;
/** How tall the tallest of them may be, and how much of the room the widest may take, where there is room for two. */
const [TALL, WIDE, ROOM_FOR_TWO] = [560, 0.48, 600];

/** The one scale, in pixels to the millimetre, at which each of some pieces fits a room so many pixels wide. */
export const oneScale = (pieces: readonly Bounds[], room: number): number => {
	const across = Math.max(...pieces.map(({ left, right }) => right - left));
	const down = Math.max(...pieces.map(({ top, bottom }) => bottom - top));
	const most = Math.min(((room < ROOM_FOR_TWO ? room : room * WIDE) - 2 * MARGIN) / across, TALL / down);
	return SCALES.find((scale) => scale <= most) ?? SMALLEST;
};

/** The drawing that shows `bounds` in a room so many pixels wide, to a scale that is given or as large as is of use, in its middle. */
export const pieceLeaf = ({ left, top, right, bottom }: Bounds, room: number, given?: number): PieceLeaf => {
	const [across, down] = [right - left, bottom - top];
	const scale =
		given ?? Math.min(LARGE_ENOUGH, (room - 2 * MARGIN) / across, (room * TALLEST - MARGIN - FOOT) / down);
	const width = Math.max(LEAST_WIDTH, Math.round(across * scale + 2 * MARGIN));
	return {
		size: { width: px(width), height: px(Math.round(down * scale + MARGIN + FOOT)) },
		view: { scale, left: mm((left + right) / 2 - width / scale / 2), top: mm(top - MARGIN / scale) }
	};
};

const isWithin = (polygon: readonly SheetPoint[], { x, y }: SheetPoint): boolean => {
	let within = false;
	for (const [i, b] of polygon.entries()) {
		const a = polygon.at(i - 1) ?? b;
		if (a.y > y !== b.y > y && x < a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y)) within = !within;
	}
	return within;
};

/** Into how many places each way a piece is searched for room. */
const SEARCHED = 13;

/**
 * Where words so wide and so high stand clearest within a polygon, away from its edge and from other ink;
 * undefined where there is no such room.
 */
export const roomFor = (
	polygon: readonly SheetPoint[],
	ink: readonly SheetPoint[],
	width: Mm,
	height: Mm
): SheetPoint | undefined => {
	const all = [...polygon, ...ink];
	const { left, top, right, bottom } = boundsOf([], polygon);
	let found: SheetPoint | undefined;
	let best = 1;
	/** How far the nearest ink is, in halves of the words' own size: from 1 on it touches none. No further than the best is looked. */
	const clearance = (place: SheetPoint): number => {
		let least = Infinity;
		for (const { x, y } of all) {
			const gap = Math.max(Math.abs(x - place.x) / width, Math.abs(y - place.y) / height) * 2;
			if (gap < least) least = gap;
			if (least <= best) break;
		}
		return least;
	};
	for (let row = 1; row < SEARCHED; row++) {
		for (let column = 1; column < SEARCHED; column++) {
			const place = at(left + ((right - left) * column) / SEARCHED, top + ((bottom - top) * row) / SEARCHED);
			const clear = clearance(place);
			if (clear > best && isWithin(polygon, place)) {
				found = place;
				best = clear;
			}
		}
	}
	return found;
};

/** Room that a line of words takes, in pixels: a small sans letter is about half as wide as it is high. */
export const wordsWide = (words: string, size: number): Px => px(words.length * size * 0.54 + 6);
