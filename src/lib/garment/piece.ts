import type { CutCount, NotchStyle } from '#shared/garment.ts';
import { lastFor } from '#shared/kept.ts';
import { mm, type Mm } from '#shared/units.ts';
import type { Draft } from '#drafting/evaluate.ts';
import { lengthOf, type Scope } from '#drafting/formula/value.ts';
import { chained, pathEnd, type Path } from '#geometry/path.ts';
import type { SheetPoint } from '#geometry/point.ts';
import { levelAcross } from '#geometry/width.ts';
import { buttonsOf, type Buttons } from './buttons.ts';
import { cuttingLine, type CuttingLine } from './cutting-line.ts';
import { OpenOutline, type PieceEdge } from './edges.ts';
import type { PieceRule } from './garment.ts';

export type { PieceEdge } from './edges.ts';

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
	/** Whether it may have a seam in place of its fold, where the cloth is too narrow. */
	readonly seamAtFold?: boolean | undefined;
	readonly cut: readonly CutCount[];
	readonly notches: readonly Notch[];
	readonly marks: readonly { readonly label: string; readonly path: Path }[];
	readonly drills: readonly { readonly label: string; readonly at: SheetPoint }[];
	/** Undefined where it has none. */
	readonly buttons?: Buttons | undefined;
	readonly darts: readonly {
		readonly name: string;
		readonly legs: readonly [Path, Path];
		readonly tip: SheetPoint;
	}[];
	readonly text: readonly string[];
}

/** The edges as one closed outline. Throws OpenOutline where they do not close. */
const outlineOf = (edges: readonly PieceEdge[], piece: string): Path => {
	const outline = chained(edges.map(({ path }) => path));
	if (!outline) throw new OpenOutline(piece, edges[0]?.name ?? 'edge');
	return outline;
};

/** The last one where a piece has the same stitching lines with the same allowances. */
const cutAnew = lastFor<CuttingLine>();

/** A piece's cutting line. */
const cuttingOf = (rule: PieceRule, edges: readonly PieceEdge[]): CuttingLine =>
	cutAnew(
		rule,
		edges.flatMap(({ path, allowance }) => [path, allowance]),
		() =>
			cuttingLine(edges.map(({ corner, ...edge }) => ({ ...edge, ...(corner ? { endCorner: corner } : {}) })))
	);

/** A piece of a garment for a body, from its edges; its notches are found from the seams afterwards. */
export const pieceOf = (
	rule: PieceRule,
	edges: readonly PieceEdge[],
	draft: Draft,
	notches: readonly Notch[],
	scope: Scope
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
	const outline = outlineOf(edges, rule.key);
	return {
		key: rule.key,
		number: rule.number,
		name: rule.name,
		edges,
		outline,
		cutting: cuttingOf(rule, edges),
		grain: [from, to],
		bias: rule.bias,
		fold: edges.find(({ kind }) => kind === 'fold')?.name,
		seamAtFold: rule.seamAtFold,
		cut: rule.cut,
		notches,
		marks: [
			...rule.marks.flatMap(({ line: name, label }) => line(name).map((path) => ({ label, path }))),
			...rule.levels.flatMap(({ point: name, above, label }) =>
				point(name).flatMap(({ y }) => {
					const path = levelAcross(outline, mm(y - (above ? lengthOf(above, scope) : 0)));
					return path ? [{ label, path }] : [];
				})
			)
		],
		drills: rule.drills.flatMap((drill) =>
			('point' in drill ? point(drill.point) : line(drill.end).map(pathEnd)).map((at) => ({
				label: drill.label,
				at
			}))
		),
		buttons: rule.buttons && buttonsOf(rule.buttons, outline, draft, scope),
		darts: rule.darts.flatMap(({ name, legs, tip }) => {
			const [first, second] = legs.flatMap(line);
			return first && second
				? point(tip).map((place) => ({ name, legs: [first, second] as const, tip: place }))
				: [];
		}),
		text: rule.text
	};
};
