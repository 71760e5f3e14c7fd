import { mm, type Mm } from '#shared/units.ts';
import { at, type SheetPoint } from '#geometry/point.ts';
import type { View } from './view.ts';

/** Where a camera stands over the sheet: the place right below it, and how high. */
export interface Standing {
	readonly foot: SheetPoint;
	readonly high: Mm;
}

/**
 * The focal length of a telephone's main camera in half diagonals of its picture: 26 mm, in the terms of a film whose half
 * diagonal is 21.6 mm. What is seen through a longer lens stands further away, and bulging paper then moves less than is said here.
 */
const FOCAL = 26 / 21.63;

/** Where the camera stands, from how it sees the sheet (Hartley and Zisserman 2004, 8.1.1), for the usual lens. */
export const standingOf = ({ plane, width, height }: View): Standing => {
	const focal = (FOCAL * Math.hypot(width, height)) / 2;
	const column = (i: number): readonly [number, number, number] => {
		const [a = 0, b = 0, c = 0] = [plane[i], plane[i + 3], plane[i + 6]];
		return [(a - (width / 2) * c) / focal, (b - (height / 2) * c) / focal, c];
	};
	const dot = (a: readonly number[], b: readonly number[]): number =>
		a.reduce((sum, each, i) => sum + each * (b[i] ?? 0), 0);
	const [first, second, third] = [column(0), column(1), column(2)];
	const size = Math.sqrt(Math.hypot(...first) * Math.hypot(...second));
	const [x, y] = [-dot(first, third) / size ** 2, -dot(second, third) / size ** 2];
	return { foot: at(x, y), high: mm(Math.sqrt(Math.max(1, dot(third, third) / size ** 2 - x * x - y * y))) };
};
