import { mm, px, type Px } from '#shared/units.ts';
import type { Bounds } from '#geometry/path.ts';
import type { ScreenPoint, ScreenSize, SheetView } from '#ui/drawing/view.ts';

/** How much of the sheet's shorter side an inset takes, and how small and large it may be, in pixels. */
const [SHARE, LEAST, MOST] = [0.5, 96, 240];
/** Pixels that it keeps from the sheet's edges and rulers. */
const [EDGE, RULER] = [8, 26];
/** Pixels within it that are left for names. */
const ROOM = 18;

/** How wide and high an inset of a sheet is. */
export const insetSide = ({ width, height }: ScreenSize): Px =>
	px(Math.round(Math.min(MOST, Math.max(LEAST, SHARE * Math.min(width, height)))));

/** The view that shows `bounds` in the middle of an inset, as large as it can be. */
export const insetView = ({ left, top, right, bottom }: Bounds, side: Px): SheetView => {
	const scale = (side - 2 * ROOM) / Math.max(right - left, bottom - top);
	const half = side / scale / 2;
	return { scale, left: mm((left + right) / 2 - half), top: mm((top + bottom) / 2 - half) };
};

/** How many of some places an inset in a corner hides. */
export const hiddenBy = ({ left, top }: ScreenPoint, side: Px, places: readonly ScreenPoint[]): number =>
	places.filter(
		(each) =>
			each.left > left - EDGE &&
			each.left < left + side + EDGE &&
			each.top > top - EDGE &&
			each.top < top + side + EDGE
	).length;

/** The corner of the sheet in which an inset hides the fewest of some places; of those that hide as few, the one furthest from the first place. */
export const insetCorner = (
	{ width, height }: ScreenSize,
	side: Px,
	places: readonly ScreenPoint[]
): ScreenPoint => {
	const [right, bottom] = [px(width - side - EDGE), px(height - side - EDGE)];
	const corners = [right, px(RULER)].flatMap((left) =>
		[bottom, px(RULER)].map((top): ScreenPoint => ({ left, top }))
	);
	const [first] = places;
	const away = ({ left, top }: ScreenPoint): number =>
		first ? Math.hypot(left + side / 2 - first.left, top + side / 2 - first.top) : 0;
	const [best = { left: right, top: bottom }] = corners.toSorted(
		(a, b) => hiddenBy(a, side, places) - hiddenBy(b, side, places) || away(b) - away(a)
	);
	return best;
};
