import { isClockwise } from '#geometry/area.ts';
import { cuttingLine, type CuttingLine, type StitchedEdge } from '#garment/cutting-line.ts';
import { pathEnd, pathStart, polyline, type Path } from '#geometry/path.ts';
import { at, distance, type SheetPoint } from '#geometry/point.ts';
import { segmentLength, segmentPoint } from '#geometry/segment.ts';
import type { CornerRule, EdgeKind } from '#shared/garment.ts';
import { mm } from '#shared/units.ts';

/** What an edge is besides its path: its allowance in millimetres, its kind, the rule at its end. */
export type EdgeSay = readonly [allowance: number, kind?: EdgeKind, endCorner?: CornerRule];

/** An edge of a piece. */
export const edge = (
	name: string,
	path: Path,
	[allowance, kind = 'seam', endCorner]: EdgeSay
): StitchedEdge => ({
	name,
	kind,
	path,
	allowance: mm(allowance),
	...(endCorner ? { endCorner } : {})
});

/** A corner of a polygon, and the edge that starts there. */
type PolygonCorner = readonly [x: number, y: number, ...edge: EdgeSay];

/** The edges of a polygon. */
export const polygonEdges = (...corners: readonly PolygonCorner[]): readonly StitchedEdge[] =>
	corners.map(([x, y, ...say], i) => {
		const [toX, toY] = corners[(i + 1) % corners.length] ?? [x, y];
		return edge(`edge ${i + 1}`, polyline(at(x, y), at(toX, toY)), say);
	});

/** The corners of a cutting line of straight pieces alone, as pairs rounded to a millionth. */
export const cornersOf = ({ outline }: CuttingLine): readonly (readonly [number, number])[] =>
	outline.map(({ kind, from }) => {
		if (kind !== 'straight') throw new Error('only straight pieces were expected');
		return [Number(from.x.toFixed(6)) + 0, Number(from.y.toFixed(6)) + 0];
	});

/** The cutting line's corners of such a polygon. */
export const cutCorners = (...corners: readonly PolygonCorner[]): readonly (readonly [number, number])[] =>
	cornersOf(cuttingLine(polygonEdges(...corners)));

/** Places along a path, so many to each segment. */
export const placesOn = (path: Path, count: number): readonly SheetPoint[] =>
	path.flatMap((segment) => Array.from({ length: count }, (_, i) => segmentPoint(segment, i / count)));

/** Places along a path, about so many millimetres apart, and no fewer than two to a segment. */
export const placesEvery = (path: Path, apart: number): readonly SheetPoint[] =>
	path.flatMap((segment) => placesOn([segment], Math.max(2, Math.ceil(segmentLength(segment) / apart))));

/** An edge as a row of places close together, to measure from; bare numbers, since some hundred million chords are measured. */
interface Measured {
	readonly xs: Float64Array;
	readonly ys: Float64Array;
	readonly allowance: number;
}

/** Chords to each curve: the chord of a curve of 300 mm and of 60 mm radius is 0.002 mm away from it at most. */
const CHORDS = 300;

const measured = ({ path, kind, allowance }: StitchedEdge): Measured => {
	const places = path.flatMap((segment) => placesOn([segment], segment.kind === 'straight' ? 1 : CHORDS));
	const all = [...places, pathEnd(path)];
	return {
		xs: Float64Array.from(all, ({ x }) => x),
		ys: Float64Array.from(all, ({ y }) => y),
		allowance: kind === 'fold' ? 0 : allowance
	};
};

/** How far a place of a cutting line lies over an edge's allowance, and whether it lies outside that edge, between its ends. */
interface Beside {
	readonly over: number;
	readonly beside: boolean;
}

/** `side` is 1 where the outside lies on the side that a turn from x toward y leads to. */
const besideEdge = (place: SheetPoint, { xs, ys, allowance }: Measured, side: 1 | -1): Beside => {
	const chords = xs.length - 1;
	let [least, nearest, outside] = [Infinity, 0, 0];
	let [ax, ay] = [xs[0] ?? 0, ys[0] ?? 0];
	for (let i = 0; i < chords; i++) {
		const [bx, by] = [xs[i + 1] ?? 0, ys[i + 1] ?? 0];
		const [x, y, u, v] = [bx - ax, by - ay, place.x - ax, place.y - ay];
		const share = Math.min(1, Math.max(0, (u * x + v * y) / (x * x + y * y)));
		const away = (u - share * x) ** 2 + (v - share * y) ** 2;
		if (away < least) [least, nearest, outside] = [away, i + share, (x * v - y * u) * side];
		[ax, ay] = [bx, by];
	}
	const between = nearest > 0 && nearest < chords;
	return { over: Math.sqrt(least) - allowance, beside: between && outside > 0 };
};

/** What was seen of a cutting line's distances, at places that no corner is near. */
export interface Distances {
	/** Places that were looked at. */
	readonly seen: number;
	/** Greatest lack of allowance beside any edge, in millimetres. */
	readonly lack: number;
	/** Greatest stray from the allowance of the edge that the line belongs to there. */
	readonly stray: number;
}

/** Millimetres between the places that are looked at. */
const APART = 6;

/** A corner's influence, in the wider of its two allowances: tips reach 2.5 of them, and what is turned up a little more. */
const CORNER_REACH = 3.2;

/** Looks at a cutting line, at some places of each of its segments, from every edge. */
export const distancesOf = (edges: readonly StitchedEdge[], { outline }: CuttingLine): Distances => {
	const [first, ...rest] = edges.flatMap(({ path }) => path);
	if (!first) throw new Error('a piece has edges');
	const side = isClockwise([first, ...rest]) ? -1 : 1;
	const all = edges.map(measured);
	const corners = edges.map(({ path }, i) => ({
		place: pathStart(path),
		reach: CORNER_REACH * Math.max(all[i]?.allowance ?? 0, all.at(i - 1)?.allowance ?? 0) + 1
	}));
	const places = placesEvery(outline, APART).filter((place) =>
		corners.every((corner) => distance(corner.place, place) > corner.reach)
	);
	const seen = places.map((place) => all.map((each) => besideEdge(place, each, side)));
	const lacks = seen.flatMap((besides) => besides.filter(({ beside }) => beside).map(({ over }) => -over));
	const strays = seen.map((besides) => Math.min(...besides.map(({ over }) => Math.abs(over))));
	return { seen: places.length, lack: Math.max(0, ...lacks), stray: Math.max(0, ...strays) };
};
