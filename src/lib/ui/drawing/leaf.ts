import { mm, px, type Mm } from '#shared/units.ts';
import type { Bounds } from '#geometry/path.ts';
import type { ScreenSize, SheetView } from './view.ts';

/** A figure's size on the screen, and what of the sheet it shows. */
export interface Leaf {
	readonly size: ScreenSize;
	readonly view: SheetView;
}

/** Pixels beside the centre line, and at the other edges: room for the names of points that lie there. */
const BESIDE = 44;
const MARGIN = 34;
/** How tall a figure may be for its room's width: more would not fit a small screen. */
const TALLEST = 1.7;
/** The least of the sheet that is shown, so that a single point is not shown as large as a draft. */
const LEAST: Mm = mm(80);

/** The leaf that shows `bounds` in a room so many pixels wide, as large as it can be; a tall draft makes it narrower than its room. */
export const leafFor = (bounds: Bounds, room: number): Leaf => {
	const across = Math.max(LEAST, bounds.right - bounds.left);
	const down = Math.max(LEAST, bounds.bottom - bounds.top);
	const scale = Math.min((room - BESIDE - MARGIN) / across, (room * TALLEST - 2 * MARGIN) / down);
	return {
		size: {
			width: px(Math.round(across * scale + BESIDE + MARGIN)),
			height: px(Math.round(down * scale + 2 * MARGIN))
		},
		view: { scale, left: mm(bounds.left - BESIDE / scale), top: mm(bounds.top - MARGIN / scale) }
	};
};
