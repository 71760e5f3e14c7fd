import { mm, type Mm } from '#shared/units.ts';
import { shifting } from '#geometry/motion.ts';
import { at } from '#geometry/point.ts';
import { drawingBounds, drawingMoved, type Drawing } from './drawing.ts';

/** Room between two pieces on the paper. */
const APART: Mm = mm(8);

interface Room {
	readonly drawing: Drawing;
	readonly width: number;
	readonly height: number;
	readonly left: number;
	readonly top: number;
}

/** A rectangle of paper that is still free. */
interface Free {
	readonly x: number;
	readonly y: number;
	readonly width: number;
}

/** The lowest place along the skyline where a width fits: the free paper begins at `y` there. */
const placeOn = (
	skyline: readonly Free[],
	width: number,
	whole: number
): { x: number; y: number } | undefined => {
	let best: { x: number; y: number } | undefined;
	for (const { x } of skyline) {
		if (x + width > whole + 1e-6) continue;
		const y = Math.max(
			...skyline.filter((each) => each.x < x + width && each.x + each.width > x).map((each) => each.y)
		);
		if (!best || y < best.y - 1e-6) best = { x, y };
	}
	return best;
};

/** The skyline after a rectangle was set on it. */
const raised = (skyline: readonly Free[], x: number, width: number, y: number): readonly Free[] => {
	const cut = skyline.flatMap((each): Free[] => {
		const end = each.x + each.width;
		const parts: Free[] = [];
		if (each.x < x) parts.push({ ...each, width: Math.min(end, x) - each.x });
		if (end > x + width)
			parts.push({ ...each, x: Math.max(each.x, x + width), width: end - Math.max(each.x, x + width) });
		return parts;
	});
	return [...cut, { x, y, width }].sort((a, b) => a.x - b.x);
};

/**
 * Drawings laid out on paper so wide, close together and clear of each other, the tallest first, each as high up as
 * it fits; none is turned, so that every grain runs down the paper. One wider than the paper stands by itself.
 * The paper's upper left corner is (0, 0).
 */
export const arranged = (drawings: readonly Drawing[], width: Mm): readonly Drawing[] => {
	const rooms = drawings.map((drawing): Room => {
		const { left, top, right, bottom } = drawingBounds(drawing);
		return { drawing, left, top, width: right - left + APART, height: bottom - top + APART };
	});
	const whole = Math.max(width + APART, ...rooms.map((each) => each.width));
	let skyline: readonly Free[] = [{ x: 0, y: 0, width: whole }];
	const placed = new Map<Drawing, Drawing>();
	for (const room of [...rooms].sort((a, b) => b.height - a.height)) {
		const { x, y } = placeOn(skyline, room.width, whole) ?? {
			x: 0,
			y: Math.max(...skyline.map((each) => each.y))
		};
		skyline = raised(skyline, x, room.width, y + room.height);
		placed.set(room.drawing, drawingMoved(room.drawing, shifting(at(room.left, room.top), at(x, y))));
	}
	return drawings.flatMap((drawing) => placed.get(drawing) ?? []);
};
