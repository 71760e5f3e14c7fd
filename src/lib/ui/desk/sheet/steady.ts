import { mm, px, type Mm } from '#shared/units.ts';
import { boundsOf, type Bounds } from '#geometry/path.ts';
import { at, type SheetPoint } from '#geometry/point.ts';
import type { Drafted } from '#drafting/evaluate.ts';
import { toScreen, type ScreenSize, type SheetView } from '#ui/drawing/view.ts';

/** Pixels at each edge of the sheet in which nothing has to be seen: the rulers, and room for names. */
const ROOM = { left: 46, top: 40, right: 26, bottom: 26 } as const;
/** Nearer to an edge than this, or under a ruler, a place does not count as seen. */
const EDGE = 8;
const RULER = 22;
/** A draft is shown out to the next of these, so that its edges do not tell where its outermost points lie. */
const ROUND: Mm = mm(50);
/** The least of the sheet that is shown, so that a learner does not lose the sense of scale. */
const LEAST: Mm = mm(100);

/** What of the sheet a draft needs: all its points and lines, out to whole steps of 5 cm. */
export const wholeOf = ({ points, lines }: Drafted): Bounds => {
	const { left, top, right, bottom } = boundsOf(
		Object.values(lines).map(({ path }) => path),
		[at(0, 0), ...Object.values(points)]
	);
	const out = (value: number): Mm => mm(Math.ceil(value / ROUND) * ROUND);
	return { left: mm(-out(-left)), top: mm(-out(-top)), right: out(right), bottom: out(bottom) };
};

const joined = (bounds: Bounds, places: readonly SheetPoint[]): Bounds => {
	const [a, b] = [at(bounds.left, bounds.top), at(bounds.right, bounds.bottom)];
	return boundsOf([], [a, b, ...places]);
};

/** The view that shows `bounds` in the middle of the sheet, as large as it can be, clear of the rulers. */
export const viewOf = (bounds: Bounds, { width, height }: ScreenSize): SheetView => {
	const [across, down] = [bounds.right - bounds.left, bounds.bottom - bounds.top];
	const [wide, tall] = [width - ROOM.left - ROOM.right, height - ROOM.top - ROOM.bottom];
	const scale = Math.max(0.02, Math.min(wide / Math.max(LEAST, across), tall / Math.max(LEAST, down)));
	return {
		scale,
		left: mm((bounds.left + bounds.right) / 2 - (ROOM.left + wide / 2) / scale),
		top: mm((bounds.top + bounds.bottom) / 2 - (ROOM.top + tall / 2) / scale)
	};
};

/** Whether all of these places are seen in a view, clear of the rulers and the edges. */
export const areSeen = (
	places: readonly SheetPoint[],
	view: SheetView,
	{ width, height }: ScreenSize
): boolean =>
	places.every((place) => {
		const { left, top } = toScreen(view, place);
		return left >= RULER && top >= RULER && left <= px(width - EDGE) && top <= px(height - EDGE);
	});

/** The view that shows `bounds`, widened as far as `places` ask that must be seen as well. */
export const steadied = (bounds: Bounds, size: ScreenSize, places: readonly SheetPoint[]): SheetView => {
	const view = viewOf(bounds, size);
	return areSeen(places, view, size) ? view : viewOf(joined(bounds, places), size);
};
