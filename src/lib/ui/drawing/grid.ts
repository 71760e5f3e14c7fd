import { mm, MM_PER, printNumber, type Mm } from '#shared/units.ts';
import { at, type SheetPoint } from '#geometry/point.ts';
import type { ScreenUnit } from '#ui/keeping/learner.svelte.ts';

const inches = (value: number): Mm => mm(value * MM_PER.in);

/** The steps in which each unit's grid may be drawn, finest first; each is a whole number of every finer one that divides it. */
const LADDERS: Readonly<Record<ScreenUnit, readonly Mm[]>> = {
	cm: [0.1, 0.5, 1, 5, 10, 50, 100, 500].map(mm),
	in: [1 / 64, 1 / 32, 1 / 16, 1 / 8, 1 / 4, 1 / 2, 1, 6, 12].map(inches)
};

/** The snaps that a learner may choose. */
export const SNAPS: Readonly<Record<ScreenUnit, readonly Mm[]>> = {
	cm: [0.1, 0.5, 1, 5, 10].map(mm),
	in: [1 / 64, 1 / 32, 1 / 16, 1 / 8, 1 / 4].map(inches)
};

/** Steps of the arrow keys: plain, with Shift, with Alt. */
export const KEY_STEPS: Readonly<Record<ScreenUnit, Readonly<Record<'plain' | 'shift' | 'alt', Mm>>>> = {
	cm: { plain: mm(1), shift: mm(10), alt: mm(0.1) },
	in: { plain: inches(1 / 16), shift: inches(1), alt: inches(1 / 64) }
};

/** Pixels that two neighbouring dots, or lines, must lie apart to be told apart. */
const DOT_GAP = 5;
const LINE_GAP = 34;

/** The grid that is drawn: dots and lines, in millimetres apart. */
export interface Grid {
	readonly dots: Mm;
	readonly lines: Mm;
}

const finest = (ladder: readonly Mm[], least: number): Mm =>
	ladder.find((step) => step >= least) ?? ladder.at(-1) ?? mm(500);

/**
 * The grid for a zoom. The drawn grid is the snap grid, or, where that is too fine to be seen, the
 * finest multiple of it that is.
 */
export const gridFor = (unit: ScreenUnit, snap: Mm, scale: number): Grid => {
	const ladder = LADDERS[unit].filter((step) => step >= snap - 1e-9);
	return { dots: finest(ladder, DOT_GAP / scale), lines: finest(ladder, LINE_GAP / scale) };
};

/** The grid point nearest to a place. */
export const snapped = (point: SheetPoint, snap: Mm): SheetPoint =>
	at(Math.round(point.x / snap) * snap, Math.round(point.y / snap) * snap);

/** A mark on a ruler: where, and its number where it carries one. */
export interface RulerMark {
	readonly at: Mm;
	readonly label: string | undefined;
}

/** The marks of a ruler between two lengths: one every `dots`, or where those are more than ten to a line, fewer of them; numbered at every `lines`. */
export const rulerMarks = (from: Mm, to: Mm, grid: Grid, unit: ScreenUnit): readonly RulerMark[] => {
	const marks: RulerMark[] = [];
	const tick = finest(LADDERS[unit], Math.max(grid.dots, grid.lines / 10) - 1e-9);
	for (let i = Math.ceil(from / tick); i * tick <= to; i++) {
		const place = mm(i * tick);
		const share = place / grid.lines;
		const numbered = Math.abs(share - Math.round(share)) < 1e-6;
		marks.push({ at: place, label: numbered ? printNumber(place, unit) : undefined });
	}
	return marks;
};
