import { mm, px, type Mm, type Px } from '#shared/units.ts';
import {
	boundsOf,
	pathEnd,
	pathLength,
	pathStart,
	pointAtLength,
	type Bounds,
	type Path
} from '#geometry/path.ts';
import { at, type SheetPoint } from '#geometry/point.ts';
import { dense } from '#garment/piece-lines.ts';
import type { Piece } from '#garment/piece.ts';
import { MARGIN, wordsWide } from './piece-ink.ts';

/** Words as the upright rectangle that they take on a piece: its middle and half its sides. */
interface Room {
	readonly middle: SheetPoint;
	readonly wide: number;
	readonly high: number;
}

/** Words of a piece: where their middle stands, and by how many degrees they are turned. */
export interface Placed {
	readonly words: string;
	readonly middle: SheetPoint;
	readonly turn: number;
}

/** How far along a mark its words may stand, the preferred first. */
const SHARES = [0.62, 0.38, 0.8, 0.2, 0.5, 0.9, 0.1];
/** Pixels from a mark to the middle of its words, from a marked point to those above or below it, and to the end of those beside it. */
const [BESIDE, BELOW, AFTER] = [9, 13, 9];
/** Pixels from a mark's upper end to words above it. */
const ABOVE = 12;

/** No word stands further from its point than so many pixels. */
const NEAR = 36;

/** Words that cover words, or that the drawing's edge cuts off, are worse than so many spots of ink under them. */
const WORDS = 20;
/** What comes earlier is preferred, where nothing else is between them. */
const LATER = 0.01;

const holds = ({ middle, wide, high }: Room, { x, y }: SheetPoint): boolean =>
	Math.abs(x - middle.x) < wide && Math.abs(y - middle.y) < high;
/** How much of the lesser of two rectangles the other covers. */
const covered = (a: Room, b: Room): number => {
	const across = a.wide + b.wide - Math.abs(a.middle.x - b.middle.x);
	const down = a.high + b.high - Math.abs(a.middle.y - b.middle.y);
	return across > 0 && down > 0 ? (across * down) / (4 * Math.min(a.wide * a.high, b.wide * b.high)) : 0;
};

/** The way from one place to another in degrees, turned so that words along it are read from below or from the right. */
const upward = (from: SheetPoint, to: SheetPoint): number => {
	const angle = (Math.atan2(to.y - from.y, to.x - from.x) * 180) / Math.PI;
	return angle > 80 ? angle - 180 : angle <= -100 ? angle + 180 : angle;
};

/** What a pixel of the drawing stands for, and how high its letters are. */
interface Drawn {
	readonly pixel: Mm;
	readonly letters: Px;
}

/** Where the words of a marked point may stand, the preferred first. */
const besidePoint = (
	{ label: words, at: { x, y } }: Piece['drills'][number],
	{ left, top, right, bottom }: Bounds,
	{ pixel, letters }: Drawn
): readonly Placed[] => {
	const half = (wordsWide(words, letters) / 2) * pixel;
	const within = Math.max(left + half, Math.min(right - half, x));
	// A piece that is too narrow for words has them outside, where that is near.
	const outside = [bottom + BESIDE * pixel, top - BESIDE * pixel].filter(
		(level) => Math.abs(level - y) < NEAR * pixel
	);
	const middles: readonly (readonly [number, number])[] = [
		[x, y + BELOW * pixel],
		[x + AFTER * pixel + half, y],
		[x - AFTER * pixel - half, y],
		[x, y - BELOW * pixel],
		...outside.map((level) => [within, level] as const)
	];
	return middles.map(([across, down]) => ({ words, middle: at(mm(across), mm(down)), turn: 0 }));
};

/** Where the words of a mark may stand, the preferred first: along it, on either side, or above it where they are longer. */
const alongMark = (
	{ label: words, path }: Piece['marks'][number],
	{ pixel, letters }: Drawn
): readonly Placed[] => {
	const [from, to] = [pathStart(path), pathEnd(path)];
	const top = from.y < to.y ? from : to;
	if (pathLength(path) <= wordsWide(words, letters) * pixel)
		return [{ words, middle: at(top.x, mm(top.y - ABOVE * pixel)), turn: 0 }];
	const turn = upward(from, to);
	const square = ((turn + 90) * Math.PI) / 180;
	return [BESIDE, -BESIDE].flatMap((away) =>
		SHARES.flatMap((share): readonly Placed[] => {
			const place = pointAtLength(path, mm(pathLength(path) * share));
			if (!place) return [];
			const [x, y] = [place.x + Math.cos(square) * away * pixel, place.y + Math.sin(square) * away * pixel];
			return [{ words, middle: at(mm(x), mm(y)), turn }];
		})
	);
};

/** The room that words take where they are placed. */
const roomOf = ({ words, middle, turn }: Placed, { pixel, letters }: Drawn): Room => {
	const [along, across] = [(wordsWide(words, letters) / 2) * pixel, (letters / 2) * pixel];
	return Math.abs(turn) > 45 ? { middle, wide: across, high: along } : { middle, wide: along, high: across };
};

/**
 * Where the words of a piece's marked points and of its marks stand so that they cover as little as can be of one
 * another and of other ink, and none is cut off.
 *
 * @param ink what else is drawn: the grain line, a fold's bracket
 * @param pixel what a pixel of the drawing stands for
 * @param letters how high letters are
 */
export const placeWords = (piece: Piece, ink: readonly Path[], pixel: Mm, letters: Px): readonly Placed[] => {
	const outlines = [piece.outline, piece.cutting.outline];
	const legs = piece.darts.flatMap((dart) => dart.legs);
	const lines = [...ink, ...legs, ...outlines, ...piece.marks.map(({ path }) => path)];
	const spots = [
		...lines.flatMap((path) => dense(path, mm(5 * pixel))),
		...piece.drills.map((drill) => drill.at)
	];
	const bounds = boundsOf(outlines);
	const drawn = { pixel, letters };
	const taken: Room[] = [];
	const isCut = ({ middle, wide }: Room): boolean =>
		middle.x - wide < bounds.left - MARGIN * pixel || middle.x + wide > bounds.right + MARGIN * pixel;
	const clearest = (tried: readonly Placed[]): readonly Placed[] => {
		const costs = tried.map((placed, i) => {
			const room = roomOf(placed, drawn);
			const words = taken.reduce((sum, each) => sum + covered(room, each), isCut(room) ? 1 : 0);
			const under = spots.filter((each) => holds(room, each)).length;
			return { placed, room, cost: WORDS * words + under + LATER * i };
		});
		const [best] = costs.toSorted((a, b) => a.cost - b.cost);
		if (best) taken.push(best.room);
		return best ? [best.placed] : [];
	};
	return [
		...piece.drills.flatMap((drill) => clearest(besidePoint(drill, bounds, drawn))),
		...piece.marks.flatMap((mark) => clearest(alongMark(mark, drawn)))
	];
};

/** Spots of ink in place of words, so that nothing else is written over them. */
export const spotsOf = ({ words, middle, turn }: Placed, pixel: Mm, letters: Px): readonly SheetPoint[] => {
	const wide = wordsWide(words, letters);
	const angle = (turn * Math.PI) / 180;
	return Array.from({ length: Math.ceil(wide / 8) + 1 }, (_, i) => {
		const along = px((i * 8 - wide / 2) * pixel);
		return at(mm(middle.x + along * Math.cos(angle)), mm(middle.y + along * Math.sin(angle)));
	});
};
