import { mm, type Mm } from '#shared/units.ts';
import { crossings } from '#geometry/kernel/crossings.ts';
import { boundsOf, pathEnd, pathSamples, pathStart, polyline, type Path } from '#geometry/path.ts';
import type { Segment } from '#geometry/segment.ts';
import {
	at,
	directionTo,
	distance,
	moved,
	opposite,
	squareTo,
	type Direction,
	type SheetPoint
} from '#geometry/point.ts';
import { nearestOnPath } from '#geometry/apart.ts';
import type { Notch, Piece } from './piece.ts';

/** How far apart the two strokes of a double notch stand. */
const NOTCH_APART: Mm = mm(6);
/** A notch's stroke where the edge has no allowance to cross. */
const SHORTEST_NOTCH: Mm = mm(4);
/** The share of a piece's extent along the grain that its grain line takes up. */
const GRAIN_SHARE = 0.5;
/** Length of the arrowheads of a grain line, and half their width. */
const ARROW: readonly [long: Mm, half: Mm] = [mm(5), mm(1.6)];
const EIGHTH_TURN = Math.SQRT1_2;

/** The way out of a piece across an edge, at a place of its stitching line. */
const outward = (piece: Piece, edge: string, place: SheetPoint): Direction | undefined => {
	const cutting = piece.cutting.edges.find(({ name }) => name === edge);
	const stitched = piece.edges.find(({ name }) => name === edge);
	if (!cutting || !stitched || stitched.allowance === 0) return undefined;
	return directionTo(place, nearestOnPath(cutting.path, place));
};

/** The direction along an edge near a place. */
const alongEdge = (piece: Piece, edge: string, place: SheetPoint): Direction | undefined => {
	const path = piece.edges.find(({ name }) => name === edge)?.path;
	if (!path) return undefined;
	const samples = pathSamples(path, mm(2));
	const near = samples.reduce(
		(best, each, i) => (distance(each, place) < distance(samples[best] ?? place, place) ? i : best),
		0
	);
	const [before, after] = [samples[Math.max(0, near - 1)], samples[Math.min(samples.length - 1, near + 1)]];
	return before && after && directionTo(before, after);
};

/** The strokes of a notch: from the stitching line square across the seam allowance; two for a double one. */
export const notchStrokes = (piece: Piece, notch: Notch): readonly Path[] => {
	const along = alongEdge(piece, notch.edge, notch.at);
	if (!along) return [];
	const out = outward(piece, notch.edge, notch.at) ?? squareTo(opposite(along));
	const allowance = piece.edges.find(({ name }) => name === notch.edge)?.allowance ?? mm(0);
	const length = mm(Math.max(SHORTEST_NOTCH, allowance));
	const sides = notch.style === 'double' ? [mm(-NOTCH_APART / 2), mm(NOTCH_APART / 2)] : [mm(0)];
	return sides.map((aside) => {
		const foot = moved(notch.at, along, aside);
		return polyline(foot, moved(foot, out, length));
	});
};

/** How near to the fold's straight line a place of the cutting line counts as on it. */
const ON_FOLD: Mm = mm(0.01);

/** The cutting line without what lies on the fold, which is not cut: one stroke, or the whole closed outline where nothing is folded. */
export const cutStrokes = (piece: Piece): readonly { readonly path: Path; readonly closed: boolean }[] => {
	const { outline } = piece.cutting;
	const fold = piece.edges.find(({ name }) => name === piece.fold)?.path;
	const [from, to] = fold ? [pathStart(fold), pathEnd(fold)] : [];
	const way = from && to && directionTo(from, to);
	if (!from || !way) return [{ path: outline, closed: true }];
	const off = ({ x, y }: SheetPoint): number => Math.abs((x - from.x) * way.dy - (y - from.y) * way.dx);
	const folded = (segment: Segment): boolean =>
		segment.kind === 'straight' && off(segment.from) < ON_FOLD && off(segment.to) < ON_FOLD;
	const begin = outline.findIndex((segment, i) => !folded(segment) && folded(outline.at(i - 1) ?? segment));
	if (begin < 0) return [{ path: outline, closed: true }];
	const turned = [...outline.slice(begin), ...outline.slice(0, begin)];
	const end = turned.findIndex(folded);
	const [first, ...rest] = turned.slice(0, end < 0 ? undefined : end);
	return first ? [{ path: [first, ...rest], closed: false }] : [];
};

/** The direction of the cloth's grain on a piece; on the bias at 45 degrees to the straight way that it names. */
const grainDirection = ({ grain: [from, to], bias }: Piece): Direction => {
	const straight = directionTo(from, to) ?? { dx: 0, dy: 1 };
	return bias
		? { dx: (straight.dx - straight.dy) * EIGHTH_TURN, dy: (straight.dx + straight.dy) * EIGHTH_TURN }
		: straight;
};

/** The longest run of the straight line through a place that lies within the piece. */
const runWithin = (
	piece: Piece,
	through: SheetPoint,
	way: Direction
): readonly [SheetPoint, SheetPoint] | undefined => {
	const { left, top, right, bottom } = boundsOf([piece.outline]);
	const far = mm(right - left + bottom - top);
	const meets = crossings(piece.outline, polyline(moved(through, way, mm(-far)), moved(through, way, far)));
	const places = meets
		.map((place) => (place.x - through.x) * way.dx + (place.y - through.y) * way.dy)
		.sort((a, b) => a - b);
	const runs = places.slice(1).map((to, i) => ({ from: places[i] ?? to, to }));
	// Runs lie inside and outside in turn; the first begins inside.
	const inside = runs.filter((_, i) => i % 2 === 0);
	const longest = inside.reduce<{ from: number; to: number } | undefined>(
		(best, each) => (best && best.to - best.from >= each.to - each.from ? best : each),
		undefined
	);
	return longest && [moved(through, way, mm(longest.from)), moved(through, way, mm(longest.to))];
};

/** The two ends of a piece's grain line, in its middle and within it. */
export const grainLine = (piece: Piece): readonly [SheetPoint, SheetPoint] => {
	const { left, top, right, bottom } = boundsOf([piece.outline]);
	const way = grainDirection(piece);
	const middle = at((left + right) / 2, (top + bottom) / 2);
	const [from, to] = runWithin(piece, middle, way) ?? piece.grain;
	const trim = mm((distance(from, to) * (1 - GRAIN_SHARE)) / 2);
	return [moved(from, way, trim), moved(to, way, mm(-trim))];
};

/** The strokes of a grain line: a straight line with an arrowhead at each end. */
export const grainStrokes = (piece: Piece): readonly Path[] => {
	const [from, to] = grainLine(piece);
	const way = directionTo(from, to);
	if (!way) return [];
	const [long, half] = ARROW;
	const head = (tip: SheetPoint, back: Direction): Path => {
		const foot = moved(tip, back, long);
		const aside = squareTo(back);
		return polyline(moved(foot, aside, half), tip, moved(foot, aside, mm(-half)));
	};
	return [polyline(from, to), head(from, way), head(to, opposite(way))];
};
