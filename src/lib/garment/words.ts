import { SAME_PLACE } from '#shared/tolerances.ts';
import { printLength, type Unit } from '#shared/units.ts';
import { listed } from '#drafting/words.ts';
import { pathEnd, pathStart, type Path } from '#geometry/path.ts';
import { alongness, directionTo, distance, squareTo } from '#geometry/point.ts';
import type { CutCount } from './garment.ts';
import type { Piece, PieceEdge } from './piece.ts';

/** An edge as it is spoken of: `standTop` is "the stand top edge", and a hem is "the hem". */
const edgeWords = (name: string): string => {
	const words = name.replace(/[A-Z0-9]+/g, (sign) => ` ${sign.toLowerCase()}`);
	return /(^| )(edge|hem)$/.test(words) ? `the ${words}` : `the ${words} edge`;
};

/**
 * How many are cut in one cloth. What does not lie on the fold is cut through two layers whose right sides meet, so an
 * even number is so many left and so many right (common practice, no source).
 */
const countWords = ({ in: cloth, count }: CutCount, fold: boolean): string => {
	if (fold) return `${count} in ${cloth} on the fold`;
	if (count % 2 === 1) return `${count} in ${cloth}`;
	return count === 2 ? `2 in ${cloth}, as a pair` : `${count} in ${cloth}, as ${count / 2} pairs`;
};

/** How many of a piece are cut in which cloth: "Cut 2 in fabric, as a pair; 1 in interfacing". */
export const cutWords = ({ cut, fold }: Pick<Piece, 'cut' | 'fold'>): string =>
	`Cut ${cut.map((each) => countWords(each, fold !== undefined)).join('; ')}`;

/** Whether a path runs as the grain line does, or the other way: over the grain line's length they do not part. */
const runsAlike = ([from, to]: Piece['grain'], path: Path): boolean => {
	const [grain, along] = [directionTo(from, to), directionTo(pathStart(path), pathEnd(path))];
	if (!grain || !along) return false;
	return Math.abs(alongness(squareTo(grain), along)) * distance(from, to) <= SAME_PLACE;
};

/** What the grain line runs along: the fold, or a line that is drawn on the piece, where there is one that runs as it does. */
const grainWords = ({ grain, bias, edges, fold, marks }: Piece): string => {
	if (bias) return 'On the bias: the threads cross the piece at 45°';
	const onFold = edges.find(({ name }) => name === fold);
	if (onFold && runsAlike(grain, onFold.path)) return 'The grain line runs along the fold';
	const mark = marks.find(({ path }) => runsAlike(grain, path));
	return mark
		? `The grain line runs along the line marked “${mark.label}”`
		: 'The grain line runs as the arrow does';
};

/** The names of edges by what they are cut with, as it is written: what is written alike is one. */
const byAllowance = (edges: readonly PieceEdge[], unit: Unit): ReadonlyMap<string, readonly string[]> => {
	const names = new Map<string, string[]>();
	for (const { name, allowance } of edges) {
		const written = printLength(allowance, unit);
		names.set(written, [...(names.get(written) ?? []), edgeWords(name)]);
	}
	return names;
};

/**
 * The allowances of a piece in one sentence, lengths in `unit`: the most usual, then what differs.
 * "Allowance 1 cm; the hem 3 cm; none on the fold".
 */
export const allowanceWords = ({ edges }: Pick<Piece, 'edges'>, unit: Unit): string => {
	const folds = edges.filter(({ kind }) => kind === 'fold');
	const others = edges.filter(({ kind }) => kind !== 'fold');
	const groups = [
		...byAllowance(
			others.filter(({ allowance }) => allowance > 0),
			unit
		)
	];
	const [usual, ...differing] = groups.sort(([, a], [, b]) => b.length - a.length);
	if (!usual) return 'No allowance outside the stitching line';
	const none = [
		...others.filter(({ allowance }) => allowance <= 0).map(({ name }) => edgeWords(name)),
		...(folds.length > 0 ? ['the fold'] : [])
	];
	return [
		`Allowance ${usual[0]}`,
		...differing.map(([allowance, names]) => `${listed(names)} ${allowance}`),
		...(none.length > 0 ? [`none on ${listed(none)}`] : [])
	].join('; ');
};

/**
 * What is written on a finished piece, a line each: number and name, whose it is, how many to cut in what, the edge that is
 * laid on the fold, the grain, the allowances (in `unit`), and what the garment says of it besides.
 */
export const pieceWords = (piece: Piece, body: string, unit: Unit): readonly string[] => [
	`${piece.number} ${piece.name}`,
	`For ${body}`,
	cutWords(piece),
	...(piece.fold === undefined ? [] : [`Lay ${edgeWords(piece.fold)} on the fold of the cloth`]),
	grainWords(piece),
	allowanceWords(piece, unit),
	...piece.text
];
