import { mm, radians, type Mm } from '#shared/units.ts';
import { nearestOnPath } from '#geometry/apart.ts';
import { chordDistance, chordMeets } from '#geometry/chord.ts';
import { boundsOf, pathSamples, type Bounds, type Path } from '#geometry/path.ts';
import { at, distance, type SheetPoint } from '#geometry/point.ts';
import type { Words } from './drawing.ts';

/** Heights of writing: the first line, and all others. */
const NAME_SIZE: Mm = mm(6);
const TEXT_SIZE: Mm = mm(3.6);
/** Writing lines stand this much of their height apart. */
const LEADING = 1.5;
/** Width of an average letter in shares of its height. */
const LETTER = 0.5;
/** The longest lines, in letters, before they are broken: shorter ones are tried where these do not fit, then long ones for a strip. */
const LONGEST = [34, 24, 60, 110, 17] as const;
/** Smaller writing is tried where it does not fit; below this it could not be read at arm's length. A name alone is larger, and may shrink more. */
const SIZES = [1, 0.8] as const;
const NAME_SIZES = [...SIZES, 0.6] as const;
/** Places tried across and down a piece. */
const TRIES = 13;
/** How closely curves are followed round the writing. */
const STEP: Mm = mm(4);
/** Air round the writing. */
const AIR = 3;

/** A text broken between words, into lines of so many letters at the most where words are no longer. */
const broken = (text: string, longest: number): readonly string[] => {
	const lines: string[] = [];
	for (const word of text.split(' ')) {
		const last = lines.at(-1);
		if (last !== undefined && `${last} ${word}`.length <= longest)
			lines[lines.length - 1] = `${last} ${word}`;
		else lines.push(word);
	}
	return lines;
};

/** A line of writing, and how high it is written where there is room. */
interface Line {
	readonly text: string;
	readonly size: number;
}

/** Texts in lines so long at the most; the first is a name, and all its lines are larger. */
const linesOf = (texts: readonly string[], longest: number): readonly Line[] =>
	texts.flatMap((text, i) =>
		broken(text, longest).map((line) => ({ text: line, size: i === 0 ? NAME_SIZE : TEXT_SIZE }))
	);

const heightOf = (lines: readonly Line[], share: number): number =>
	lines.reduce((sum, { size }) => sum + size * share * LEADING, 0);

/** Half the width and half the height of a block of lines. */
const halves = (lines: readonly Line[], share: number): readonly [number, number] => {
	const widths = lines.map(({ text, size }) => text.length * size * share * LETTER);
	return [Math.max(...widths) / 2 + AIR, heightOf(lines, share) / 2 + AIR];
};

/** Whether a place lies within a closed ring of chords (by counting how many lie to its right). */
export const within = (ring: readonly SheetPoint[], { x, y }: SheetPoint): boolean => {
	let inside = false;
	let b = ring.at(-1);
	for (const a of ring) {
		if (b && a.y > y !== b.y > y && x < a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x)) inside = !inside;
		b = a;
	}
	return inside;
};

/** A turned rectangle: places along its sides. */
const rim = (
	centre: SheetPoint,
	[wide, high]: readonly [number, number],
	upright: boolean
): readonly SheetPoint[] => {
	const [dx, dy] = upright ? [high, wide] : [wide, high];
	const shares = [-1, -0.5, 0, 0.5, 1];
	return shares.flatMap((share) => [
		at(centre.x + share * dx, centre.y - dy),
		at(centre.x + share * dx, centre.y + dy),
		at(centre.x - dx, centre.y + share * dy),
		at(centre.x + dx, centre.y + share * dy)
	]);
};

/** Whether any of some lines comes into a rectangle. */
export const meetsAny = (box: Bounds, lines: readonly (readonly SheetPoint[])[]): boolean =>
	lines.some((line) => line.some((place, i) => i > 0 && chordMeets(line[i - 1] ?? place, place, box)));

/** Whether any of some lines comes into a turned rectangle. */
const crossed = (
	lines: readonly (readonly SheetPoint[])[],
	{ x, y }: SheetPoint,
	half: readonly [number, number],
	upright: boolean
): boolean => {
	const [dx, dy] = upright ? [half[1], half[0]] : half;
	return meetsAny({ left: mm(x - dx), top: mm(y - dy), right: mm(x + dx), bottom: mm(y + dy) }, lines);
};

/** The lines set about a place, one under the other; upright, they read from below. */
const set = (
	lines: readonly Line[],
	centre: SheetPoint,
	share: number,
	upright: boolean
): readonly Words[] => {
	let down = -heightOf(lines, share) / 2;
	return lines.map(({ text, size: whole }) => {
		const size = whole * share;
		down += size * LEADING;
		const base = down - size * (LEADING - 1) * 0.6;
		const place = upright ? at(centre.x + base, centre.y) : at(centre.x, centre.y + base);
		return { text, at: place, middle: true, size: mm(size), turn: radians(upright ? -Math.PI / 2 : 0) };
	});
};

