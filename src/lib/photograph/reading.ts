import { sharpened, type SharpMarker } from './corners.ts';
import { bulges } from './flatness.ts';
import { cornersOf, printedAs } from './marker-places.ts';
import { findMarkers } from './markers.ts';
import { pixelsApart, type Grey, type PicturePoint } from './picture.ts';
import { pixelOnSheet, rectify, type Rectified } from './rectify.ts';
import { looksLikeScreen } from './screen.ts';
import type { Piece } from './sightings.ts';

/** What makes a picture worse than it could be; none of it hinders that it is used. */
export type Warning =
	/** The markers lie together in one part of the picture. */
	| 'one-corner'
	/** Too few markers to see whether the paper is flat. */
	| 'few'
	/** Edges are washed out. */
	| 'blur'
	/** What was found does not lie in one plane. */
	| 'bulge'
	/** A pixel is large on the sheet. */
	| 'coarse'
	/** The sheet is shown on a screen. */
	| 'screen';

/** What was found in a picture: numbers alone, so that whoever looked can hand it on. */
export interface Looked {
	/** Of the picture, in pixels. */
	readonly width: number;
	readonly height: number;
	readonly markers: readonly SharpMarker[];
	/** Whether it seems to show a screen. */
	readonly screen: boolean;
}

/** What follows from it. */
export interface Reading {
	readonly rectified: Rectified;
	readonly warnings: readonly Warning[];
}

/**
 * How far a sharpened corner strays along one axis, for how far its edges' places do: so much over the root of a side's pixels, each
 * of which is a place. Measured (npm run measure:bulge): 0.02 to 0.04 pixels, 0.08 with much noise.
 */
const CORNER_PER_ROUGH = 8;
/** Less than this is not believed, in pixels: lenses and printers have slips of their own. */
const LEAST_ERROR = 0.03;
/** Least share of the picture that the markers must hold between them. */
const SPREAD = 0.2;
/** Blur from which a pencil line of half a millimetre is washed out, in pixels. */
const BLURRED = 3;
/** Size of a pixel on the sheet, in millimetres, from which a tap alone is a millimetre off. */
const COARSE = 0.45;

/** The area within the outermost of some places (Andrew's chain, 1979). */
const hullArea = (places: readonly PicturePoint[]): number => {
	const sorted = [...places].sort((a, b) => a.u - b.u || a.v - b.v);
	const half = (all: readonly PicturePoint[]): PicturePoint[] => {
		const chain: PicturePoint[] = [];
		for (const place of all) {
			for (;;) {
				const [a, b] = [chain.at(-2), chain.at(-1)];
				if (!a || !b || (b.u - a.u) * (place.v - a.v) - (b.v - a.v) * (place.u - a.u) > 0) break;
				chain.pop();
			}
			chain.push(place);
		}
		return chain.slice(0, -1);
	};
	const hull = [...half(sorted), ...half([...sorted].reverse())];
	return (
		Math.abs(
			hull.reduce((sum, { u, v }, i) => {
				const next = hull[(i + 1) % hull.length] ?? { u, v };
				return sum + u * next.v - v * next.u;
			}, 0)
		) / 2
	);
};

const warningsOf = ({ width, height, markers, screen }: Looked, rectified: Rectified): readonly Warning[] => {
	const corners = markers.flatMap((marker) => marker.corners);
	const middle = { u: width / 2, v: height / 2 };
	const blur = markers.reduce((sum, marker) => sum + marker.blur, 0) / markers.length;
	const found: readonly (readonly [Warning, boolean])[] = [
		['one-corner', hullArea(corners) < SPREAD * width * height],
		['few', markers.length < 3],
		['blur', blur > BLURRED],
		['bulge', bulges(rectified.flatness)],
		['coarse', pixelOnSheet(rectified.view, middle) > COARSE],
		['screen', screen]
	];
	return found.flatMap(([warning, holds]) => (holds ? [warning] : []));
};

const errorOfCorners = ({ corners: [a, b, c, d], rough }: SharpMarker): number => {
	const side = (pixelsApart(a, c) + pixelsApart(b, d)) / 2 / Math.SQRT2;
	return Math.max(LEAST_ERROR, (CORNER_PER_ROUGH * rough) / Math.sqrt(side));
};

/** What the markers are known by: each paper's places, as the printer has scaled them. */
const piecesOf = (markers: readonly SharpMarker[], scale: number): readonly Piece[] => {
	const pieces = new Map<string, Piece>();
	for (const found of markers) {
		const printed = printedAs(found.id);
		if (!printed) continue;
		const { name } = printed.paper;
		const own = cornersOf(printed.marker, scale);
		const seen = found.corners.flatMap((picture, i) => {
			const place = own[i];
			return place ? [{ own: place, picture }] : [];
		});
		const known = pieces.get(name);
		// Of several markers on one paper the worst counts for all: they are of one print and one picture.
		const error = Math.max(known?.error ?? 0, errorOfCorners(found));
		pieces.set(name, { name, error, seen: [...(known?.seen ?? []), ...seen] });
	}
	return [...pieces.values()];
};

/** Markers enough: all cards of one page, or all of a sheet. */
const enough = (ids: ReadonlySet<number>): boolean =>
	[...ids].filter((id) => printedAs(id) !== undefined).length >= 4;

/** How many steps looking has. */
export const STEPS = 2;

/** Looks for our markers in a picture. `onStep` is told how many of the steps are done. */
export const lookedAt = (grey: Grey, onStep: (done: number) => void): Looked => {
	const found = findMarkers(grey, enough).filter(({ id }) => printedAs(id) !== undefined);
	onStep(1);
	const markers = found.flatMap((marker) => sharpened(grey, marker) ?? []);
	onStep(STEPS);
	const screen = markers.some((marker) => looksLikeScreen(grey, marker));
	return { width: grey.width, height: grey.height, markers, screen };
};

/**
 * How the sheet is seen, from the markers that were found. `scale` is what a printed length measures over what it should.
 * Undefined where there are none.
 */
export const readingOf = (looked: Looked, scale: number): Reading | undefined => {
	const { width, height, markers } = looked;
	if (markers.length === 0) return undefined;
	const rectified = rectify({ width, height, pieces: piecesOf(markers, scale), distances: [] });
	return rectified && { rectified, warnings: warningsOf(looked, rectified) };
};
