import type { EdgeRef, SeamRule } from './garment.ts';
import type { PieceEdge } from './piece.ts';

/** The edges of every piece, by the pieces' keys. */
export type EdgesOfPieces = Readonly<Record<string, readonly PieceEdge[]>>;

/** An edge in one side of a seam, and which way the seam goes along it. */
export interface Link {
	readonly piece: string;
	readonly edge: string;
	/** Whether the seam goes along it from its end to its beginning. */
	readonly reversed: boolean;
}

/** One side of a seam: its edges in the order in which the seam goes along them. */
export type Chain = readonly Link[];

/** The two sides of a seam, both from where it begins. */
export interface Chains {
	readonly first: Chain;
	readonly second: Chain;
}

/** One of the two ends of an edge. */
export type End = 'start' | 'end';
const ENDS: readonly End[] = ['start', 'end'];

/** A joint of two neighbours in a chain: at which of its own ends each of them lies there. */
interface Joint {
	readonly before: End;
	readonly after: End;
}

/** The edge of this name; undefined where this body's piece does not have it. */
export const edgeAt = (edges: EdgesOfPieces, { piece, edge }: EdgeRef): PieceEdge | undefined =>
	edges[piece]?.find(({ name }) => name === edge);

/** The edge of a piece that comes next to another at one of its ends. */
export const neighbour = (edges: EdgesOfPieces, ref: EdgeRef, end: End): PieceEdge | undefined => {
	const all = edges[ref.piece] ?? [];
	const at = all.findIndex(({ name }) => name === ref.edge);
	if (at < 0) return undefined;
	return all.at(end === 'start' ? at - 1 : (at + 1) % all.length);
};

/** Whether the way round a piece from one edge's end leads to another over nothing but darts, which are sewn closed. */
const leadsTo = (edges: EdgesOfPieces, from: EdgeRef, end: End, to: EdgeRef): boolean => {
	let next = neighbour(edges, from, end);
	while (next?.kind === 'dart') next = neighbour(edges, { piece: from.piece, edge: next.name }, end);
	return next?.name === to.edge;
};

const jointInPiece = (edges: EdgesOfPieces, before: EdgeRef, after: EdgeRef): Joint | undefined => {
	if (before.edge === after.edge) {
		// A piece on the fold, and its other half: they meet at the fold.
		const folded = ENDS.find((end) => neighbour(edges, before, end)?.kind === 'fold');
		return folded && { before: folded, after: folded };
	}
	if (leadsTo(edges, before, 'end', after)) return { before: 'end', after: 'start' };
	return leadsTo(edges, before, 'start', after) ? { before: 'start', after: 'end' } : undefined;
};

const isOn = (side: readonly EdgeRef[], piece: string, edge: PieceEdge | undefined): boolean =>
	edge !== undefined && side.some((ref) => ref.piece === piece && ref.edge === edge.name);

/** Two pieces that come one after the other in a chain are sewn to each other beside it: the joint is at that seam. */
const jointOfPieces = (
	edges: EdgesOfPieces,
	before: EdgeRef,
	after: EdgeRef,
	seams: readonly SeamRule[]
): Joint | undefined => {
	for (const one of ENDS) {
		for (const other of ENDS) {
			const [a, b] = [neighbour(edges, before, one), neighbour(edges, after, other)];
			const sewn = seams.some(
				({ first, second }) =>
					(isOn(first, before.piece, a) && isOn(second, after.piece, b)) ||
					(isOn(second, before.piece, a) && isOn(first, after.piece, b))
			);
			if (sewn) return { before: one, after: other };
		}
	}
	return undefined;
};

/**
 * One side of a seam as a chain of the edges that this body has. A single edge is gone along as the outline runs; of several, each
 * is turned so that it goes on where the one before ends.
 */
const chainOf = (side: readonly EdgeRef[], edges: EdgesOfPieces, seams: readonly SeamRule[]): Chain => {
	const there = side.filter((ref) => edgeAt(edges, ref) !== undefined);
	const joints = there.slice(1).map((after, i) => {
		const before = there[i] ?? after;
		return before.piece === after.piece
			? jointInPiece(edges, before, after)
			: jointOfPieces(edges, before, after, seams);
	});
	return there.map(({ piece, edge }, i) => {
		const [joined, joins] = [joints[i - 1], joints[i]];
		const reversed = joined ? joined.after === 'end' : joins?.before === 'start';
		return { piece, edge, reversed };
	});
};

/** The two sides of a seam, the second turned round where it runs the other way. `seams` are all of the garment. */
export const chainsOf = (
	{ first, second, turned }: SeamRule,
	edges: EdgesOfPieces,
	seams: readonly SeamRule[]
): Chains => {
	const other = chainOf(second, edges, seams);
	const back = (): Chain =>
		other.map(({ reversed, ...link }) => ({ ...link, reversed: !reversed })).reverse();
	return { first: chainOf(first, edges, seams), second: turned ? back() : other };
};
