import { at } from '#geometry/point.ts';
import { crossing, profileAlong } from './crossing.ts';
import { homographyOf, seenAt } from './homography.ts';
import { CELLS_ACROSS, whiteCells, type FoundMarker } from './markers.ts';
import { pixelsApart, type Grey } from './picture.ts';

/** The part of a white cell's side in which its edge is looked for: at its corners other cells meet it. */
const [FROM, TO] = [0.25, 0.75];
/** Places along each cell's side. */
const PLACES = 10;
/** Fewer edges than this tell nothing. */
const LEAST = 4 * PLACES;
/** How far to both sides of where an inner edge should be it is looked for, in cells: as at the outline, so that blur does the same to both. */
const REACH = 0.6;
/** Where black is wider by one to each side, the outline that inner edges are reckoned from is so as well, and they are off by this much together. */
const TOGETHER = 1 + (CELLS_ACROSS - 2) / CELLS_ACROSS;

/** The border's inner edges that are to be seen: those of the white cells that lie along it, as places on a marker of one, and the way inward. */
const innerEdges = (id: number): readonly (readonly [x: number, y: number, inX: number, inY: number])[] => {
	const white = whiteCells(id);
	const [near, far] = [1 / CELLS_ACROSS, 1 - 1 / CELLS_ACROSS];
	const last = white.length - 1;
	return white.flatMap((row, i) =>
		Array.from({ length: PLACES }, (_, k) => {
			const along = (i + 1 + FROM + ((TO - FROM) * k) / (PLACES - 1)) / CELLS_ACROSS;
			return [
				...(white[0]?.[i] ? [[along, near, 0, 1] as const] : []),
				...(white[last]?.[i] ? [[along, far, 0, -1] as const] : []),
				...(row[0] ? [[near, along, 1, 0] as const] : []),
				...(row[last] ? [[far, along, -1, 0] as const] : [])
			];
		}).flat()
	);
};

/**
 * How much further a marker's black reaches than it was drawn, to each side, in pixels: ink runs, and a camera's file does not count
 * light evenly, so that what is half way from black to white in it is not half way in truth. Its white cells are smaller by as much as its
 * outline is larger, which tells the one from the other. Nothing where that is not to be seen.
 */
export const spreadOf = (grey: Grey, { id, corners: [a, b, c, d] }: FoundMarker): number => {
	const plane = homographyOf([
		{ sheet: at(0, 0), picture: a },
		{ sheet: at(1, 0), picture: b },
		{ sheet: at(1, 1), picture: c },
		{ sheet: at(0, 1), picture: d }
	]);
	if (!plane) return 0;
	const reach = (REACH * (pixelsApart(a, c) + pixelsApart(b, d))) / 2 / Math.SQRT2 / CELLS_ACROSS;
	const off = innerEdges(id).flatMap(([x, y, inX, inY]) => {
		const [from, to] = [seenAt(plane, at(x, y)), seenAt(plane, at(x + inX / 100, y + inY / 100))];
		const length = pixelsApart(from, to);
		const way = { u: (to.u - from.u) / length, v: (to.v - from.v) / length };
		return crossing(profileAlong(grey, from, way, reach))?.at ?? [];
	});
	if (off.length < LEAST) return 0;
	off.sort((p, q) => p - q);
	const middle = off.slice(Math.floor(off.length / 4), Math.ceil((3 * off.length) / 4));
	return middle.reduce((sum, each) => sum + each, 0) / middle.length / TOGETHER;
};
