import { mm, type Mm } from '#shared/units.ts';
import type { Speech } from '#shared/speech/speech.ts';
import { boundsOf, polyline, type Bounds } from '#geometry/path.ts';
import { at, type SheetPoint } from '#geometry/point.ts';
import { CHECK_LINE, WORKSHEET_IDS, WORKSHEET_MARKER } from '#photograph/marker-places.ts';
import { CELLS_ACROSS, whiteCells } from '#photograph/markers.ts';
import { planPages } from '../sheets/page-plan.ts';
import { OVERLAP, type Paper } from '../sheets/tiles.ts';
import type { Drawing, Stroke } from './drawing.ts';
import { writtenAt } from './grid-drawing.ts';

/** White about a marker: without it its border is not seen. A cell of it, as its family asks. */
const QUIET = WORKSHEET_MARKER / CELLS_ACROSS;
/** White between a joint and a marker after it: the strip that is laid over the page before has the joint's own marks. */
const PAST_JOINT = OVERLAP + QUIET;
/** How far outside the grid markers begin: clear of its numbers and its words, and below it of the check line. */
const [BESIDE, ABOVE, BELOW] = [14, 15, 21];
/** Where the check line lies below the grid, and its words below it. */
const [CHECK_DOWN, CHECK_WORDS] = [9, 6];
const CHECK_SIZE: Mm = mm(2.8);

/** The check line, as long as it is asked for where a picture is taken, with a tick at each end. */
const checkLine = ({ left, bottom }: Bounds, { words: { markers } }: Speech): Omit<Drawing, 'name'> => {
	const [y, right] = [bottom + CHECK_DOWN, left + CHECK_LINE.worksheet];
	const tick = (x: number): Stroke => ({ kind: 'line', path: polyline(at(x, y - 2), at(x, y + 2)) });
	return {
		strokes: [{ kind: 'line', path: polyline(at(left, y), at(right, y)) }, tick(left), tick(right)],
		words: [writtenAt(markers.check({ length: CHECK_LINE.worksheet }), at(left, y + CHECK_WORDS), CHECK_SIZE)]
	};
};

/** Whether a marker that begins here, with its white, is clear of all joints. */
const whole = (from: number, joints: readonly number[]): boolean =>
	joints.every((joint) => joint <= from - PAST_JOINT || joint >= from + WORKSHEET_MARKER + QUIET);

/** Where along a side a marker is whole, nearest to where it is wanted, between two ends. */
const slid = (
	wanted: number,
	[least, most]: readonly [number, number],
	joints: readonly number[]
): number => {
	const beside = joints.flatMap((joint) => [joint + PAST_JOINT, joint - QUIET - WORKSHEET_MARKER]);
	const free = [wanted, ...beside].filter((each) => each >= least && each <= most && whole(each, joints));
	return free.sort((a, b) => Math.abs(a - wanted) - Math.abs(b - wanted))[0] ?? wanted;
};

/** Where beyond a side a marker is whole, as near to it as can be. */
const pushed = (from: number, joints: readonly number[]): number =>
	[from, ...joints.map((joint) => joint + PAST_JOINT)]
		.filter((each) => each >= from && whole(each, joints))
		.sort((a, b) => a - b)[0] ?? from;

/** The lines at which pages are joined: what lies across one is cut. */
interface Joints {
	readonly x: readonly number[];
	readonly y: readonly number[];
}

/** Three along each of two opposite sides: the upright ones, or the level ones. */
const placesAlong = (upright: boolean, edges: Bounds, joints: Joints): readonly SheetPoint[] => {
	const [across, along] = upright ? [joints.x, joints.y] : [joints.y, joints.x];
	const [first, last] = upright ? [edges.left, edges.right] : [edges.top, edges.bottom];
	const [from, to] = upright ? [edges.top, edges.bottom] : [edges.left, edges.right];
	const [before, after] = upright ? [BESIDE, BESIDE] : [ABOVE, BELOW];
	const ends = [from, to - WORKSHEET_MARKER] as const;
	const places = [ends[0], ends[1], (ends[0] + ends[1]) / 2].map((wanted) => slid(wanted, ends, along));
	const sides = [first - before - WORKSHEET_MARKER, pushed(last + after, across)];
	return places.flatMap((place) => sides.map((side) => (upright ? at(side, place) : at(place, side))));
};

const withMarkers = (grid: Drawing, places: readonly SheetPoint[]): Drawing => ({
	...grid,
	markers: places.flatMap((place, i) => {
		const id = WORKSHEET_IDS[i];
		return id === undefined ? [] : [{ at: place, side: WORKSHEET_MARKER, white: whiteCells(id) }];
	})
});

/**
 * A full-size grid with its check line and, clear of it, markers by which a photograph of it is read: at the ends and in the middle of
 * two opposite sides, the pair that takes fewer pages. None lies across the joint of two pages, where taping would bend it.
 */
export const withWorksheetMarkers = (grid: Drawing, speech: Speech, paper: Paper): Drawing => {
	const edges = boundsOf(grid.strokes.map(({ path }) => path));
	const check = checkLine(edges, speech);
	const base = {
		...grid,
		strokes: [...grid.strokes, ...check.strokes],
		words: [...grid.words, ...check.words]
	};
	const laid = [true, false].map((upright) => {
		// Markers before a side say where the first page begins, and so where pages are joined.
		const { every } = planPages([withMarkers(base, placesAlong(upright, edges, { x: [], y: [] }))], paper);
		const starts = (of: (tile: (typeof every)[number]) => number): readonly number[] =>
			[...new Set(every.map(of))].sort((a, b) => a - b).slice(1);
		const joints = { x: starts(({ left }) => left), y: starts(({ top }) => top) };
		const drawing = withMarkers(base, placesAlong(upright, edges, joints));
		return { drawing, pages: planPages([drawing], paper).tiles.length };
	});
	const [sides, ends] = laid;
	return ends && sides && ends.pages < sides.pages ? ends.drawing : (sides?.drawing ?? grid);
};
