import { mm, type Mm } from '#shared/units.ts';
import { bulges } from './flatness.ts';
import { slopes } from './least-squares.ts';
import type { PicturePoint } from './picture.ts';
import type { Rectified } from './rectify.ts';
import { standingOf } from './standing.ts';
import { toSheet } from './view.ts';

/** How flat paper that was smoothed by hand lies, one standard deviation. Assumption: a sheet whose highest place stands 3 mm up is 1.5 mm off on the average. */
const USUAL_HEIGHT: Mm = mm(1.2);
/** How much higher paper stands at most places than its markers' own heights tell: they lie where it is flattest. Measured on bulging sheets (npm run measure:bulge). */
const HIGHER_BETWEEN = 2;
/** How far from a point it is tapped, along one axis, in pixels. Assumption: a loupe shows each pixel, and a pencil line is two wide. */
export const TAPPED = 1;
/** The same where the crossing of two lines was found. */
export const CROSSED = 0.3;

/** How high the paper may stand, one standard deviation. */
const heightOf = ({ flatness }: Rectified): Mm =>
	mm(bulges(flatness) ? Math.max(USUAL_HEIGHT, flatness.height * HIGHER_BETWEEN) : USUAL_HEIGHT);

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
