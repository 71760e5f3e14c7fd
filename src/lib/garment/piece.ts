import type { CornerRule, CutCount, EdgeKind, NotchStyle } from '#shared/garment.ts';
import type { Noun } from '#shared/speech/noun.ts';
import type { Mm } from '#shared/units.ts';
import { lengthOf, type Scope } from '#drafting/formula/value.ts';
import type { Draft } from '#drafting/evaluate.ts';
import { chained, pathEnd, pathLength, pathReversed, pathStart, type Path } from '#geometry/path.ts';
import { distance, type SheetPoint } from '#geometry/point.ts';
import { cuttingLine, type CuttingLine } from './cutting-line.ts';
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
}

/** A notch on an edge's stitching line; a double one is two, a little apart. */
export interface Notch {
	readonly edge: string;
	/** The seam that it belongs to. */
	readonly seam: string;
	readonly at: SheetPoint;
	/** How far along the edge it lies. */
	readonly along: Mm;
	readonly style: NotchStyle;
}

/** A closed outline with all that a cutter and a sewer need: what is drafted is one half where it lies on a fold. */
export interface Piece {
	readonly key: string;
	readonly number: number;
	readonly name: string;
	/** The edges in turn, each beginning where the one before ends. */
	readonly edges: readonly PieceEdge[];
	/** The stitching line. */
	readonly outline: Path;
	readonly cutting: CuttingLine;
	readonly grain: readonly [SheetPoint, SheetPoint];
	readonly bias: boolean;
	/** The edge that is laid on the fold of the cloth, where there is one. */
	readonly fold: string | undefined;
	readonly cut: readonly CutCount[];
	readonly notches: readonly Notch[];
	readonly marks: readonly { readonly label: string; readonly path: Path }[];
	readonly drills: readonly { readonly label: string; readonly at: SheetPoint }[];
	readonly darts: readonly {
		readonly name: string;
		readonly legs: readonly [Path, Path];
		readonly tip: SheetPoint;
	}[];
	readonly text: readonly string[];
}

/** A piece's outline does not close: a fault of ours or of a garment file, not of a body. */
class OpenOutline extends Error {
	constructor(piece: string, edge: string) {
		super(`the outline of ${piece} does not close at ${edge}`);
		this.name = 'OpenOutline';
	}
}

/** The lines of an edge that this body's draft has, end to end; undefined where it has none of them. */
const edgePath = (rule: EdgeRule, draft: Draft, piece: string): Path | undefined => {
	const lines = rule.lines.flatMap((name) => {
		const line = draft.lines[name];
		return line ? [line.path] : [];
	});
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

/** The edges of a piece for this body, each cut with `own` allowance where the maker chose one. */
export const edgesOf = (
	piece: PieceRule,
	draft: Draft,
	scope: Scope,
	own: Readonly<Record<string, Mm>>
): readonly PieceEdge[] => {
	const paths = piece.edges.flatMap((rule) => {
		const path = edgePath(rule, draft, piece.key);
		return path ? [{ rule, path }] : [];
	});
	return inTurn(paths).map(({ rule: { name, noun, title, kind, allowance, corner, notch }, path }) => ({
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
		notch
	}));
};

/** The edges as one closed outline. Throws OpenOutline where they do not close. */
const outlineOf = (edges: readonly PieceEdge[], piece: string): Path => {
	const outline = chained(edges.map(({ path }) => path));
	if (!outline) throw new OpenOutline(piece, edges[0]?.name ?? 'edge');
	return outline;
};

/** A piece of a garment for a body, from its edges; its notches are found from the seams afterwards. */
export const pieceOf = (
	rule: PieceRule,
	edges: readonly PieceEdge[],
	draft: Draft,
	notches: readonly Notch[]
): Piece => {
	const point = (name: string): SheetPoint[] => {
		const found = draft.points[name];
		return found ? [found] : [];
	};
	const line = (name: string): Path[] => {
		const found = draft.lines[name];
		return found ? [found.path] : [];
	};
	const [from, to] = rule.grain.flatMap(point);
	if (!from || !to) throw new OpenOutline(rule.key, 'grain');
	return {
		key: rule.key,
		number: rule.number,
		name: rule.name,
		edges,
		outline: outlineOf(edges, rule.key),
		cutting: cuttingLine(
			edges.map(({ corner, ...edge }) => ({ ...edge, ...(corner ? { endCorner: corner } : {}) }))
		),
		grain: [from, to],
		bias: rule.bias,
		fold: edges.find(({ kind }) => kind === 'fold')?.name,
		cut: rule.cut,
		notches,
		marks: rule.marks.flatMap(({ line: name, label }) => line(name).map((path) => ({ label, path }))),
		drills: rule.drills.flatMap(({ point: name, label }) => point(name).map((at) => ({ label, at }))),
		darts: rule.darts.flatMap(({ name, legs, tip }) => {
			const [first, second] = legs.flatMap(line);
			return first && second
				? point(tip).map((place) => ({ name, legs: [first, second] as const, tip: place }))
				: [];
		}),
		text: rule.text
	};
};
