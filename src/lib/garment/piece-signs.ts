import { SAME_PLACE } from '#shared/tolerances.ts';
import { mm, type Mm } from '#shared/units.ts';
import { nearestOnPath } from '#geometry/apart.ts';
import { pathEnd, pathLength, pathStart, pointAtLength, polyline, type Path } from '#geometry/path.ts';
import {
	between,
	directionTo,
	distance,
	moved,
	opposite,
	type Direction,
	type SheetPoint
} from '#geometry/point.ts';
import type { PieceEdge } from './edges.ts';
import { arrowHead, outwardAt } from './piece-lines.ts';
import type { Piece } from './piece.ts';

/** An arrow that says which edge lies on the fold: its two ends on the fold, and how far inside its shaft runs. */
export interface FoldSign {
	readonly path: Path;
	readonly middle: SheetPoint;
	/** Out of the piece. */
	readonly outward: Direction;
	/** The way along the fold in which its word reads. */
	readonly reads: Direction;
	/** The bracket inside: from the fold, along it, and back to it. */
	readonly bracket: Path;
}

/** The fold of a piece, with the bracket that is drawn beside it `inside` millimetres from it; undefined for a piece that has none. */
export const foldSign = (piece: Piece, inside: Mm): FoldSign | undefined => {
	const edge = piece.edges.find(({ name }) => name === piece.fold);
	const [from, to] = edge ? [pathStart(edge.path), pointAtLength(edge.path, edge.length)] : [];
	const along = from && to && directionTo(from, to);
	if (!edge || !from || !to || !along) return undefined;
	const outward = outwardAt(piece.outline, along);
	const [first, last] = [between(from, to, 0.14), between(from, to, 0.86)];
	const inward = opposite(outward);
	return {
		path: edge.path,
		middle: between(from, to, 0.5),
		outward,
		reads: along.dy > 0 || (along.dy === 0 && along.dx < 0) ? opposite(along) : along,
		bracket: polyline(first, moved(first, inward, inside), moved(last, inward, inside), last)
	};
};

/** The strokes of a fold's bracket: along the fold, with an arrowhead at each end that points to it. */
export const foldStrokes = (piece: Piece, inside: Mm): readonly Path[] => {
	const sign = foldSign(piece, inside);
	if (!sign) return [];
	const back = opposite(sign.outward);
	return [
		sign.bracket,
		...[pathStart(sign.bracket), pathEnd(sign.bracket)].map((tip) => arrowHead(tip, back))
	];
};

/** A dart of a piece. */
type Dart = Piece['darts'][number];

/** The two ends of a dart's legs away from its tip: of its mouth on the outline, or both its foot where it is pointed at both ends. */
const legEnds = ({ legs, tip }: Dart): readonly [SheetPoint, SheetPoint] => {
	const [one, other] = legs.map((leg) => {
		const [from, to] = [pathStart(leg), pathEnd(leg)];
		return distance(from, tip) > distance(to, tip) ? from : to;
	});
	return [one ?? tip, other ?? tip];
};

/** The points at which a dart's stitching ends: its tip, and its foot where it lies within a piece and has two. */
export const dartTips = (dart: Dart): readonly SheetPoint[] => {
	const [one, other] = legEnds(dart);
	return distance(one, other) <= SAME_PLACE ? [dart.tip, one] : [dart.tip];
};

/** Where a dart's middle line meets the outline: the peak of its mouth, or the middle of one that has no peak. */
const mouthMiddle = ({ edges }: Pick<Piece, 'edges'>, dart: Dart): SheetPoint => {
	const [one, other] = legEnds(dart);
	const mouth = edges.find(
		({ kind, path }) =>
			kind === 'dart' && [one, other].some((end) => distance(pathStart(path), end) <= SAME_PLACE)
	);
	const [first, ...rest] = mouth?.path ?? [];
	return first && rest.length === 1 ? first.to : between(one, other, 0.5);
};

/** The line along which a dart is folded: from its tip to the middle of its mouth, or to its foot. */
export const dartMiddle = (piece: Pick<Piece, 'edges'>, dart: Dart): Path =>
	polyline(dart.tip, dartTips(dart)[1] ?? mouthMiddle(piece, dart));

/** A notch at each end of a dart's mouth: from the stitching line to the nearest place where it is cut. None where it has no mouth. */
export const mouthNotches = (piece: Piece, dart: Dart): readonly Path[] =>
	dartTips(dart).length > 1
		? []
		: legEnds(dart).flatMap((mouth) => {
				const cut = nearestOnPath(piece.cutting.outline, mouth);
				return distance(cut, mouth) > 0 ? [polyline(mouth, cut)] : [];
			});

/** How far inside the stitching line the sign for gathers runs, how high its waves are, how long, and how far from the edge's ends. */
const GATHERS = { inside: 5, high: 3, wave: 8, ends: 12 } as const;

/** The sign for gathers along an edge: a zigzag inside its stitching line. Common practice, no source. */
export const gatherStroke = ({ outline }: Pick<Piece, 'outline'>, { path }: PieceEdge): readonly Path[] => {
	const { inside, high, wave, ends } = GATHERS;
	const length = pathLength(path) - 2 * ends;
	const halves = Math.floor(length / wave) * 2;
	if (halves < 2) return [];
	const places = Array.from({ length: halves + 1 }, (_, i) => {
		const along = ends + (length * i) / halves;
		const [here, next] = [pointAtLength(path, mm(along)), pointAtLength(path, mm(along + 1))];
		const runs = here && next && directionTo(here, next);
		return here && runs ? [moved(here, opposite(outwardAt(outline, runs)), mm(inside + (i % 2) * high))] : [];
	}).flat();
	const [first, second, ...rest] = places;
	return first && second ? [polyline(first, second, ...rest)] : [];
};
