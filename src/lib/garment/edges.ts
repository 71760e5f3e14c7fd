import type { CornerRule, EdgeKind, NotchStyle } from '#shared/garment.ts';
import type { Noun } from '#shared/speech/noun.ts';
import type { Mm } from '#shared/units.ts';
import { lengthOf, type Scope } from '#drafting/formula/value.ts';
import type { Draft } from '#drafting/evaluate.ts';
import { chained, pathEnd, pathLength, pathReversed, pathStart, type Path } from '#geometry/path.ts';
import { distance, type SheetPoint } from '#geometry/point.ts';
import type { EdgeRule, PieceRule } from './garment.ts';

/** An edge of a piece, running as the outline does. */
export interface PieceEdge {
	readonly name: string;
	/** What it is called within a sentence, and as a heading. */
	readonly noun: Noun;
	readonly title: string;
	readonly kind: EdgeKind;
	/** The stitching line. */
	readonly path: Path;
	readonly length: Mm;
	/** How far outside the stitching line it is cut. */
	readonly allowance: Mm;
	readonly corner?: CornerRule | undefined;
	/** How its notches look where that differs from the piece's. */
	readonly notch?: NotchStyle | undefined;
	/** Whether it is gathered up. */
	readonly gathered?: boolean | undefined;
}

/** A piece's outline does not close: a fault of ours or of a garment file, not of a body. */
export class OpenOutline extends Error {
	constructor(piece: string, edge: string) {
		super(`the outline of ${piece} does not close at ${edge}`);
		this.name = 'OpenOutline';
	}
}

/** The lines of an edge that this body's draft has, end to end; undefined where it has none of them. */
const edgePath = (rule: EdgeRule, draft: Draft, piece: string): Path | undefined => {
	const drawn = (names: readonly string[]): readonly Path[] =>
		names.flatMap((name) => {
			const line = draft.lines[name];
			return line ? [line.path] : [];
		});
	const trued = drawn(rule.instead);
	const lines = trued.length > 0 ? trued : drawn(rule.lines);
	if (lines.length === 0) return undefined;
	const path = chained(lines);
	if (!path) throw new OpenOutline(piece, rule.name);
	return path;
};

/** Edges turned so that each begins where the one before ends. */
const inTurn = (
	paths: readonly { readonly rule: EdgeRule; readonly path: Path }[]
): readonly { readonly rule: EdgeRule; readonly path: Path }[] => {
	const [first, second] = paths;
	if (!first || !second) return paths;
	const gap = (end: SheetPoint): number =>
		Math.min(distance(end, pathStart(second.path)), distance(end, pathEnd(second.path)));
	let end =
		gap(pathEnd(first.path)) <= gap(pathStart(first.path)) ? pathStart(first.path) : pathEnd(first.path);
	return paths.map(({ rule, path }) => {
		const turned = distance(end, pathStart(path)) <= distance(end, pathEnd(path)) ? path : pathReversed(path);
		end = pathEnd(turned);
		return { rule, path: turned };
	});
};

type Turned = ReturnType<typeof inTurn>;
/** What was traced off each draft: the same draft gives the same lines, so that what follows from them can be kept too. */
const traced = new WeakMap<Draft, Map<PieceRule, Turned>>();

/** A piece's stitching lines in turn, as they lie on its draft. */
const pathsOf = (piece: PieceRule, draft: Draft): Turned => {
	const known = traced.get(draft) ?? new Map<PieceRule, Turned>();
	traced.set(draft, known);
	const paths =
		known.get(piece) ??
		inTurn(
			piece.edges.flatMap((rule) => {
				const path = edgePath(rule, draft, piece.key);
				return path ? [{ rule, path }] : [];
			})
		);
	known.set(piece, paths);
	return paths;
};

/** The edges of a piece for this body, each cut with `own` allowance where the maker chose one. */
export const edgesOf = (
	piece: PieceRule,
	draft: Draft,
	scope: Scope,
	own: Readonly<Record<string, Mm>>
): readonly PieceEdge[] =>
	pathsOf(piece, draft).map(
		({ rule: { name, noun, title, kind, allowance, corner, notch, gathered }, path }) => ({
			name,
			noun,
			title,
			kind,
			path,
			length: pathLength(path),
			allowance:
				kind === 'fold'
					? lengthOf(allowance, scope)
					: (own[`${piece.key}.${name}`] ?? lengthOf(allowance, scope)),
			corner,
			notch,
			gathered
		})
	);
