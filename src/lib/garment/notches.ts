import { mm, type Mm } from '#shared/units.ts';
import { pointAtLength } from '#geometry/path.ts';
import type { EdgeRef, PieceRule, SeamRule } from './garment.ts';
import type { Notch } from './piece.ts';
import { edgeAt, type EdgesOfPieces } from './seams.ts';

/** Nearer to an edge's end than this a notch would be cut off with the corner, and tells nothing. */
const CLEAR_OF_ENDS: Mm = mm(8);

/** The edge, and the place along it, at a length along a chain of edges. */
const along = (
	edges: EdgesOfPieces,
	side: readonly EdgeRef[],
	length: number
): { readonly ref: EdgeRef; readonly at: Mm } | undefined => {
	let left = length;
	for (const ref of side) {
		const whole = edgeAt(edges, ref)?.length ?? 0;
		if (left <= whole) return { ref, at: mm(left) };
		left -= whole;
	}
	return undefined;
};

const wholeLength = (edges: EdgesOfPieces, side: readonly EdgeRef[]): number =>
	side.reduce((sum, ref) => sum + (edgeAt(edges, ref)?.length ?? 0), 0);

/** The notches of one side of a seam at lengths from where the two sides begin. */
const onSide = (
	rule: SeamRule,
	side: readonly EdgeRef[],
	lengths: readonly number[],
	edges: EdgesOfPieces,
	styles: Readonly<Record<string, Notch['style']>>
): readonly (Notch & { readonly piece: string })[] =>
	lengths.flatMap((length) => {
		const place = along(edges, side, length);
		const edge = place && edgeAt(edges, place.ref);
		const at = edge && pointAtLength(edge.path, place.at);
		if (!edge || !at || Math.min(place.at, edge.length - place.at) < CLEAR_OF_ENDS) return [];
		const { piece } = place.ref;
		return [
			{ piece, edge: place.ref.edge, seam: rule.name, at, along: place.at, style: styles[piece] ?? 'single' }
		];
	});

/**
 * The notches of every piece: on both sides of each seam at the same distance from where the seam begins
 * (what is to be eased in is shared out evenly), so that they meet when it is sewn. Common practice, no source:
 * single on a front, double on a back.
 */
export const notchesOf = (
	seams: readonly SeamRule[],
	edges: EdgesOfPieces,
	pieces: readonly PieceRule[]
): Readonly<Record<string, readonly Notch[]>> => {
	const styles = Object.fromEntries(pieces.map(({ key, notch }) => [key, notch]));
	const all = seams.flatMap((rule) => {
		const [first, second] = [wholeLength(edges, rule.first), wholeLength(edges, rule.second)];
		const lengths = rule.notches.map((share) => share * first);
		const others = rule.notches.map((share) => share * second);
		return [
			...onSide(rule, rule.first, lengths, edges, styles),
			...onSide(
				rule,
				rule.second,
				rule.turned ? others.map((length) => second - length) : others,
				edges,
				styles
			)
		];
	});
	return Object.fromEntries(
		pieces.map(({ key }) => [
			key,
			all.filter(({ piece }) => piece === key).map(({ piece: _, ...notch }) => notch)
		])
	);
};
