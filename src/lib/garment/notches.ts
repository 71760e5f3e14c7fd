import { mm, type Mm } from '#shared/units.ts';
import { pointAtLength } from '#geometry/path.ts';
import { edgeAt, type Chain, type Chains, type EdgesOfPieces, type Link } from './chains.ts';
import type { PieceRule, SeamRule } from './garment.ts';
import type { Notch } from './piece.ts';
import { chainLength } from './seams.ts';

/** Nearer to an edge's end than this a notch would be cut off with the corner, and tells nothing. */
const CLEAR_OF_ENDS: Mm = mm(8);

/** The edge, and the place along it from its own beginning, at a length along a chain of edges. */
const along = (
	edges: EdgesOfPieces,
	chain: Chain,
	length: number
): { readonly link: Link; readonly at: Mm } | undefined => {
	let left = length;
	for (const link of chain) {
		const whole = edgeAt(edges, link)?.length ?? 0;
		if (left <= whole) return { link, at: mm(link.reversed ? whole - left : left) };
		left -= whole;
	}
	return undefined;
};

/** The notches of one side of a seam at shares of its length. */
const onSide = (
	rule: SeamRule,
	chain: Chain,
	edges: EdgesOfPieces,
	styles: Readonly<Record<string, Notch['style']>>
): readonly (Notch & { readonly piece: string })[] =>
	rule.notches.flatMap((share) => {
		const place = along(edges, chain, share * chainLength(edges, chain));
		const edge = place && edgeAt(edges, place.link);
		const at = edge && pointAtLength(edge.path, place.at);
		if (!edge || !at || Math.min(place.at, edge.length - place.at) < CLEAR_OF_ENDS) return [];
		const { piece } = place.link;
		return [
			{
				piece,
				edge: edge.name,
				seam: rule.name,
				at,
				along: place.at,
				style: edge.notch ?? styles[piece] ?? 'single'
			}
		];
	});

/** Whether a seam joins an edge to the same edge of another piece like it: one notch is both. */
const isTwin = ({ first: [one], second: [other] }: SeamRule): boolean =>
	one !== undefined && one.piece === other?.piece && one.edge === other.edge;

/**
 * The notches of every piece: on both sides of each seam at the same distance from where the seam begins
 * (what is to be eased in is shared out evenly), so that they meet when it is sewn. Common practice, no source:
 * single on a front, double on a back.
 */
export const notchesOf = (
	seams: readonly { readonly rule: SeamRule; readonly chains: Chains }[],
	edges: EdgesOfPieces,
	pieces: readonly Pick<PieceRule, 'key' | 'notch'>[]
): Readonly<Record<string, readonly Notch[]>> => {
	const styles = Object.fromEntries(pieces.map(({ key, notch }) => [key, notch]));
	const all = seams.flatMap(({ rule, chains }) => [
		...onSide(rule, chains.first, edges, styles),
		...(isTwin(rule) ? [] : onSide(rule, chains.second, edges, styles))
	]);
	return Object.fromEntries(
		pieces.map(({ key }) => [
			key,
			all.filter(({ piece }) => piece === key).map(({ piece: _, ...notch }) => notch)
		])
	);
};
