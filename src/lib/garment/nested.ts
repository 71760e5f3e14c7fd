import type { Body } from '#shared/body.ts';
import { radians, type Radians } from '#shared/units.ts';
import type { Draft, Refusal } from '#drafting/evaluate.ts';
import { endDirection, pathStart, polyline, startDirection, type Path } from '#geometry/path.ts';
import { angleBetween, at, distance, type SheetPoint } from '#geometry/point.ts';
import { nearestOnPath } from '#geometry/apart.ts';
import type { Garment, PieceRule } from './garment.ts';
import { makePattern, type Pattern } from './pattern.ts';
import type { Piece } from './piece.ts';
import type { Choices } from './sewn.ts';

/** A body and what its size is called on the sheet: "42". */
export interface SizedBody {
	readonly name: string;
	readonly body: Body;
}

/** A garment's pattern for one size. */
export interface SizedPattern {
	readonly name: string;
	readonly pattern: Pattern;
}

/** One size of a nested piece. */
export interface NestedSize {
	readonly name: string;
	readonly piece: Piece;
	/** The place at which it is laid on the others. */
	readonly on: SheetPoint;
}

/** A piece in several sizes, laid on each other. */
export interface NestedPiece {
	readonly key: string;
	readonly sizes: readonly NestedSize[];
	/** Through the same corner of each size, from the place on which they are laid. */
	readonly growth: readonly Path[];
}

/** A garment in several sizes, the smallest first. */
export interface Nest {
	readonly sizes: readonly SizedPattern[];
	readonly pieces: readonly NestedPiece[];
}

/** A nest, or the first size that cannot be made. */
export type NestWork =
	| { readonly kind: 'made'; readonly nest: Nest }
	| { readonly kind: 'refused'; readonly size: string; readonly refusals: readonly Refusal[] };

/** A corner of a cutting line opens by more than this. */
const CORNER: Radians = radians(Math.PI / 12);
/** A stitched corner's place on the cutting line lies within so many allowances of it. */
const REACH = 3;
/** In millimetres: where an edge has no allowance its corner lies on the cutting line itself. */
const NEAR = 2;

/** Where a piece is laid on its other sizes: at the point that its garment names, or where a line begins that it names; else where its grain line begins. */
const laidOn = ({ nest, grain }: PieceRule, draft: Draft): SheetPoint => {
	const line = nest === undefined ? undefined : draft.lines[nest]?.path;
	return draft.points[nest ?? grain[0]] ?? (line && pathStart(line)) ?? draft.points[grain[0]] ?? at(0, 0);
};

/** The corners of a closed line. */
const cornersOf = (outline: Path): readonly SheetPoint[] =>
	outline.flatMap((segment, i) => {
		const [before, after] = [endDirection([outline.at(i - 1) ?? segment]), startDirection([segment])];
		return before && after && angleBetween(before, after) > CORNER ? [segment.from] : [];
	});

/** The place of the cutting line that belongs to a corner of the stitching line: its nearest corner where that is near, else its nearest place. */
const cutCorner = ({ cutting, edges }: Piece, corner: SheetPoint): SheetPoint => {
	const widest = Math.max(...edges.map(({ allowance }) => allowance));
	const near = cornersOf(cutting.outline).filter((each) => distance(each, corner) < REACH * widest + NEAR);
	const nearest = near.toSorted((a, b) => distance(a, corner) - distance(b, corner))[0];
	return nearest ?? nearestOnPath(cutting.outline, corner);
};

const from = (on: SheetPoint, { x, y }: SheetPoint): SheetPoint => at(x - on.x, y - on.y);

/** Where each edge that all sizes have begins, and the tip of each dart that all have, joined from size to size. */
const growthOf = (sizes: readonly NestedSize[]): readonly Path[] => {
	const starts = sizes.map(({ piece, on }) => {
		const corners = piece.edges.map(
			({ name, path }) => [name, from(on, cutCorner(piece, pathStart(path)))] as const
		);
		const tips = piece.darts.map(({ name, tip }) => [`tip ${name}`, from(on, tip)] as const);
		const marked = piece.drills.map(({ label, at: place }) => [`mark ${label}`, from(on, place)] as const);
		return new Map([...corners, ...tips, ...marked]);
	});
	const [first, ...others] = starts;
	return [...(first?.keys() ?? [])].flatMap((name) => {
		const places = [first, ...others].flatMap((each) => each?.get(name) ?? []);
		const [begin, next, ...rest] = places;
		return begin && next && places.length === sizes.length ? [polyline(begin, next, ...rest)] : [];
	});
};

const nestedPiece = (rule: PieceRule, sizes: readonly SizedPattern[]): NestedPiece => {
	const laid = sizes.flatMap(({ name, pattern }): readonly NestedSize[] => {
		const piece = pattern.pieces.find(({ key }) => key === rule.key);
		const draft = pattern.drafts[rule.draft];
		return piece && draft ? [{ name, piece, on: laidOn(rule, draft) }] : [];
	});
	return { key: rule.key, sizes: laid, growth: growthOf(laid) };
};

/**
 * A garment in several sizes laid on each other, the smallest first as they are given: each piece at a place of its own, with lines through
 * the same corner of every size. Gives the first size that cannot be drafted in its stead. Throws BadInput where a body lacks a measurement.
 */
export const nest = (garment: Garment, bodies: readonly SizedBody[], choices: Choices): NestWork => {
	const sizes: SizedPattern[] = [];
	for (const { name, body } of bodies) {
		const work = makePattern(garment, body, choices);
		if (work.kind === 'refused') return { kind: 'refused', size: name, refusals: work.refusals };
		sizes.push({ name, pattern: work.pattern });
	}
	return { kind: 'made', nest: { sizes, pieces: garment.pieces.map((rule) => nestedPiece(rule, sizes)) } };
};
