import type { NotchStyle } from '#shared/garment.ts';
import type { EdgeRef, SeamRule } from './garment.ts';
import type { Piece } from './piece.ts';

/** What an edge is sewn to in one seam: pieces in turn, and how their notches look there. */
export interface Meeting {
	readonly edge: string;
	readonly pieces: readonly Pick<Piece, 'number' | 'name'>[];
	/** Where it is sewn to no other piece: to the same edge of another one of its kind, or to its own other edge. */
	readonly own: 'twin' | 'itself' | undefined;
	/** Undefined where the seam has no notch. */
	readonly notch: NotchStyle | undefined;
}

/** The pieces of one side of a seam, each named once. */
const piecesOf = (side: readonly EdgeRef[], pieces: readonly Piece[]): readonly Piece[] =>
	[...new Set(side.map(({ piece }) => piece))].flatMap(
		(key) => pieces.find((each) => each.key === key) ?? []
	);

/** What every edge of a piece is sewn to, seam by seam. */
export const meetingsOf = (
	{ key, edges }: Piece,
	seams: readonly SeamRule[],
	pieces: readonly Piece[]
): readonly Meeting[] =>
	seams
		.filter(({ compared }) => !compared)
		.flatMap(({ name, first, second }) =>
			[
				[first, second],
				[second, first]
			].flatMap(([own = [], other = []]) => {
				const met = piecesOf(other, pieces);
				const notch = met.flatMap(({ notches }) => notches).find(({ seam }) => seam === name)?.style;
				const mine = own.filter(
					({ piece, edge }) => piece === key && edges.some((each) => each.name === edge)
				);
				// A chain may go along an edge twice, once for each half of a piece on the fold.
				return [...new Set(mine.map(({ edge }) => edge))].map((edge): Meeting => {
					const isTwin = other.some((each) => each.piece === key && each.edge === edge);
					const isAlone = met.every((each) => each.key === key);
					return { edge, pieces: met, own: isAlone ? (isTwin ? 'twin' : 'itself') : undefined, notch };
				});
			})
		);
