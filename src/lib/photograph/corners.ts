import { crossing, profileAlong } from './crossing.ts';
import { CELLS_ACROSS, type FoundMarker } from './markers.ts';
import { isInside, pixelsApart, type Grey, type PicturePoint } from './picture.ts';
import { spreadOf } from './spread.ts';

/** A marker whose corners were found to a small part of a pixel. */
export interface SharpMarker extends FoundMarker {
	/** How wide the change from black to white is at its edges, in pixels: the standard deviation of the blur. */
	readonly blur: number;
	/** How far the edges' places lie from the straight lines laid through them, in pixels, root mean square. */
	readonly rough: number;
}

/** An edge as all (u, v) where u cos + v sin = off. */
interface EdgeLine {
	readonly cos: number;
	readonly sin: number;
	readonly off: number;
	readonly blur: number;
	readonly rough: number;
}

/** The part of a side in which its edge is looked for: its corners are round with blur. */
const [FROM, TO] = [0.08, 0.92];
/** Share of the places farthest from a line by which it is not guided at first: dirt, a shadow's rim, a drawn line that meets it. */
const TRIMMED = 0.2;
/** How many times as rough as the others a place may be that counts at last: of errors like a bell's curve all but one in a hundred. */
const COUNTS_WITHIN = 4;
/** The straight line through places, by total least squares. */
const lineThrough = (places: readonly PicturePoint[]): { cos: number; sin: number; off: number } => {
	const mean = (of: (each: PicturePoint) => number): number =>
		places.reduce((sum, each) => sum + of(each), 0) / places.length;
	const [u, v] = [mean((p) => p.u), mean((p) => p.v)];
	const [uu, uv, vv] = [
		mean((p) => (p.u - u) ** 2),
		mean((p) => (p.u - u) * (p.v - v)),
		mean((p) => (p.v - v) ** 2)
	];
	const along = Math.atan2(2 * uv, uu - vv) / 2;
	const [cos, sin] = [-Math.sin(along), Math.cos(along)];
	return { cos, sin, off: u * cos + v * sin };
};

/** The edge along a side whose dark is on the right of the way from its start to its end, clockwise round a marker. */
const edgeAlong = (grey: Grey, from: PicturePoint, to: PicturePoint, reach: number): EdgeLine | undefined => {
	const length = pixelsApart(from, to);
	const [du, dv] = [(to.u - from.u) / length, (to.v - from.v) / length];
	// Out of the marker: to the left of a clockwise way, as v runs down.
	const [nu, nv] = [dv, -du];
	const count = Math.min(160, Math.max(12, Math.round(length * (TO - FROM))));
	const found: PicturePoint[] = [];
	const blurs: number[] = [];
	for (let i = 0; i < count; i++) {
		const share = FROM + ((TO - FROM) * i) / (count - 1);
		const [u, v] = [from.u + (to.u - from.u) * share, from.v + (to.v - from.v) * share];
		const crossed = crossing(profileAlong(grey, { u, v }, { u: nu, v: nv }, reach));
		if (!crossed) continue;
		found.push({ u: u + nu * crossed.at, v: v + nv * crossed.at });
		blurs.push(crossed.blur);
	}
	if (found.length < 8) return undefined;
	const distance = ({ cos, sin, off }: { cos: number; sin: number; off: number }, p: PicturePoint): number =>
		Math.abs(p.u * cos + p.v * sin - off);
	let guide = lineThrough(found);
	let near: readonly PicturePoint[] = found;
	for (let round = 0; round < 2; round++) {
		near = found
			.toSorted((a, b) => distance(guide, a) - distance(guide, b))
			.slice(0, Math.ceil(found.length * (1 - TRIMMED)));
		guide = lineThrough(near);
	}
	const rough = Math.sqrt(near.reduce((sum, each) => sum + distance(guide, each) ** 2, 0) / near.length);
	const line = lineThrough(found.filter((each) => distance(guide, each) <= COUNTS_WITHIN * rough));
	const middle = blurs.toSorted((a, b) => a - b)[Math.floor(blurs.length / 2)] ?? 0;
	return { ...line, blur: middle, rough };
};

const meetingOf = (a: EdgeLine, b: EdgeLine): PicturePoint => {
	const det = a.cos * b.sin - a.sin * b.cos;
	return { u: (a.off * b.sin - b.off * a.sin) / det, v: (a.cos * b.off - b.cos * a.off) / det };
};

type Corners = FoundMarker['corners'];

/** Where the four edges of a marker meet, in turn from its upper left corner on. */
const cornersFrom = (edges: readonly [EdgeLine, EdgeLine, EdgeLine, EdgeLine]): Corners => {
	const [top, right, bottom, left] = edges;
	return [meetingOf(left, top), meetingOf(top, right), meetingOf(right, bottom), meetingOf(bottom, left)];
};

/** Its corners where its outline lies further in by so much. */
const drawnIn = ([a, b, c, d]: Corners, by: number): Corners => {
	const moved = (before: PicturePoint, here: PicturePoint, after: PicturePoint): PicturePoint => {
		const toward = (there: PicturePoint): PicturePoint => {
			const length = pixelsApart(here, there);
			return { u: (there.u - here.u) / length, v: (there.v - here.v) / length };
		};
		const [p, q] = [toward(before), toward(after)];
		// Further in by one from both sides: along both of them, by one over the sine of the corner.
		const sine = Math.abs(p.u * q.v - p.v * q.u);
		return { u: here.u + (by * (p.u + q.u)) / sine, v: here.v + (by * (p.v + q.v)) / sine };
	};
	return [moved(d, a, b), moved(a, b, c), moved(b, c, d), moved(c, d, a)];
};

/** How far to both sides of where an edge should be it is looked for: within the border's black, which is one cell wide. */
const reachesOf = (marker: FoundMarker): readonly number[] => {
	const [a, b, c, d] = marker.corners;
	const side = Math.min(pixelsApart(a, b), pixelsApart(b, c), pixelsApart(c, d), pixelsApart(d, a));
	const cell = side / CELLS_ACROSS;
	return [Math.max(3, cell * 0.8), Math.max(2.5, cell * 0.6), Math.max(2.5, cell * 0.6)];
};

/**
 * A marker's corners to a small part of a pixel: places half way from black to white along each side, straight lines through
 * those, and where the lines meet; then once more from there, and further in where black has spread. Undefined where an edge is not to be seen.
 */
export const sharpened = (grey: Grey, marker: FoundMarker): SharpMarker | undefined => {
	let corners = marker.corners;
	let edges: readonly EdgeLine[] = [];
	for (const reach of reachesOf(marker)) {
		const [a, b, c, d] = corners;
		const [top, right, bottom, left] = [
			edgeAlong(grey, a, b, reach),
			edgeAlong(grey, b, c, reach),
			edgeAlong(grey, c, d, reach),
			edgeAlong(grey, d, a, reach)
		];
		if (!top || !right || !bottom || !left) return undefined;
		edges = [top, right, bottom, left];
		corners = cornersFrom([top, right, bottom, left]);
		if (!corners.every((each) => isInside(grey, each))) return undefined;
	}
	const mean = (of: (edge: EdgeLine) => number): number =>
		edges.reduce((sum, each) => sum + of(each), 0) / edges.length;
	corners = drawnIn(corners, spreadOf(grey, { id: marker.id, corners }));
	return { id: marker.id, corners, blur: mean(({ blur }) => blur), rough: mean(({ rough }) => rough) };
};
