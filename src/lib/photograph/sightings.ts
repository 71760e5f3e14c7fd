import { mm, type Mm } from '#shared/units.ts';
import type { SheetPoint } from '#geometry/point.ts';
import type { PicturePoint } from './picture.ts';

/** Something of known size that was found in a picture: a marker, or several that are printed on one paper, or a single point. */
export interface Piece {
	readonly name: string;
	/** Its known places, in its own millimetres, and where each was found. */
	readonly seen: readonly { readonly own: SheetPoint; readonly picture: PicturePoint }[];
	/** How far each may have been found from where it is, in pixels: one standard deviation along one axis. */
	readonly error: number;
}

/** A distance that was measured between two pieces' own zero points. */
export interface Measured {
	readonly from: string;
	readonly to: string;
	readonly length: Mm;
	/** One standard deviation. */
	readonly error: Mm;
}

/** What is known of a picture before it is worked out how the sheet is seen. */
export interface Sightings {
	/** Of the picture, in pixels. */
	readonly width: number;
	readonly height: number;
	/** They lie flat in one plane, each wherever it was laid. */
	readonly pieces: readonly Piece[];
	readonly distances: readonly Measured[];
}

/** How a piece lies on the sheet: where its own zero point is, and how it is turned from x toward y. */
export interface Lying {
	readonly x: number;
	readonly y: number;
	readonly turn: number;
}

/** Where a place of a piece lies on the sheet. */
export const lyingAt = ({ x, y, turn }: Lying, own: SheetPoint): SheetPoint => {
	const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
	return { x: mm(x + cos * own.x - sin * own.y), y: mm(y + sin * own.x + cos * own.y) };
};

/** How a piece must lie so that its own places come nearest to places on the sheet, by least squares; all count alike where no weight is given. */
export const lyingOn = (
	pairs: readonly { readonly own: SheetPoint; readonly sheet: SheetPoint; readonly weight?: number }[]
): Lying => {
	const whole = pairs.reduce((sum, { weight = 1 }) => sum + weight, 0) || 1;
	const mean = (of: (pair: (typeof pairs)[number]) => number): number =>
		pairs.reduce((sum, pair) => sum + of(pair) * (pair.weight ?? 1), 0) / whole;
	const [ox, oy] = [mean(({ own }) => own.x), mean(({ own }) => own.y)];
	const [sx, sy] = [mean(({ sheet }) => sheet.x), mean(({ sheet }) => sheet.y)];
	const along = mean(({ own, sheet }) => (own.x - ox) * (sheet.x - sx) + (own.y - oy) * (sheet.y - sy));
	const across = mean(({ own, sheet }) => (own.x - ox) * (sheet.y - sy) - (own.y - oy) * (sheet.x - sx));
	const turn = Math.atan2(across, along);
	const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
	return { x: sx - cos * ox + sin * oy, y: sy - sin * ox - cos * oy, turn };
};
