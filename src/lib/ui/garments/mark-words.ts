import { mm, type Mm } from '#shared/units.ts';
import { pathLength, pointAtLength, type Path } from '#geometry/path.ts';
import { at, type SheetPoint } from '#geometry/point.ts';
import { dense } from '#garment/piece-lines.ts';
import type { Piece } from '#garment/piece.ts';
import { wordsWide } from './piece-ink.ts';

/** Words as the upright rectangle that they take on a piece: its middle and half its sides. */
interface Room {
	readonly middle: SheetPoint;
	readonly wide: Mm;
	readonly high: Mm;
}

/** How far along a mark its words may stand, the preferred first. */
const SHARES = [0.62, 0.38, 0.8, 0.2, 0.5, 0.9, 0.1];

/** Words that cover words are worse than so many spots of ink under them. */
const WORDS = 20;

const holds = ({ middle, wide, high }: Room, { x, y }: SheetPoint): boolean =>
	Math.abs(x - middle.x) < wide && Math.abs(y - middle.y) < high;
/** How much of the lesser of two rectangles the other covers. */
const covered = (a: Room, b: Room): number => {
	const across = a.wide + b.wide - Math.abs(a.middle.x - b.middle.x);
	const down = a.high + b.high - Math.abs(a.middle.y - b.middle.y);
	return across > 0 && down > 0 ? (across * down) / (4 * Math.min(a.wide * a.high, b.wide * b.high)) : 0;
};

/** Pixels from a mark, or a marked point, to the middle of its words below it. */
const BELOW = 9;

/**
 * How far along its mark the words of each of a piece's marks stand, as a share, so that they cover as little as can be
 * of other words and of other ink.
 *
 * @param grain the piece's grain line
 * @param pixel what a pixel of the drawing stands for
 * @param letters how high letters are, in pixels
 */
export const sharesAlong = (piece: Piece, grain: Path, pixel: Mm, letters: number): readonly number[] => {
	const roomOf = (words: string, { x, y }: SheetPoint): Room => ({
		middle: at(x, mm(y + BELOW * pixel)),
		wide: mm((wordsWide(words, letters) / 2) * pixel),
		high: mm((letters / 2) * pixel)
	});
	const every = mm(5 * pixel);
	const legs = piece.darts.flatMap((dart) => dart.legs);
	const ink = [grain, ...legs, ...piece.marks.map(({ path }) => path)].flatMap((path) => dense(path, every));
	const taken = piece.drills.map((drill) => roomOf(drill.label, drill.at));
	return piece.marks.map(({ label, path }) => {
		const tried = SHARES.flatMap((share) => {
			const place = pointAtLength(path, mm(pathLength(path) * share));
			if (!place) return [];
			const room = roomOf(label, place);
			const words = taken.reduce((sum, each) => sum + covered(room, each), 0);
			return [{ share, room, cost: WORDS * words + ink.filter((each) => holds(room, each)).length }];
		});
		const [best] = tried.toSorted((a, b) => a.cost - b.cost);
		if (best) taken.push(best.room);
		return best?.share ?? 0.5;
	});
};
