import { SQUARE_TOLERANCE, TANGENT_TOLERANCE } from '#shared/tolerances.ts';
import { mm, radians, type Mm, type Radians } from '#shared/units.ts';
import { lengthOf, type Scope } from '#drafting/formula/value.ts';
import { angleBetween, opposite, type Direction } from '#geometry/point.ts';
import { endDirection, startDirection } from '#geometry/path.ts';
import type { EdgeRef, SeamRule, SmoothRule } from './garment.ts';
import type { PieceEdge } from './piece.ts';

/** The edges of every piece, by the pieces' keys. */
export type EdgesOfPieces = Readonly<Record<string, readonly PieceEdge[]>>;

/** How two seam edges agree, measured along the stitching line with darts closed. */
export interface SeamReport {
	readonly name: string;
	readonly label: string;
	/** Edges by their names, such as `front.side`. */
	readonly first: readonly string[];
	readonly second: readonly string[];
	readonly firstLength: Mm;
	readonly secondLength: Mm;
	/** How much longer the second is to be. */
	readonly ease: Mm;
	/** How much longer the second is than it should be; negative where it is shorter. */
	readonly difference: Mm;
	readonly tolerance: Mm;
	readonly within: boolean;
}

/** How two edges run on across a seam, or a piece's edge meets its fold. */
export interface RunReport {
	readonly label: string;
	/** The angle by which the run is not straight; at a fold, by which it is not square. */
	readonly corner: Radians;
	readonly tolerance: Radians;
	readonly within: boolean;
}

export const refName = ({ piece, edge }: EdgeRef): string => `${piece}.${edge}`;

/** The edge of this name; undefined where this body's piece does not have it. */
export const edgeAt = (edges: EdgesOfPieces, { piece, edge }: EdgeRef): PieceEdge | undefined =>
	edges[piece]?.find(({ name }) => name === edge);

const lengthOfSide = (edges: EdgesOfPieces, side: readonly EdgeRef[]): Mm =>
	mm(side.reduce((sum, ref) => sum + (edgeAt(edges, ref)?.length ?? 0), 0));

/** Measures a seam pair. */
export const seamReport = (rule: SeamRule, edges: EdgesOfPieces, scope: Scope): SeamReport => {
	const [firstLength, secondLength] = [lengthOfSide(edges, rule.first), lengthOfSide(edges, rule.second)];
	const ease = rule.ease ? lengthOf(rule.ease, scope) : mm(0);
	const difference = mm(secondLength - firstLength - ease);
	return {
		name: rule.name,
		label: rule.label,
		first: rule.first.map(refName),
		second: rule.second.map(refName),
		firstLength,
		secondLength,
		ease,
		difference,
		tolerance: rule.within,
		within: Math.abs(difference) <= rule.within
	};
};

const RIGHT_ANGLE = Math.PI / 2;

/** The directions that leave a corner of a piece: along the edge itself, and along its neighbour. */
const leaving = (
	all: readonly PieceEdge[],
	edge: PieceEdge,
	end: 'start' | 'end'
): readonly [own: Direction, other: Direction] | undefined => {
	const at = all.indexOf(edge);
	const neighbour = all.at(end === 'start' ? at - 1 : (at + 1) % all.length);
	const own = end === 'start' ? startDirection(edge.path) : endDirection(edge.path);
	const other =
		neighbour && (end === 'start' ? endDirection(neighbour.path) : startDirection(neighbour.path));
	if (!own || !other) return undefined;
	return end === 'start' ? [own, opposite(other)] : [opposite(own), other];
};

/** The angle of a piece between an edge and its neighbour. */
const cornerAngle = (
	all: readonly PieceEdge[],
	edge: PieceEdge | undefined,
	end: 'start' | 'end'
): number | undefined => {
	const directions = edge && leaving(all, edge, end);
	return directions && angleBetween(...directions);
};

const run = (label: string, corner: number, tolerance: Radians): RunReport => ({
	label,
	corner: radians(corner),
	tolerance,
	within: Math.abs(corner) <= tolerance
});

/** The runs across a seam's two ends: the angles of the two pieces together make a straight line. */
export const runsAcross = (rule: SeamRule, edges: EdgesOfPieces): readonly RunReport[] => {
	const [first, second] = [rule.first.at(0), rule.second.at(0)];
	if (!first || !second) return [];
	return (['start', 'end'] as const).flatMap((end) => {
		const label = rule.runs[end];
		if (label === undefined) return [];
		const other = rule.turned ? (end === 'start' ? 'end' : 'start') : end;
		const a = cornerAngle(edges[first.piece] ?? [], edgeAt(edges, first), end);
		const b = cornerAngle(edges[second.piece] ?? [], edgeAt(edges, second), other);
		return a === undefined || b === undefined ? [] : [run(label, a + b - Math.PI, TANGENT_TOLERANCE)];
	});
};

/** The runs into each piece's fold: what meets it is mirrored there, and must arrive square. */
export const runsAtFolds = (
	edges: EdgesOfPieces,
	names: Readonly<Record<string, string>>
): readonly RunReport[] =>
	Object.entries(edges).flatMap(([piece, all]) =>
		all
			.filter(({ kind }) => kind === 'fold')
			.flatMap((fold) =>
				(['start', 'end'] as const).flatMap((end) => {
					const angle = cornerAngle(all, fold, end);
					const at = all.indexOf(fold);
					const other = all.at(end === 'start' ? at - 1 : (at + 1) % all.length);
					if (angle === undefined || !other) return [];
					return [
						run(`${names[piece] ?? piece}: ${other.name} at the fold`, angle - RIGHT_ANGLE, SQUARE_TOLERANCE)
					];
				})
			)
	);

/** Two neighbouring edges that run on as one. */
export const runBetween = (rule: SmoothRule, edges: EdgesOfPieces): readonly RunReport[] => {
	const [first, second] = [edgeAt(edges, rule.first), edgeAt(edges, rule.second)];
	const [ending, beginning] = [first && endDirection(first.path), second && startDirection(second.path)];
	return ending && beginning ? [run(rule.label, angleBetween(ending, beginning), SQUARE_TOLERANCE)] : [];
};