/** Places all over a rectangle, those near its middle first. */
const placesIn = ({ left, top, right, bottom }: Bounds): readonly SheetPoint[] => {
	const middle = at((left + right) / 2, (top + bottom) / 2);
	const share = (i: number): number => (i + 1) / (TRIES + 1);
	return Array.from({ length: TRIES * TRIES }, (_, i) =>
		at(left + (right - left) * share(i % TRIES), top + (bottom - top) * share(Math.floor(i / TRIES)))
	).sort((a, b) => distance(a, middle) - distance(b, middle));
};

/** A place within an outline, and how far it lies from the outline and from all that is drawn there: worked when it is asked. */
interface Spot {
	readonly centre: SheetPoint;
	readonly clear: () => number;
}

/** How far a place lies from the nearest of some lines of chords. */
const clearance = (lines: readonly (readonly SheetPoint[])[], centre: SheetPoint): number =>
	lines.reduce(
		(least, line) =>
			line.reduce(
				(near, place, i) =>
					i === 0 ? near : Math.min(near, chordDistance(line[i - 1] ?? place, place, centre)),
				least
			),
		Infinity
	);

/** Where a block's middle may lie, those places first that lie near the middle of the outline. */
const spotsIn = (
	outline: Path,
	ring: readonly SheetPoint[],
	inner: readonly (readonly SheetPoint[])[]
): readonly Spot[] => {
	const lines = [[...ring.slice(-1), ...ring], ...inner];
	return placesIn(boundsOf([outline]))
		.filter((centre) => within(ring, centre))
		.map((centre) => {
			let known: number | undefined;
			return { centre, clear: () => (known ??= clearance(lines, centre)) };
		});
};

/** The place within an outline that lies furthest from it: where a narrow piece is widest. */
const widest = (
	outline: Path,
	ring: readonly SheetPoint[],
	places: readonly SheetPoint[]
): SheetPoint | undefined => {
	let best: SheetPoint | undefined;
	let most = -1;
	for (const place of places) {
		if (!within(ring, place)) continue;
		const clear = distance(nearestOnPath(outline, place), place);
		if (clear > most) [best, most] = [place, clear];
	}
	return best;
};

/**
 * Lines of writing within a piece, all of them, as large as they fit and in lines as long as they fit; undefined where
 * there is no room for them.
 */
export const writingIn = (
	texts: readonly string[],
	outline: Path,
	around: readonly Path[]
): readonly Words[] | undefined => {
	const ring = pathSamples(outline, STEP);
	const inner = around.map((line) => pathSamples(line, STEP));
	const spots = spotsIn(outline, ring, inner);
	for (const share of texts.length > 1 ? SIZES : NAME_SIZES) {
		for (const longest of LONGEST) {
			const lines = linesOf(texts, longest);
			const half = halves(lines, share);
			const least = Math.min(...half);
			for (const upright of [false, true]) {
				// Most places are too near to a line for so high a block, and are not looked at further.
				const free = spots.find(
					({ centre, clear }) =>
						clear() > least &&
						rim(centre, half, upright).every((place) => within(ring, place)) &&
						!crossed(inner, centre, half, upright)
				);
				if (free) return set(lines, free.centre, share, upright);
			}
		}
	}
	return undefined;
};

/** Lines of writing from a place downward, level: beside a piece that has no room for them. */
export const writingAt = (texts: readonly string[], { x, y }: SheetPoint): readonly Words[] => {
	const lines = linesOf(texts, LONGEST[0]);
	return set(lines, at(x, y + halves(lines, 1)[1] - AIR), 1, false).map((words) => ({
		...words,
		middle: false
	}));
};

/**
 * Lines of writing within a piece, clear of the lines that are drawn in it: as large as they fit, level or else upright,
 * near the middle; the first line alone where there is no room for all, and at the piece's widest place where even that
 * is too much.
 */
export const writingWithin = (
	texts: readonly string[],
	outline: Path,
	around: readonly Path[]
): readonly Words[] => {
	const name = texts.slice(0, 1);
	const whole = writingIn(texts, outline, around) ?? writingIn(name, outline, around);
	if (whole) return whole;
	const bounds = boundsOf([outline]);
	const { left, top, right, bottom } = bounds;
	const centre =
		widest(outline, pathSamples(outline, STEP), placesIn(bounds)) ??
		at((left + right) / 2, (top + bottom) / 2);
	return set(linesOf(name, Infinity), centre, NAME_SIZES[2], bottom - top > right - left);
};
