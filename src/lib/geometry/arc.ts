import { mm, radians, type Radians } from '#shared/units.ts';
import { movedBy, turning } from './motion.ts';
import type { Path } from './path.ts';
import { directionTo, distance, moved, opposite, squareTo, type SheetPoint } from './point.ts';
import { cubic, straight, type Segment } from './segment.ts';

/**
 * The widest part of a circle that is drawn as one cubic, a sixteenth. A cubic for an angle strays outward by
 * 2 sin^6(angle / 4) / 27 cos^2(angle / 4) of the radius, which is 0.000000066 of it here, and five times that for a twelfth.
 */
const WIDEST: Radians = radians(Math.PI / 8);

/**
 * The part of a circle about `centre` that starts at `from` and goes through an angle: positive turns x toward y,
 * which is clockwise as the sheet is seen, and more than a full turn goes round again. It strays from the circle by
 * less than a ten-millionth of its radius, so by less than 0.0001 mm at a metre. A radius or an angle of nothing
 * gives a straight piece of no length.
 */
export const arcPath = (centre: SheetPoint, from: SheetPoint, angle: Radians): Path => {
	// A quarter turn is four parts, not five, whatever the last digit of pi / 2.
	const parts = Math.max(1, Math.ceil(Math.abs(angle) / WIDEST - 1e-9));
	const step = radians(angle / parts);
	// With handles of this length a cubic meets the circle at its middle as well as at its ends.
	const handle = mm((4 / 3) * Math.tan(step / 4) * distance(centre, from));
	const place = (index: number): SheetPoint =>
		index === 0 ? from : movedBy(turning(centre, radians(step * index)), from);
	const piece = (index: number): Segment => {
		const [start, end] = [place(index), place(index + 1)];
		const [out, back] = [directionTo(centre, start), directionTo(centre, end)];
		if (!out || !back || angle === 0) return straight(start, end);
		const [leaving, arriving] = [squareTo(out), opposite(squareTo(back))];
		return cubic(start, moved(start, leaving, handle), moved(end, arriving, handle), end);
	};
	return [piece(0), ...Array.from({ length: parts - 1 }, (_, i) => piece(i + 1))];
};
