import { mm, radians, type Mm } from '#shared/units.ts';
import { chordMeets } from '#geometry/chord.ts';
import { pathLength, pointAtLength, polyline, type Path } from '#geometry/path.ts';
import {
	at,
	directionTo,
	moved,
	opposite,
	squareTo,
	type Direction,
	type SheetPoint
} from '#geometry/point.ts';
import type { Words } from './drawing.ts';
import { within } from './writing.ts';

/** Width of an average letter in shares of its height; how far letters hang below their line; white beside a line. */
const LETTER = 0.52;
const HANGS = 0.3;
const WHITE = 1.2;
/** Heights that are tried, in millimetres: smaller could not be read at arm's length. */
const SIZES = [3.2, 2.6] as const;
/** Where along a line words are tried, as shares of its length, and how far from it. */
const SHARES = [0.5, 0.35, 0.65, 0.22, 0.78] as const;
const AWAY = [0, 4, 8] as const;

/** What words must keep to: the piece's outline as places, and the lines that are drawn in it. */
export interface Room {
	readonly ring: readonly SheetPoint[];
	readonly lines: readonly (readonly SheetPoint[])[];
}

/** The corners of the place that middled words take up, in turn. */
const cornersOf = ({ text, at: { x, y }, size, turn }: Words): readonly SheetPoint[] => {
	const half = (text.length * size * LETTER) / 2;
	const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
	const put = (along: number, down: number): SheetPoint =>
		at(x + along * cos - down * sin, y + along * sin + down * cos);
	return [put(-half, -size), put(half, -size), put(half, size * HANGS), put(-half, size * HANGS)];
};

/** The frame about words with its diagonals, for others to keep clear of: small ones would lie within a bare frame. */
export const frameOf = (words: Words): Path => {
	const [a, b, c, d] = cornersOf(words);
	return a && b && c && d ? polyline(a, b, c, d, a, c, b, d) : polyline(words.at, words.at);
};

/** Whether words lie in the piece, on no line. */
const isFree = (words: Words, { ring, lines }: Room): boolean => {
	const corners = cornersOf(words);
	const middles = corners.map((a, i) => {
		const b = corners[(i + 1) % corners.length] ?? a;
		return at((a.x + b.x) / 2, (a.y + b.y) / 2);
	});
	if (![...corners, ...middles].every((place) => within(ring, place))) return false;
	const [cos, sin] = [Math.cos(words.turn), Math.sin(words.turn)];
	/** A place as the words see it: along their line, and down from it. */
	const seen = ({ x, y }: SheetPoint): SheetPoint => {
		const [dx, dy] = [x - words.at.x, y - words.at.y];
		return at(dx * cos + dy * sin, dy * cos - dx * sin);
	};
	const half = (words.text.length * words.size * LETTER) / 2;
	const box = { left: mm(-half), right: mm(half), top: mm(-words.size), bottom: mm(words.size * HANGS) };
	return !lines.some((line) => {
		const places = line.map(seen);
		return places.some((place, i) => i > 0 && chordMeets(places[i - 1] ?? place, place, box));
	});
};

/** A turn that never writes upside down: 90 degrees either way at the most. */
const readable = (angle: number): number => {
	const half = Math.PI / 2;
	if (angle > half) return angle - Math.PI;
	return angle <= -half ? angle + Math.PI : angle;
};

/** Words at a place along a line, on the side to which `side` points. */
const wordsAt = (
	text: string,
	place: SheetPoint,
	runs: Direction,
	side: Direction,
	size: number,
	gap: number
): Words => {
	const turn = readable(Math.atan2(runs.dy, runs.dx));
	const isAbove = side.dx * Math.sin(turn) - side.dy * Math.cos(turn) > 0;
	const away = gap + size * (isAbove ? HANGS : 1);
	return { text, at: moved(place, side, mm(away)), middle: true, size: mm(size), turn: radians(turn) };
};

/**
 * Words along a line on one of some sides of it, told by the line's direction: as near to its middle and to it as there is
 * room, and undefined where there is none.
 */
export const wordsBeside = (
	text: string,
	path: Path,
	sides: (runs: Direction) => readonly Direction[],
	room: Room,
	least = 0
): Words | undefined => {
	const whole = pathLength(path);
	for (const size of SIZES)
		for (const away of AWAY)
			for (const share of SHARES) {
				const [here, next] = [share * whole, share * whole + 1].map((along) =>
					pointAtLength(path, mm(along))
				);
				const runs = here && next && directionTo(here, next);
				if (!here || !runs) continue;
				for (const side of sides(runs)) {
					const words = wordsAt(text, here, runs, side, size, WHITE + least + away);
					if (isFree(words, room)) return words;
				}
			}
	return undefined;
};

/** Both sides of a line. */
export const bothSides = (runs: Direction): readonly Direction[] => [
	opposite(squareTo(runs)),
	squareTo(runs)
];

/** Words about a point, so far from it: to its right, its left, under it or over it, or aslant of it where it lies on an edge; to its right where there is no room. */
export const wordsAbout = (text: string, { x, y }: SheetPoint, apart: Mm, room: Room): Words => {
	const size = SIZES[0];
	const half = apart + WHITE + (text.length * size * LETTER) / 2;
	const words = (place: SheetPoint): Words => ({
		text,
		at: place,
		middle: true,
		size: mm(size),
		turn: radians(0)
	});
	const first = words(at(x + half, y + size * 0.35));
	const all = [
		first,
		words(at(x - half, y + size * 0.35)),
		words(at(x, y + apart + WHITE + size)),
		words(at(x, y - apart - WHITE - size * HANGS)),
		...[-size, size * 1.7].flatMap((down) => [words(at(x + half, y + down)), words(at(x - half, y + down))])
	];
	return all.find((each) => isFree(each, room)) ?? first;
};
