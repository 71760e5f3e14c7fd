import { at, distance, type SheetPoint } from '#geometry/point.ts';

/** Distances do not say how the whole is turned: it is laid so that the points that show the sheet's directions lie as they should. */

const angleOf = (from: SheetPoint, to: SheetPoint): number => Math.atan2(to.y - from.y, to.x - from.x);

/** An angle as the turn nearest to none. */
const nearNone = (angle: number): number => Math.atan2(Math.sin(angle), Math.cos(angle));

/** How far beside the way a point may lie, in mm, that still shows it: about what a slip of the hand is. */
const AGREES = 4;

/** How the whole is turned, and the point that says so. */
export interface Turn {
	readonly angle: number;
	readonly axis: number;
}

/**
 * By how much the places must be turned about the origin. Each point that shows a direction has a say, the more the further it
 * lies; it is the middle one that counts, so that one that was put wrong turns nothing.
 */
export const turnOf = (
	places: readonly SheetPoint[],
	should: readonly SheetPoint[],
	origin: number,
	showing: readonly number[]
): Turn => {
	const [o, right] = [places[origin], should[origin]];
	const says = showing.flatMap((axis) => {
		const [place, wanted] = [places[axis], should[axis]];
		if (axis === origin || !o || !right || !place || !wanted) return [];
		return [
			{ axis, angle: nearNone(angleOf(right, wanted) - angleOf(o, place)), weight: distance(right, wanted) }
		];
	});
	const sorted = says.toSorted((a, b) => a.angle - b.angle);
	const half = says.reduce((sum, { weight }) => sum + weight, 0) / 2;
	let before = 0;
	const middle = sorted.find(({ weight }) => (before += weight) >= half);
	if (!middle) return { angle: 0, axis: -1 };
	// Of those that agree with it the furthest shows the direction best.
	const agree = says.filter(
		({ angle, weight }) => Math.abs(nearNone(angle - middle.angle)) * weight <= AGREES
	);
	return agree.reduce((far, each) => (each.weight > far.weight ? each : far), middle);
};

/** The places turned about the origin, which lies where it should. */
export const turned = (
	places: readonly SheetPoint[],
	angle: number,
	origin: number,
	right: SheetPoint
): readonly SheetPoint[] => {
	const [o, cos, sin] = [places[origin] ?? right, Math.cos(angle), Math.sin(angle)];
	return places.map(({ x, y }) =>
		at(right.x + cos * (x - o.x) - sin * (y - o.y), right.y + sin * (x - o.x) + cos * (y - o.y))
	);
};
