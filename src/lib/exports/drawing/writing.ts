import { mm, radians, type Mm } from '#shared/units.ts';
import { boundsOf, pathSamples, type Path } from '#geometry/path.ts';
import { at, type SheetPoint } from '#geometry/point.ts';
import type { Words } from './drawing.ts';

/** Heights of writing: the first line, and all others. */
const NAME_SIZE: Mm = mm(6);
const TEXT_SIZE: Mm = mm(3.6);
/** Writing lines stand this much of their height apart. */
const LEADING = 1.5;
/** Width of an average letter in shares of its height. */
const LETTER = 0.5;
/** The longest line, in letters, before it is broken. */
const LONGEST = 34;
/** Smaller and smaller writing is tried where it does not fit; below this it could not be read on paper. */
const SIZES = [1, 0.8, 0.6] as const;
/** Places tried across and down a piece. */
const TRIES = 9;
/** Air round the writing. */
const AIR = 3;

/** A text broken between words. */
const broken = (text: string): readonly string[] => {
	const lines: string[] = [];
	for (const word of text.split(' ')) {
		const last = lines.at(-1);
		if (last !== undefined && `${last} ${word}`.length <= LONGEST)
			lines[lines.length - 1] = `${last} ${word}`;
		else lines.push(word);
	}
	return lines;
};

const sizeOf = (line: number, share: number): number => (line === 0 ? NAME_SIZE : TEXT_SIZE) * share;

/** Half the width and half the height of a block of lines. */
const halves = (lines: readonly string[], share: number): readonly [number, number] => {
	const widths = lines.map((text, i) => text.length * sizeOf(i, share) * LETTER);
	const height = lines.reduce((sum, _, i) => sum + sizeOf(i, share) * LEADING, 0);
	return [Math.max(...widths) / 2 + AIR, height / 2 + AIR];
};

/** Whether a place lies within a closed ring of chords (by counting how many lie to its right). */
const within = (ring: readonly SheetPoint[], { x, y }: SheetPoint): boolean => {
	let inside = false;
	ring.forEach((a, i) => {
		const b = ring.at(i - 1) ?? a;
		if (a.y > y !== b.y > y && x < a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x)) inside = !inside;
	});
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

/** Whether any of some lines comes into a turned rectangle. */
const crossed = (
	lines: readonly Path[],
	centre: SheetPoint,
	half: readonly [number, number],
	upright: boolean
): boolean => {
	const [dx, dy] = upright ? [half[1], half[0]] : half;
	return lines.some((line) =>
		line.some((segment) => {
			const steps = 40;
			return Array.from({ length: steps + 1 }, (_, i) => i / steps).some((t) => {
				const x = segment.from.x + (segment.to.x - segment.from.x) * t;
				const y = segment.from.y + (segment.to.y - segment.from.y) * t;
				return Math.abs(x - centre.x) < dx && Math.abs(y - centre.y) < dy;
			});
		})
	);
};

/** The lines set about a place, one under the other; upright, they read from below. */
const set = (
	lines: readonly string[],
	centre: SheetPoint,
	share: number,
	upright: boolean
): readonly Words[] => {
	const height = lines.reduce((sum, _, i) => sum + sizeOf(i, share) * LEADING, 0);
	let down = -height / 2;
	return lines.map((text, i) => {
		const size = sizeOf(i, share);
		down += size * LEADING;
		const base = down - size * (LEADING - 1) * 0.6;
		const place = upright ? at(centre.x + base, centre.y) : at(centre.x, centre.y + base);
		return { text, at: place, middle: true, size: mm(size), turn: radians(upright ? -Math.PI / 2 : 0) };
	});
};

/**
 * Lines of writing within a piece, clear of the lines that are drawn in it: as large as they fit, level or else upright,
 * near the middle; the first line alone where there is no room for all.
 */
export const writingWithin = (
	texts: readonly string[],
	outline: Path,
	around: readonly Path[]
): readonly Words[] => {
	const ring = pathSamples(outline, mm(4));
	const { left, top, right, bottom } = boundsOf([outline]);
	const middle = at((left + right) / 2, (top + bottom) / 2);
	const places = Array.from({ length: TRIES * TRIES }, (_, i) =>
		at(
			left + ((right - left) * ((i % TRIES) + 1)) / (TRIES + 1),
			top + ((bottom - top) * (Math.floor(i / TRIES) + 1)) / (TRIES + 1)
		)
	).sort((a, b) => Math.hypot(a.x - middle.x, a.y - middle.y) - Math.hypot(b.x - middle.x, b.y - middle.y));
	for (const lines of [texts.flatMap(broken), texts.slice(0, 1).flatMap(broken)]) {
		for (const share of SIZES) {
			const half = halves(lines, share);
			for (const upright of [false, true]) {
				const free = places.find(
					(centre) =>
						rim(centre, half, upright).every((place) => within(ring, place)) &&
						!crossed(around, centre, half, upright)
				);
				if (free) return set(lines, free, share, upright);
			}
		}
	}
	return set(texts.slice(0, 1), middle, SIZES[2], bottom - top > right - left);
};
