import { movedBy, type Motion } from '#geometry/motion.ts';
import { pathStart, type Path } from '#geometry/path.ts';
import { segmentLength, segmentPoint } from '#geometry/segment.ts';
import type { PicturePoint } from './picture.ts';
import { toPicture, type View } from './view.ts';

/** How far apart the places of a line are that are seen one by one, in millimetres: a lens bends what lies between two by less than a tenth of a pixel. */
const APART = 15;

/** How a line of the draft is seen in a picture: as places in turn. `motion` puts the draft where it lies on the sheet. */
export const pathSeen = (view: View, path: Path, motion: Motion): readonly PicturePoint[] => {
	const places = [pathStart(path)];
	for (const segment of path) {
		const parts = Math.max(1, Math.ceil(segmentLength(segment) / APART));
		for (let i = 1; i <= parts; i++) places.push(segmentPoint(segment, i / parts));
	}
	return places.map((place) => toPicture(view, movedBy(motion, place)));
};
