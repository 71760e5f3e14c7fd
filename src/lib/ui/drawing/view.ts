import { mm, px, type Mm, type Px } from '#shared/units.ts';
import { at, type SheetPoint } from '#geometry/point.ts';

/** A place on the screen, in CSS pixels from the drawing's own corner. Never to be mixed with a SheetPoint. */
export interface ScreenPoint {
	readonly left: Px;
	readonly top: Px;
}

/** What part of the sheet is seen: the sheet's place at the drawing's corner, and pixels to the millimetre. */
export interface SheetView {
	readonly left: Mm;
	readonly top: Mm;
	readonly scale: number;
}

/** The drawing's size on the screen. */
export interface ScreenSize {
	readonly width: Px;
	readonly height: Px;
}

/** Zoom limits, in pixels to the millimetre: a whole dress on a phone, and a tenth of a millimetre as wide as a pencil line. */
const LEAST_SCALE = 0.15;
const MOST_SCALE = 30;

const limited = (scale: number): number => Math.min(MOST_SCALE, Math.max(LEAST_SCALE, scale));

/** Where a place of the sheet is seen. */
export const toScreen = (view: SheetView, point: SheetPoint): ScreenPoint => ({
	left: px((point.x - view.left) * view.scale),
	top: px((point.y - view.top) * view.scale)
});

/** The place of the sheet under a place on the screen. */
export const toSheet = (view: SheetView, screen: ScreenPoint): SheetPoint =>
	at(view.left + screen.left / view.scale, view.top + screen.top / view.scale);

/** The view moved so that the paper follows a drag of so many pixels. */
export const panned = (view: SheetView, right: number, down: number): SheetView => ({
	...view,
	left: mm(view.left - right / view.scale),
	top: mm(view.top - down / view.scale)
});

/** The view zoomed about a place on the screen, which stays where it is. */
export const zoomed = (view: SheetView, factor: number, about: ScreenPoint): SheetView => {
	const fixed = toSheet(view, about);
	const scale = limited(view.scale * factor);
	return { scale, left: mm(fixed.x - about.left / scale), top: mm(fixed.y - about.top / scale) };
};
