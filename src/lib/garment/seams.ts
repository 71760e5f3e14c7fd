import type { RunName } from '#shared/garment.ts';
import { SQUARE_TOLERANCE, TANGENT_TOLERANCE } from '#shared/tolerances.ts';
import { mm, radians, type Mm, type Radians } from '#shared/units.ts';
import { lengthOf, type Scope } from '#drafting/formula/value.ts';
import { angleBetween, opposite } from '#geometry/point.ts';
import { endDirection, startDirection } from '#geometry/path.ts';
import { edgeAt, neighbour, type Chain, type Chains, type EdgesOfPieces, type End } from './chains.ts';
import type { EdgeRef, SeamRule, SmoothRule } from './garment.ts';

/** How two seam edges agree, measured along the stitching line with darts closed. */
export interface SeamReport {
	readonly name: string;
	readonly label: string;
	/** Edges by their names, such as `front.side`. */
	readonly first: readonly string[];
	readonly second: readonly string[];
	/** The same edges in the order and the direction in which the seam goes along them. */
	readonly chains: Chains;
	readonly firstLength: Mm;
	readonly secondLength: Mm;
	/** How much longer the second is to be; negative where it is caught in a longer one. */
	readonly ease: Mm;
	/** How much longer the second is than it should be; negative where it is shorter. */
	readonly difference: Mm;
	readonly tolerance: Mm;
	readonly within: boolean;
	/** The labels of the runs across its beginning and its end. */
	readonly runs: SeamRule['runs'];
}

/** How two edges run on across a seam, or a piece's edge meets its fold. */
export interface RunReport {
	readonly run: RunName;
	/** The angle by which the run is not straight; at a fold, by which it is not square. */
	readonly corner: Radians;
	readonly tolerance: Radians;
	readonly within: boolean;
}

const refName = ({ piece, edge }: EdgeRef): string => `${piece}.${edge}`;

/** The length of one side of a seam. */
export const chainLength = (edges: EdgesOfPieces, chain: Chain): Mm =>
	mm(chain.reduce((sum, link) => sum + (edgeAt(edges, link)?.length ?? 0), 0));

/** Measures a seam pair. */
export const seamReport = (
	rule: SeamRule,
	chains: Chains,
	edges: EdgesOfPieces,
	scope: Scope
): SeamReport => {
	const [firstLength, secondLength] = [chainLength(edges, chains.first), chainLength(edges, chains.second)];
	const caught = rule.caught ? Math.min(0, secondLength - firstLength) : 0;
	const ease = rule.ease ? lengthOf(rule.ease, scope) : mm(caught);
	const difference = mm(secondLength - firstLength - ease);
	return {
		name: rule.name,
		label: rule.label,
		first: rule.first.map(refName),
		second: rule.second.map(refName),
		chains,
		firstLength,
		secondLength,
		ease,
		difference,
		tolerance: rule.within,
		within: Math.abs(difference) <= rule.within,
		runs: rule.runs
	};
};

const RIGHT_ANGLE = Math.PI / 2;

/** The angle of a piece between an edge and its neighbour at one of its ends. */
const cornerAngle = (edges: EdgesOfPieces, ref: EdgeRef, end: End): number | undefined => {
	const [edge, other] = [edgeAt(edges, ref), neighbour(edges, ref, end)];
	if (!edge || !other) return undefined;
	const [arriving, leaving] =
		end === 'start'
			? [endDirection(other.path), startDirection(edge.path)]
			: [endDirection(edge.path), startDirection(other.path)];
	return arriving && leaving && angleBetween(opposite(arriving), leaving);
};

const report = (run: RunName, corner: number, tolerance: Radians): RunReport => ({
	run,
	corner: radians(corner),
	tolerance,
	within: Math.abs(corner) <= tolerance
});

/** The angle of a piece at one end of a seam's side. */
const angleAtEnd = (edges: EdgesOfPieces, chain: Chain, end: End): number | undefined => {
	const link = chain.at(end === 'start' ? 0 : -1);
	if (!link) return undefined;
	const own: End = link.reversed ? (end === 'start' ? 'end' : 'start') : end;
	return cornerAngle(edges, link, own);
};

/** The runs across a seam's two ends: the angles of the two pieces together make a straight line. */
export const runsAcross = (
	{ runs }: Pick<SeamRule, 'runs'>,
	{ first, second }: Chains,
	edges: EdgesOfPieces
): readonly RunReport[] =>
	(['start', 'end'] as const).flatMap((end) => {
		const label = runs[end];
		const [a, b] = [angleAtEnd(edges, first, end), angleAtEnd(edges, second, end)];
		if (label === undefined || a === undefined || b === undefined) return [];
		return [report({ label }, a + b - Math.PI, TANGENT_TOLERANCE)];
	});

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
					const ref = { piece, edge: fold.name };
					const [angle, other] = [cornerAngle(edges, ref, end), neighbour(edges, ref, end)];
					if (angle === undefined || !other) return [];
					const met = { piece: names[piece] ?? piece, edge: other.title };
					return [report(met, angle - RIGHT_ANGLE, SQUARE_TOLERANCE)];
				})
			)
	);

/** Two neighbouring edges that run on as one. */
export const runBetween = (rule: SmoothRule, edges: EdgesOfPieces): readonly RunReport[] => {
	const [first, second] = [edgeAt(edges, rule.first), edgeAt(edges, rule.second)];
	const [ending, beginning] = [first && endDirection(first.path), second && startDirection(second.path)];
	if (!ending || !beginning) return [];
	return [report({ label: rule.label }, angleBetween(ending, beginning), SQUARE_TOLERANCE)];
};
