import { mm, type Mm } from '#shared/units.ts';
import { at, type SheetPoint } from '#geometry/point.ts';
import { slopes } from './least-squares.ts';
import type { PicturePoint } from './picture.ts';
import type { Rectified } from './rectify.ts';
import { toSheet, type View } from './view.ts';

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

/** How flat paper that was smoothed by hand lies, one standard deviation. Assumption: a sheet whose highest place stands 3 mm up is 1.5 mm off on the average. */
const USUAL_HEIGHT: Mm = mm(1.2);
/** How much higher the paper stands than its markers are found beside their places: measured on bulging sheets (npm run measure:photograph). */
const HEIGHT_PER_RESIDUAL = 20;
/** Above this strain the paper is taken not to be flat. */
export const STRAINED = 1.6;
/** How far from a point it is tapped, along one axis, in pixels. Assumption: a loupe shows each pixel, and a pencil line is two wide. */
export const TAPPED = 1;
/** The same where the crossing of two lines was found. */
export const CROSSED = 0.3;

/** How high the paper may stand, one standard deviation. */
const heightOf = ({ strain, residual }: Rectified): Mm =>
	mm(strain > STRAINED ? Math.max(USUAL_HEIGHT, residual * HEIGHT_PER_RESIDUAL) : USUAL_HEIGHT);

/** Standard deviations that hold 95 of 100: along one axis, and what the second adds, so that a circle comes out at 2.45. */
const [ALONG, BESIDE] = [1.96, 0.56];

/**
 * How far a place on the sheet may lie from where a picture says that it is: the radius that holds 95 of 100. It is made of
 * tapping, of what is not known of the view, and of paper that stands up from the table, all taken to be independent.
 */
export const errorOf = (read: Rectified, place: PicturePoint, tapped: number = TAPPED): Mm => {
	const { view } = read;
	const here = toSheet(view, place);
	const [x = [], y = []] = slopes(
		([u = 0, v = 0]) => {
			const moved = toSheet(view, { u: place.u + u * 1e3, v: place.v + v * 1e3 });
			return [moved.x / 1e3, moved.y / 1e3];
		},
		[0, 0]
	);
	const [ux = 0, vx = 0] = x;
	const [uy = 0, vy = 0] = y;
	const { foot, high } = standingOf(view);
	const up = heightOf(read);
	const [bx, by] = [((here.x - foot.x) / high) * up, ((here.y - foot.y) / high) * up];
	const [vxx, vxy, vyy] = read.errorAt(place);
	const xx = (ux * ux + vx * vx) * tapped ** 2 + vxx + bx * bx;
	const xy = (ux * uy + vx * vy) * tapped ** 2 + vxy + bx * by;
	const yy = (uy * uy + vy * vy) * tapped ** 2 + vyy + by * by;
	const mean = (xx + yy) / 2;
	const apart = Math.hypot((xx - yy) / 2, xy);
	return mm(ALONG * Math.sqrt(mean + apart + BESIDE * Math.max(0, mean - apart)));
};
