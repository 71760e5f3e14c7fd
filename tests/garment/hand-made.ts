import { edgeWords } from '#garment/read-garment.ts';
import type { EdgeKind } from '#shared/garment.ts';
import { mm } from '#shared/units.ts';
import { chainsOf, type EdgesOfPieces } from '#garment/chains.ts';
import { cuttingLine } from '#garment/cutting-line.ts';
import type { EdgeRef, SeamRule } from '#garment/garment.ts';
import { notchesOf } from '#garment/notches.ts';
import type { Pattern } from '#garment/pattern.ts';
import type { Piece, PieceEdge } from '#garment/piece.ts';
import { runsAcross, seamReport } from '#garment/seams.ts';
import type { Scope } from '#drafting/formula/value.ts';
import { chained, pathLength, polyline, type Path } from '#geometry/path.ts';
import { at } from '#geometry/point.ts';

/** A corner of a polygon, and the name and kind of the edge that starts there. */
export type NamedCorner = readonly [x: number, y: number, name: string, kind?: EdgeKind];

/** An edge with 10 mm of allowance. */
export const edgeOf = (name: string, path: Path, kind: EdgeKind = 'seam'): PieceEdge => ({
	name,
	...edgeWords({ name }, 'en'),
	kind,
	path,
	length: pathLength(path),
	allowance: mm(kind === 'fold' ? 0 : 10)
});

/** The edges of a polygon. */
export const polygon = (...corners: readonly NamedCorner[]): readonly PieceEdge[] =>
	corners.map(([x, y, name, kind], i) => {
		const [toX, toY] = corners[(i + 1) % corners.length] ?? [x, y];
		return edgeOf(name, polyline(at(x, y), at(toX, toY)), kind);
	});

/** A rectangle with its upper left corner at x, y; run clockwise from there: top, right, bottom, left. */
export const rectangle = (x: number, y: number, width: number, height: number): readonly PieceEdge[] =>
	polygon([x, y, 'top'], [x + width, y, 'right'], [x + width, y + height, 'bottom'], [x, y + height, 'left']);

/** What is said of a piece beside its edges. */
export type PieceSay = Partial<Pick<Piece, 'grain' | 'bias' | 'cut' | 'notches'>>;

/** A piece of these edges, cut once in fabric, its grain straight down. */
export const pieceFrom = (key: string, edges: readonly PieceEdge[], say: PieceSay = {}): Piece => {
	const outline = chained(edges.map(({ path }) => path));
	if (!outline) throw new Error(`${key} does not close`);
	return {
		key,
		number: 1,
		name: key,
		edges,
		outline,
		cutting: cuttingLine(edges),
		grain: [at(0, 0), at(0, 100)],
		bias: false,
		fold: edges.find(({ kind }) => kind === 'fold')?.name,
		cut: [{ in: 'fabric', count: 1 }],
		notches: [],
		marks: [],
		drills: [],
		darts: [],
		text: [],
		...say
	};
};

const refs = (names: readonly string[]): readonly EdgeRef[] =>
	names.map((name) => {
		const [piece = '', edge = ''] = name.split('.');
		return { piece, edge };
	});

/** What is said of a seam beside its edges. */
export type SeamSay = Partial<Pick<SeamRule, 'turned' | 'within' | 'ease' | 'notches' | 'runs'>>;

/** A seam of edges by names such as `front.side`; it must match within 1 mm, with one notch in its middle. */
export const seamOf = (
	name: string,
	first: readonly string[],
	second: readonly string[],
	say: SeamSay = {}
): SeamRule => ({
	name,
	label: name,
	first: refs(first),
	second: refs(second),
	turned: false,
	within: mm(1),
	ease: undefined,
	notches: [0.5],
	runs: {},
	...say
});

const nothingKnown = (): never => {
	throw new Error('a hand-made seam has no formulas that name anything');
};
/** A scope in which nothing has a name. */
const NO_SCOPE: Scope = {
	measurement: nothingKnown,
	allowance: nothingKnown,
	share: nothingKnown,
	point: nothingKnown,
	line: nothingKnown,
	has: () => false
};

/** What is sewn of these pieces, worked as a garment's is: reports, runs and notches. A piece whose key begins with "back" has double notches. */
export const sewn = (
	edges: EdgesOfPieces,
	seams: readonly SeamRule[],
	says: Readonly<Record<string, PieceSay>> = {}
): Pick<Pattern, 'pieces' | 'seams' | 'runs'> => {
	const sides = seams.map((rule) => ({ rule, chains: chainsOf(rule, edges, seams) }));
	const rules = Object.keys(edges).map((key) => ({
		key,
		notch: key.startsWith('back') ? ('double' as const) : ('single' as const)
	}));
	const notches = notchesOf(sides, edges, rules);
	return {
		pieces: Object.entries(edges).map(([key, all]) =>
			pieceFrom(key, all, { notches: notches[key] ?? [], ...says[key] })
		),
		seams: sides.map(({ rule, chains }) => seamReport(rule, chains, edges, NO_SCOPE)),
		runs: sides.flatMap(({ rule, chains }) => runsAcross(rule, chains, edges))
	};
};
