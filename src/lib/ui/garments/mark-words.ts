import { mm, type Mm, type Px } from '#shared/units.ts';
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

/** Words of a piece: their lines, where their middle stands, and by how many degrees they are turned. */
export interface Placed {
	readonly lines: readonly string[];
	readonly middle: SheetPoint;
	readonly turn: number;
}

/** How far along a mark its words may stand, the preferred first. */
const SHARES = [0.62, 0.38, 0.8, 0.2, 0.5, 0.9, 0.1];
/** Pixels from a mark to the middle of its words, from a marked point to those above or below it, and to the end of those beside it. */
const [BESIDE, BELOW, AFTER] = [9, 13, 9];
/** Pixels from a mark's upper end to words above it, or from its lower end to words below. */
const ABOVE = 12;

/** Pixels from a piece down to the scale that is drawn below it. */
const SCALE_BELOW = 18;

/** No word stands further from its point than so many pixels. */
const NEAR = 36;

/** From one line of words to the next, in heights of its letters; into how many they may be broken, and how much worse each more is. */
export const LEADING = 1.2;
const [MOST_LINES, BROKEN] = [3, 3];

/** Words that cover words are worse than so many spots of ink under them, and words that the drawing's edge cuts off are worst of all. */
const [WORDS, CUT] = [20, 200];
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

/** Words in lines of so many letters at most; a longer word stands in a line alone. */
const wrapped = (words: string, most: number): readonly string[] => {
	const lines: string[] = [];
	for (const word of words.split(' ')) {
		const line = lines.at(-1);
		if (line !== undefined && line.length + 1 + word.length <= most) lines.splice(-1, 1, `${line} ${word}`);
		else lines.push(word);
	}
	return lines;
};

/** The ways to break words into lines, each as narrow as it can be: whole, in two, in three. */
const broken = (words: string): readonly (readonly string[])[] => {
	const ways: (readonly string[])[] = [[words]];
	for (let most = words.length - 1; most > 0 && ways.length <= MOST_LINES; most--) {
		const lines = wrapped(words, most);
		if (lines.length > MOST_LINES) break;
		ways[lines.length - 1] = lines;
	}
	return ways.filter(Boolean);
};

/** How wide and how high lines of words are, in pixels. */
const sizeOf = (lines: readonly string[], letters: Px): { readonly wide: number; readonly high: number } => ({
	wide: Math.max(...lines.map((line) => wordsWide(line, letters))),
	high: letters * (1 + LEADING * (lines.length - 1))
});

/** Where the words of a marked point may stand, the preferred first. */
const besidePoint = (
	{ label: words, at: { x, y } }: Piece['drills'][number],
	{ left, top, right, bottom }: Bounds,
	{ pixel, letters }: Drawn
): readonly Placed[] =>
	broken(words).flatMap((lines) => {
		const { wide, high } = sizeOf(lines, letters);
		const half = (wide / 2) * pixel;
		const more = ((high - letters) / 2) * pixel;
		const within = Math.max(left + half, Math.min(right - half, x));
		// A piece that is too narrow for words has them outside, where that is near.
		const outside = [bottom + BESIDE * pixel + more, top - BESIDE * pixel - more].filter(
			(level) => Math.abs(level - y) < NEAR * pixel
		);
		const middles: readonly (readonly [number, number])[] = [
			[x, y + BELOW * pixel + more],
			[x + AFTER * pixel + half, y],
			[x - AFTER * pixel - half, y],
			[x, y - BELOW * pixel - more],
			...outside.map((level) => [within, level] as const)
		];
		return middles.map(([across, down]) => ({ lines, middle: at(mm(across), mm(down)), turn: 0 }));
	});

/** Where the words of a mark may stand, the preferred first: along it, on either side, or above or below it where they are longer. */
const alongMark = (
	{ label: words, path }: Piece['marks'][number],
	{ pixel, letters }: Drawn
): readonly Placed[] => {
	const [from, to] = [pathStart(path), pathEnd(path)];
	const [top, bottom] = from.y < to.y ? [from, to] : [to, from];
	const lines = [words];
	const half = (wordsWide(words, letters) / 2) * pixel;
	if (pathLength(path) <= 2 * half)
		return [at(top.x, mm(top.y - ABOVE * pixel)), at(bottom.x, mm(bottom.y + ABOVE * pixel))].flatMap(
			({ x, y }) => [0, -half, half].map((aside) => ({ lines, middle: at(mm(x + aside), y), turn: 0 }))
		);
	const turn = upward(from, to);
	const square = ((turn + 90) * Math.PI) / 180;
	return [BESIDE, -BESIDE].flatMap((away) =>
		SHARES.flatMap((share): readonly Placed[] => {
			const place = pointAtLength(path, mm(pathLength(path) * share));
			if (!place) return [];
			const [x, y] = [place.x + Math.cos(square) * away * pixel, place.y + Math.sin(square) * away * pixel];
			return [{ lines, middle: at(mm(x), mm(y)), turn }];
		})
	);
};

/** The room that words take where they are placed. */
const roomOf = ({ lines, middle, turn }: Placed, { pixel, letters }: Drawn): Room => {
	const size = sizeOf(lines, letters);
	const [along, across] = [(size.wide / 2) * pixel, (size.high / 2) * pixel];
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
	const isCut = ({ middle, wide, high }: Room): boolean =>
		middle.x - wide < bounds.left - MARGIN * pixel ||
		middle.x + wide > bounds.right + MARGIN * pixel ||
		middle.y - high < bounds.top - MARGIN * pixel ||
		middle.y + high > bounds.bottom + SCALE_BELOW * pixel;
	const clearest = (tried: readonly Placed[]): readonly Placed[] => {
		const costs = tried.map((placed, i) => {
			const room = roomOf(placed, drawn);
			const words = taken.reduce((sum, each) => sum + covered(room, each), 0);
			const cut = isCut(room) ? CUT : 0;
			const under = spots.filter((each) => holds(room, each)).length;
			const more = placed.lines.length - 1;
			return { placed, room, cost: cut + WORDS * words + under + BROKEN * more + LATER * i };
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
export const spotsOf = ({ lines, middle, turn }: Placed, pixel: Mm, letters: Px): readonly SheetPoint[] => {
	const angle = (turn * Math.PI) / 180;
	return lines.flatMap((line, row) => {
		const wide = wordsWide(line, letters);
		const below = (row - (lines.length - 1) / 2) * LEADING * letters * pixel;
		return Array.from({ length: Math.ceil(wide / 8) + 1 }, (_, i) => {
			const along = (i * 8 - wide / 2) * pixel;
			return at(
				mm(middle.x + along * Math.cos(angle) - below * Math.sin(angle)),
				mm(middle.y + along * Math.sin(angle) + below * Math.cos(angle))
			);
		});
	});
};
