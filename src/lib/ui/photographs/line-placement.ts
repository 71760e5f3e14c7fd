import type { LinePlacement } from '#shared/placement.ts';
import type { Mm } from '#shared/units.ts';
import { movedBy, type Motion } from '#geometry/motion.ts';
import type { Path } from '#geometry/path.ts';
import type { SheetPoint } from '#geometry/point.ts';
import type { PicturePoint } from '#photograph/picture.ts';
import type { Rectified } from '#photograph/rectify.ts';
import { errorOf } from '#photograph/sureness.ts';
import { lineThrough } from '#photograph/tapped-line.ts';
import { toSheet } from '#photograph/view.ts';

/** The fewest places that tell of a curve: its ends and three between. */
const FEWEST = 5;
/** A placement holds as many segments as this, one less than places. */
export const MOST = 20;

const place = ({ x, y }: SheetPoint): [number, number] => [
	Math.round(x * 1e4) / 1e4,
	Math.round(y * 1e4) / 1e4
];

/** The line on the draft through places that were tapped in a picture; undefined while there are too few. */
export const tappedPath = (
	places: readonly PicturePoint[],
	read: Rectified | undefined,
	motion: Motion | undefined
): Path | undefined => {
	if (!read || !motion || places.length < FEWEST) return undefined;
	const [first, second, ...rest] = places.map((each) => movedBy(motion, toSheet(read.view, each)));
	return first && second && lineThrough(first, second, ...rest);
};

/** The same as it is judged, with the largest of the places' errors, and with that of how the whole was laid. */
export const linePlacement = (
	places: readonly PicturePoint[],
	read: Rectified | undefined,
	motion: Motion | undefined,
	together: Mm
): LinePlacement | undefined => {
	const path = tappedPath(places, read, motion);
	if (!path || !read) return undefined;
	return {
		kind: 'line',
		error: Math.hypot(together, Math.max(...places.map((each) => errorOf(read, each)))),
		segments: path.map((segment) =>
			segment.kind === 'straight'
				? { from: place(segment.from), to: place(segment.to) }
				: {
						from: place(segment.from),
						leaving: place(segment.leaving),
						arriving: place(segment.arriving),
						to: place(segment.to)
					}
		)
	};
};
