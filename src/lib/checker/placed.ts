import type { LinePlacement, Place } from '#shared/placement.ts';
import type { Path } from '#geometry/path.ts';
import { at, type SheetPoint } from '#geometry/point.ts';
import { cubic, straight, type Segment } from '#geometry/segment.ts';

/** A stored place as a point of the sheet. */
export const pointOfPlace = ([x, y]: Place): SheetPoint => at(x, y);

/** A point of the sheet as a stored place. */
export const placeOfPoint = ({ x, y }: SheetPoint): Place => [x, y];

/** The line that a placement describes. */
export const pathOfPlacement = ({ segments }: LinePlacement): Path => {
	const [first, ...rest] = segments.map((piece): Segment => {
		const [from, to] = [pointOfPlace(piece.from), pointOfPlace(piece.to)];
		return 'leaving' in piece
			? cubic(from, pointOfPlace(piece.leaving), pointOfPlace(piece.arriving), to)
			: straight(from, to);
	});
	if (!first) throw new Error('a line placement has no segment');
	return [first, ...rest];
};

/** The placement that describes a line. */
export const placementOfPath = (path: Path): LinePlacement => ({
	kind: 'line',
	segments: path.map((segment) => {
		const ends = { from: placeOfPoint(segment.from), to: placeOfPoint(segment.to) };
		if (segment.kind === 'straight') return ends;
		return { ...ends, leaving: placeOfPoint(segment.leaving), arriving: placeOfPoint(segment.arriving) };
	})
});
