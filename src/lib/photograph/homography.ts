import type { SheetPoint } from '#geometry/point.ts';
import { at } from '#geometry/point.ts';
import { gram, mainDirections, type Rows } from './matrix.ts';
import type { PicturePoint } from './picture.ts';

/**
 * How a flat sheet is seen by a camera without a lens error: nine numbers, row by row, of which only their ratios matter. The
 * place (x, y) is seen at ((h0 x + h1 y + h2) / w, (h3 x + h4 y + h5) / w), w = h6 x + h7 y + h8 (Hartley and Zisserman 2004, chapter 2).
 */
export type Homography = readonly [number, number, number, number, number, number, number, number, number];

/** A place on the sheet, and where it is seen in the picture. */
export interface Sighting {
	readonly sheet: SheetPoint;
	readonly picture: PicturePoint;
}

/** Where a place on the sheet is seen. */
export const seenAt = (h: Homography, { x, y }: SheetPoint): PicturePoint => {
	const w = h[6] * x + h[7] * y + h[8];
	return { u: (h[0] * x + h[1] * y + h[2]) / w, v: (h[3] * x + h[4] * y + h[5]) / w };
};

/** The way back: which place on the sheet is seen somewhere. The adjoint is the inverse but for a factor, which does not matter. */
export const backward = ([a, b, c, d, e, f, g, h, i]: Homography): Homography => [
	e * i - f * h,
	c * h - b * i,
	b * f - c * e,
	f * g - d * i,
	a * i - c * g,
	c * d - a * f,
	d * h - e * g,
	b * g - a * h,
	a * e - b * d
];

/** Which place on the sheet is seen somewhere, by the way back. */
export const sheetAt = (back: Homography, { u, v }: PicturePoint): SheetPoint => {
	const seen = seenAt(back, at(u, v));
	return at(seen.u, seen.v);
};

/** One homography after another. */
export const after = (second: Homography, first: Homography): Homography => {
	const cell = (row: number, column: number): number =>
		[0, 1, 2].reduce((sum, k) => sum + (second[row * 3 + k] ?? 0) * (first[k * 3 + column] ?? 0), 0);
	return [
		cell(0, 0),
		cell(0, 1),
		cell(0, 2),
		cell(1, 0),
		cell(1, 1),
		cell(1, 2),
		cell(2, 0),
		cell(2, 1),
		cell(2, 2)
	];
};

/** The shift and the scale by which places lie about (0, 0) at sqrt 2 from it on the average (Hartley 1997). */
export const normalising = (places: readonly (readonly [number, number])[]): Homography => {
	const count = Math.max(1, places.length);
	const x = places.reduce((sum, [each]) => sum + each, 0) / count;
	const y = places.reduce((sum, [, each]) => sum + each, 0) / count;
	const mean = places.reduce((sum, [px, py]) => sum + Math.hypot(px - x, py - y), 0) / count;
	const scale = mean === 0 ? 1 : Math.SQRT2 / mean;
	return [scale, 0, -scale * x, 0, scale, -scale * y, 0, 0, 1];
};

/** The two equations in the nine numbers that each sighting gives: the direct linear transformation. */
export const equations = (sightings: readonly Sighting[]): Rows =>
	sightings.flatMap(({ sheet: { x, y }, picture: { u, v } }) => [
		[0, 0, 0, -x, -y, -1, v * x, v * y, v],
		[x, y, 1, 0, 0, 0, -u * x, -u * y, -u]
	]);

/** Least share of its length that a second direction must have: below it the places lie in a row. */
const IN_A_ROW = 1e-10;

/**
 * The homography that sightings tell of, by the normalised direct linear transformation (Hartley 1997; Hartley and Zisserman
 * 2004, algorithm 4.2). Undefined for fewer than four, and where no four of them have no three in a row.
 */
export const homographyOf = (sightings: readonly Sighting[]): Homography | undefined => {
	if (sightings.length < 4) return undefined;
	const onSheet = normalising(sightings.map(({ sheet }) => [sheet.x, sheet.y]));
	const inPicture = normalising(sightings.map(({ picture }) => [picture.u, picture.v]));
	const near = sightings.map(({ sheet, picture }) => {
		const from = seenAt(onSheet, sheet);
		return { sheet: at(from.u, from.v), picture: seenAt(inPicture, at(picture.u, picture.v)) };
	});
	const [least, second] = mainDirections(gram(equations(near)));
	if (!least || !second || second.stretch < IN_A_ROW) return undefined;
	const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0, i = 0] = least.direction;
	const back = backward(inPicture);
	const found = after(after(back, [a, b, c, d, e, f, g, h, i]), onSheet);
	return found.every(Number.isFinite) ? found : undefined;
};
