import type { Bounds } from './path.ts';
import type { SheetPoint } from './point.ts';

/** How far a place lies from a straight chord. */
export const chordDistance = (from: SheetPoint, to: SheetPoint, { x, y }: SheetPoint): number => {
	const [dx, dy] = [to.x - from.x, to.y - from.y];
	const square = dx * dx + dy * dy;
	const share = square === 0 ? 0 : ((x - from.x) * dx + (y - from.y) * dy) / square;
	const near = Math.min(1, Math.max(0, share));
	return Math.hypot(from.x + near * dx - x, from.y + near * dy - y);
};

/** Whether a straight chord comes into a rectangle, its rim included: clipped by one pair of sides after the other. */
export const chordMeets = (
	from: SheetPoint,
	to: SheetPoint,
	{ left, top, right, bottom }: Bounds
): boolean => {
	// Most chords lie wholly to one side, and thousands are asked about.
	if ((from.x < left && to.x < left) || (from.x > right && to.x > right)) return false;
	if ((from.y < top && to.y < top) || (from.y > bottom && to.y > bottom)) return false;
	let [enter, leave] = [0, 1];
	const sides: readonly (readonly [start: number, way: number, least: number, most: number])[] = [
		[from.x, to.x - from.x, left, right],
		[from.y, to.y - from.y, top, bottom]
	];
	for (const [start, way, least, most] of sides) {
		if (way === 0) {
			if (start < least || start > most) return false;
			continue;
		}
		const [a, b] = [(least - start) / way, (most - start) / way];
		enter = Math.max(enter, Math.min(a, b));
		leave = Math.min(leave, Math.max(a, b));
	}
	return enter <= leave;
};
