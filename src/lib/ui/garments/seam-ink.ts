import { mm, px, type Px } from '#shared/units.ts';
import type { LaidNotch, SewnEnd } from '#garment/edge-to-edge.ts';
import { toScreen, type SheetView } from '#ui/drawing/view.ts';

/** Pixels: how far a notch runs into its piece, and how far the two strokes of a double one lie apart. */
const INTO = 11;
const APART = 5;

/** A notch as strokes that run from the seam into the piece, so that those of the two sides are seen to meet. */
export const notchTicks = (view: SheetView, { at, inward, style }: LaidNotch): string => {
	const { left, top } = toScreen(view, at);
	const shifts = style === 'double' ? [-APART / 2, APART / 2] : [0];
	return shifts
		.map((by) => {
			const [x, y] = [left - inward.dy * by, top + inward.dx * by];
			return `M${x.toFixed(1)} ${y.toFixed(1)}l${(inward.dx * INTO).toFixed(1)} ${(inward.dy * INTO).toFixed(1)}`;
		})
		.join('');
};

/** Pixels to the millimetre in the picture of a seam's end: a corner of five degrees is seen, and a hand's breadth shown. */
const END_SCALE = 1.1;

/** A round picture of a seam's end, so many pixels across, with the end in its middle. */
export const endView = ({ at }: Pick<SewnEnd, 'at'>, across: Px): SheetView => {
	const half = px(across / 2) / END_SCALE;
	return { scale: END_SCALE, left: mm(at.x - half), top: mm(at.y - half) };
};
