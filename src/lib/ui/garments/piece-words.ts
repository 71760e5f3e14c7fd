import type { Speech } from '#shared/speech/speech.ts';
import { mm } from '#shared/units.ts';
import type { Piece } from '#garment/piece.ts';
import type { SeamReport } from '#garment/seams.ts';

/** How a piece is laid on the cloth, in a few words for a table. */
export const layWords = ({ fold, cut, bias }: Piece, { words }: Speech): string => {
	const pairs = cut.every(({ count }) => count % 2 === 0);
	const laid = fold !== undefined ? 'fold' : pairs ? 'pairs' : 'once';
	return words.pattern.laid({ laid, bias });
};

/** A piece for someone who cannot see its drawing: its edges and their lengths. */
export const pieceLabel = ({ name, number, edges }: Piece, { words }: Speech): string =>
	words.pattern.piece({
		name,
		number,
		edges: edges.map(({ title, length, kind }) => ({ title, length, fold: kind === 'fold' }))
	});

/** How the two sides of a seam agree, in a few words. */
export const seamWords = ({ difference, within, ease }: SeamReport, { words }: Speech): string => {
	if (within && ease < 0) return words.pattern.caughtIn;
	if (within) return ease > 0 ? words.pattern.easedIn({ ease }) : words.pattern.matches;
	const by = mm(Math.abs(difference));
	return difference > 0 ? words.pattern.secondLong({ by }) : words.pattern.secondShort({ by });
};
