import { mm, radians, type Radians } from '#shared/units.ts';
import { nearestOnPath } from '#geometry/apart.ts';
import type { Path } from '#geometry/path.ts';
import { angleBetween, distance, type SheetPoint } from '#geometry/point.ts';
import { segmentDirection } from '#geometry/segment.ts';
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

const cornersOf = (outline: Path): readonly SheetPoint[] => {
	const found: SheetPoint[] = [];
	for (const [i, segment] of outline.entries()) {
		const before = outline.at(i - 1) ?? segment;
		const [comes, goes] = [segmentDirection(before, 1), segmentDirection(segment, 0)];
		if (!comes || !goes || angleBetween(comes, goes) < CORNER) continue;
		if (found.every((each) => distance(each, segment.from) > APART)) found.push(segment.from);
	}
	return found;
};

/** The corners and the notches of a piece that was cut out along one of its lines: notches lie where they reach that line. */
export const piecePlaces = (piece: Piece, line: PieceLine): readonly PiecePlace[] => {
	const outline = line === 'cutting' ? piece.cutting.outline : piece.outline;
	const corners = cornersOf(outline).map((at, i) => ({ kind: 'corner' as const, number: i + 1, at }));
	const notches = piece.notches.map(({ at }, i) => ({
		kind: 'notch' as const,
		number: i + 1,
		at: line === 'cutting' ? nearestOnPath(outline, at) : at
	}));
	return [...corners, ...notches];
};
