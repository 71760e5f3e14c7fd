import { mm, printLength, printSmall, type Unit } from '#shared/units.ts';
import { capitalised, listed } from '#drafting/words.ts';
import type { Piece } from '#garment/piece.ts';
import type { SeamReport } from '#garment/seams.ts';

/** An edge's title as it heads a field: "Stand top". */
export const edgeTitle = (title: string): string => capitalised(title);

/** How a piece is laid on the cloth, in a few words for a table. */
export const layWords = ({ fold, cut, bias }: Piece): string => {
	const pairs = cut.every(({ count }) => count % 2 === 0);
	const laid = fold !== undefined ? 'on the fold' : pairs ? 'in pairs, right sides together' : 'once';
	return bias ? `${laid}, on the bias` : laid;
};

/** A piece for someone who cannot see its drawing: its edges and their lengths in `unit`. */
export const pieceLabel = ({ name, number, edges }: Piece, unit: Unit): string =>
	`${name}, piece ${number}. Edges: ${listed(
		edges.map(
			(edge) => `${edge.title} ${printLength(edge.length, unit)}${edge.kind === 'fold' ? ' on the fold' : ''}`
		)
	)}.`;

/** How the two sides of a seam agree, in a few words with lengths in `unit`. */
export const seamWords = ({ difference, within, ease }: SeamReport, unit: Unit): string => {
	if (within) return ease > 0 ? `matches, ${printLength(ease, unit)} eased in` : 'matches';
	return `the second is ${printSmall(mm(Math.abs(difference)), unit)} too ${difference > 0 ? 'long' : 'short'}`;
};
