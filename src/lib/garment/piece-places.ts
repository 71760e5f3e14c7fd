import { mm, radians, type Radians } from '#shared/units.ts';
import { nearestOnPath } from '#geometry/apart.ts';
import { chordDistance } from '#geometry/chord.ts';
import { pathEnd, pathLength, pathStart, type Path } from '#geometry/path.ts';
import { angleBetween, distance, type SheetPoint } from '#geometry/point.ts';
import { segmentDirection, segmentLength, segmentPoint, type Segment } from '#geometry/segment.ts';
import type { Piece } from './piece.ts';

/** A place on a paper piece's edge that can be found by eye. */
export interface PiecePlace {
	readonly kind: 'corner' | 'notch';
	/** Counted from 1 along the outline, corners and notches each by themselves. */
	readonly number: number;
	readonly at: SheetPoint;
}

/** The line along which a paper piece was cut out: with its allowances, or without. */
export type PieceLine = 'cutting' | 'stitching';

/** Less is no corner that a finger finds. */
const CORNER: Radians = radians(Math.PI / 9);
/** Two corners nearer to each other are found as one. */
const APART = mm(8);

/** The numbers of the segments that begin at a corner. */
const cornersOf = (outline: Path): readonly number[] => {
	const found: { readonly i: number; readonly from: SheetPoint }[] = [];
	for (const [i, segment] of outline.entries()) {
		const before = outline.at(i - 1) ?? segment;
		const [comes, goes] = [segmentDirection(before, 1), segmentDirection(segment, 0)];
		if (!comes || !goes || angleBetween(comes, goes) < CORNER) continue;
		if (found.every((each) => distance(each.from, segment.from) > APART))
			found.push({ i, from: segment.from });
	}
	return found.map(({ i }) => i);
};

const outlineOf = (piece: Piece, line: PieceLine): Path =>
	line === 'cutting' ? piece.cutting.outline : piece.outline;

/** The corners and the notches of a piece that was cut out along one of its lines: notches lie where they reach that line. */
export const piecePlaces = (piece: Piece, line: PieceLine): readonly PiecePlace[] => {
	const outline = outlineOf(piece, line);
	const corners = cornersOf(outline).flatMap((each, i) => {
		const segment = outline[each];
		return segment ? [{ kind: 'corner' as const, number: i + 1, at: segment.from }] : [];
	});
	const notches = piece.notches.map(({ at }, i) => ({
		kind: 'notch' as const,
		number: i + 1,
		at: line === 'cutting' ? nearestOnPath(outline, at) : at
	}));
	return [...corners, ...notches];
};

/** A curved part of a paper piece's edge, from one of its corners to the next. */
export interface PieceCurve {
	/** The numbers of its corners. */
	readonly from: number;
	readonly to: number;
	readonly path: Path;
	/** What the piece's edges there are called, as headings, in turn: several where they run on smoothly. */
	readonly edges: readonly string[];
}

/** What leaves the straight way between its ends by less was not meant to bend. */
const BENT = mm(2);
/** An edge that has less of a curve is only the tip of one that runs on to a corner. */
const TIP = 0.1;

const isBent = (path: Path): boolean => {
	const [from, to] = [pathStart(path), pathEnd(path)];
	return path.some((segment) =>
		[0.25, 0.5, 0.75, 1].some((t) => chordDistance(from, to, segmentPoint(segment, t)) > BENT)
	);
};

/** Beside which of a piece's edges a part of its outline runs. */
const besideOf = (piece: Piece, line: PieceLine, path: Path): readonly string[] => {
	const lines = line === 'cutting' ? piece.cutting.edges : piece.edges;
	const shares = new Map<string, number>();
	for (const segment of path) {
		const middle = segmentPoint(segment, 0.5);
		const far = (edge: Path): number => distance(nearestOnPath(edge, middle), middle);
		const [nearest] = lines.toSorted((a, b) => far(a.path) - far(b.path));
		if (nearest) shares.set(nearest.name, (shares.get(nearest.name) ?? 0) + segmentLength(segment));
	}
	const least = TIP * pathLength(path);
	return [...shares].filter(([, length]) => length >= least).map(([name]) => name);
};

/** The curved edges of a piece that was cut out along one of its lines, in turn, from corner to corner. */
export const pieceCurves = (piece: Piece, line: PieceLine): readonly PieceCurve[] => {
	const outline = outlineOf(piece, line);
	const corners = cornersOf(outline);
	return corners.flatMap((begin, i) => {
		const end = corners[(i + 1) % corners.length] ?? begin;
		const [first, ...rest]: readonly Segment[] =
			end > begin ? outline.slice(begin, end) : [...outline.slice(begin), ...outline.slice(0, end)];
		const path: Path | undefined = first && [first, ...rest];
		if (!path || corners.length < 2 || !isBent(path)) return [];
		const names = besideOf(piece, line, path);
		const edges = names.flatMap((name) => piece.edges.find((each) => each.name === name)?.title ?? []);
		return [{ from: i + 1, to: ((i + 1) % corners.length) + 1, path, edges }];
	});
};
