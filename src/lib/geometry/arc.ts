import { radians, type Radians } from '#shared/units.ts';
import { movedBy, turning } from './motion.ts';
import type { Path } from './path.ts';
import { at, distance, type SheetPoint } from './point.ts';
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
	const radius = distance(centre, from);
	if (radius === 0 || angle === 0) return [straight(from, from)];
	// A quarter turn is four parts, not five, whatever the last digit of pi / 2.
	const parts = Math.max(1, Math.ceil(Math.abs(angle) / WIDEST - 1e-9));
	const step = radians(angle / parts);
	const turned = turning(centre, step);
	// In radii: with handles so long a cubic meets the circle at its middle as well as at its ends.
	const handle = (4 / 3) * Math.tan(step / 4);
	const piece = (start: SheetPoint): Segment => {
		const end = movedBy(turned, start);
		const [x, y] = [start.x - centre.x, start.y - centre.y];
		const [u, v] = [end.x - centre.x, end.y - centre.y];
		return cubic(
			start,
			at(start.x - handle * y, start.y + handle * x),
			at(end.x + handle * v, end.y - handle * u),
			end
		);
	};
	const arc: [Segment, ...Segment[]] = [piece(from)];
	for (let i = 1; i < parts; i++) arc.push(piece(arc[i - 1]?.to ?? from));
	return arc;
};
