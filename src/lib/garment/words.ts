import type { Speech } from '#shared/speech/speech.ts';
import { SAME_PLACE } from '#shared/tolerances.ts';
import { mm, type Mm, type Unit } from '#shared/units.ts';
import { pathEnd, pathStart, type Path } from '#geometry/path.ts';
import { alongness, directionTo, distance, squareTo } from '#geometry/point.ts';
import type { Garment } from './garment.ts';
import type { Pattern } from './pattern.ts';
import type { Piece, PieceEdge } from './piece.ts';

/** What a garment is called as it is made here: "The circle skirt (a half circle)". */
export const patternName = (
	{ name }: Pick<Garment, 'name'>,
	{ chosen }: Pick<Pattern, 'chosen'>,
	speech: Speech
): string => speech.words.garments.made({ name, chosen });

/** How many of a piece are cut in which cloth: "Cut 2 in fabric, as a pair; 1 in interfacing". */
export const cutWords = ({ cut, fold }: Pick<Piece, 'cut' | 'fold'>, speech: Speech): string =>
	speech.words.garments.cut({ cut, onFold: fold !== undefined });

/** Whether a path runs as the grain line does, or the other way: over the grain line's length they do not part. */
const runsAlike = ([from, to]: Piece['grain'], path: Path): boolean => {
	const [grain, along] = [directionTo(from, to), directionTo(pathStart(path), pathEnd(path))];
	if (!grain || !along) return false;
	return Math.abs(alongness(squareTo(grain), along)) * distance(from, to) <= SAME_PLACE;
};

/** What the grain line runs along: the fold, or a line that is drawn on the piece, where there is one that runs as it does. */
const grainWords = ({ grain, bias, edges, fold, marks }: Piece, { words: { garments } }: Speech): string => {
	if (bias) return garments.onBias;
	const onFold = edges.find(({ name }) => name === fold);
	if (onFold && runsAlike(grain, onFold.path)) return garments.grainAlongFold;
	const mark = marks.find(({ path }) => runsAlike(grain, path));
	return mark ? garments.grainAlongMark({ mark: mark.label }) : garments.grainAsArrow;
};

/** Edges by what they are cut with, as it is written: what is written alike is one. The most usual comes first. */
const byAllowance = (edges: readonly PieceEdge[], speech: Speech): readonly (readonly PieceEdge[])[] => {
	const groups = new Map<string, PieceEdge[]>();
	for (const edge of edges) {
		const written = speech.length(edge.allowance);
		groups.set(written, [...(groups.get(written) ?? []), edge]);
	}
	return [...groups.values()].sort((a, b) => b.length - a.length);
};

/** The allowances of a piece in one sentence: the most usual, then what differs. "Allowance 1 cm; the hem 3 cm; none on the fold". */
export const allowanceWords = ({ edges }: Pick<Piece, 'edges'>, speech: Speech): string => {
	const others = edges.filter(({ kind }) => kind !== 'fold');
	const nouns = (some: readonly PieceEdge[]) => some.map(({ noun }) => noun);
	const groups = byAllowance(
		others.filter(({ allowance }) => allowance > 0),
		speech
	).map((group) => ({ allowance: group[0]?.allowance ?? mm(0), edges: nouns(group) }));
	const [usual, ...differing] = groups;
	if (!usual) return speech.words.garments.noAllowance;
	return speech.words.garments.allowances({
		usual: usual.allowance,
		differing,
		none: nouns(others.filter(({ allowance }) => allowance <= 0)),
		fold: others.length < edges.length
	});
};

/**
 * What is written on a finished piece, a line each: number and name, whose it is, how many to cut in what, the edge that is
 * laid on the fold, the grain, the allowances, and what the garment says of it besides.
 */
export const pieceWords = (piece: Piece, body: string, speech: Speech): readonly string[] => {
	const { garments } = speech.words;
	const fold = piece.edges.find(({ name }) => name === piece.fold);
	return [
		`${piece.number} ${piece.name}`,
		garments.forBody({ body }),
		cutWords(piece, speech),
		...(fold ? [garments.layOnFold({ edge: fold.noun })] : []),
		grainWords(piece, speech),
		allowanceWords(piece, speech),
		...(piece.buttons ? [garments.buttons({ ...piece.buttons, count: piece.buttons.at.length })] : []),
		...piece.text
	];
};

/** How cloth is sold: by the tenth of a metre, or by the eighth of a yard. Common practice, no source. */
const SOLD: Readonly<Record<Unit, Mm>> = { mm: mm(100), cm: mm(100), in: mm(914.4 / 8) };

/** A length of cloth as it is asked for in a shop, rounded up: "2.4 m", "2 5/8 yards". */
export const clothWords = (length: Mm, { unit, words: { garments } }: Speech): string => {
	const parts = Math.ceil(length / SOLD[unit] - 1e-9);
	return unit === 'in' ? garments.yards({ eighths: parts }) : garments.metres({ tenths: parts });
};
