import { CURVE_TOLERANCE, POINT_TOLERANCE, TANGENT_TOLERANCE, TOLERANCES } from '#shared/tolerances.ts';
import type { Finding, FindingOf } from '#shared/verdict.ts';
import { mm, type Mm } from '#shared/units.ts';
import { nearestOnPath } from '#geometry/apart.ts';
import { pathEnd, pathStart, type Path } from '#geometry/path.ts';
import { at, distance, type SheetPoint } from '#geometry/point.ts';
import type { Drafted } from '#drafting/evaluate.ts';
import { stepAnswer } from '#drafting/steps/kinds.ts';
import type { Step } from '#drafting/steps/step-rules.ts';
import { checkLine, turnedTo } from '../check-line.ts';
import {
	bendsOf,
	bulgeOf,
	carried,
	depthBeside,
	depthOf,
	mapped,
	mirroredIn,
	shapesApart,
	stretchedFrom,
	turnedAbout,
	wobblesBeside
} from './curve-shape.ts';
import { slip, type Misstep, type Slip } from './misstep.ts';

/** What is wrong with the shape of a curve. */
export interface CurveMisstep {
	readonly note: string;
	readonly slips: Misstep['slips'];
}

/** A curve that keeps less than this share of its depth was drawn straight. */
const STRAIGHT_SHARE = 0.25;

/** An explanation that leaves more than this share of the error explains too little of it. */
const LEFT_OVER = 1 / 3;

/** A hand that draws deeper or flatter than the rule keeps its shape less well than one that lays the ruler otherwise. */
const DEPTH_LEFT_OVER = 1 / 2;

const isExplained = (away: Mm, error: number): boolean =>
	away <= CURVE_TOLERANCE || (away <= 2 * CURVE_TOLERANCE && away <= LEFT_OVER * error);

const said = (note: string, what: Slip): CurveMisstep => ({ note: `curve:${note}`, slips: [what] });

/** How far the drawn curve is from the rule's, moved so. */
const awayFrom = (placed: Path, right: Path, move: (place: SheetPoint) => SheetPoint): Mm =>
	shapesApart(placed, turnedTo(mapped(right, move), placed));

/** On the other side of the fold. */
const isOverFold = (placed: Path, right: Path, error: number): boolean =>
	isExplained(
		awayFrom(placed, right, ({ x, y }) => at(-x, y)),
		error
	);

/** How far it is from the rule's mirrored from end to end, or turned by half a turn: the curved ruler laid the other way round. */
const awayFromTurned = (placed: Path, right: Path): Mm => {
	const [a, b] = [pathStart(right), pathEnd(right)];
	const [half, inChord] = [turnedAbout(a, b), mirroredIn(a, b)];
	return mm(
		Math.min(
			awayFrom(placed, right, half),
			awayFrom(placed, right, (place) => half(inChord(place)))
		)
	);
};

/** A depth that differs by less than this share is a hand's. */
const SAME_DEPTH = 0.1;

/** How far a steady hand leaves the line that it means, at the worst of its places. */
const UNSTEADY: Mm = mm(1.5);
/** An explanation that leaves more of the error explains none of it. */
const MOST_OF = 0.85;

/** A depth that differs by so much, and explains so much of what a shallow curve is off all along, is its slip, though no place of it is far off. */
const [OTHER_DEPTH, EXPLAINS] = [0.15, 0.75];

const isOtherDepth = (placed: Path, right: Path): boolean => {
	const { times, explains } = depthBeside(placed, right);
	return Math.abs(times - 1) >= OTHER_DEPTH && explains >= EXPLAINS;
};

/** The rule's shape, but so many times as deep; undefined where that is another shape, or as deep as the rule's. */
const otherDepth = (
	placed: Path,
	right: Path,
	error: number
): { readonly times: number; readonly away: Mm } | undefined => {
	const { times } = depthBeside(placed, right);
	if (!(times >= STRAIGHT_SHARE) || Math.abs(times - 1) < SAME_DEPTH) return undefined;
	const away = awayFrom(placed, right, stretchedFrom(pathStart(right), pathEnd(right), times));
	const isFitted = away <= Math.max(UNSTEADY, DEPTH_LEFT_OVER * error) && away < MOST_OF * error;
	const isShallow = error <= CURVE_TOLERANCE && isOtherDepth(placed, right);
	return isFitted || isShallow ? { times, away } : undefined;
};

const hasWrongEnds = (placed: Path, right: Path): boolean => {
	const [a, b, c, d] = [pathStart(right), pathEnd(right), pathStart(placed), pathEnd(placed)];
	if (Math.max(distance(a, c), distance(b, d)) <= POINT_TOLERANCE) return false;
	return shapesApart(placed, mapped(right, carried(a, b, c, d))) <= CURVE_TOLERANCE;
};

const isStraightened = (drawn: Path, right: Path, least: Mm): boolean => {
	const depth = depthOf(right);
	return depth > least && depthOf(drawn) < Math.max(STRAIGHT_SHARE * depth, POINT_TOLERANCE / 2);
};

/** Straight as a whole, or in one of its pieces, where it was drawn in the rule's. */
const isStraight = (placed: Path, right: Path): boolean =>
	isStraightened(placed, right, POINT_TOLERANCE) ||
	(placed.length === right.length &&
		placed.some((piece, i) => {
			const wanted = right[i];
			const isThere = wanted !== undefined && distance(piece.from, wanted.from) <= 2 * CURVE_TOLERANCE;
			return isThere && isStraightened([piece], [wanted], CURVE_TOLERANCE);
		}));

/** A curve that lies to the wrong side so many times as far as to the right one bulges the wrong way; less is a wobble. */
const MOSTLY = 2;

/** Bent to the other side by at least this share of the depth: a curve that is too shallow to lie 2 mm to that side is known by its fit. */
const OTHER_SIDE = -0.5;

const bulgesWrongWay = (placed: Path, right: Path): boolean => {
	const beside = depthBeside(placed, right);
	if (beside.times <= OTHER_SIDE && beside.explains >= EXPLAINS) return true;
	const [drawn, wanted] = [bulgeOf(placed), bulgeOf(right)];
	const [same, wrong] = wanted.mean > 0 ? [drawn.one, drawn.other] : [drawn.other, drawn.one];
	return wrong > POINT_TOLERANCE && wrong > MOSTLY * same;
};

const MIRRORED = said('mirrored', slip('mirrored'));

type Points = Drafted['points'];

/** The points on the sheet that a curve does not run through, the nearest to a place first. */
const othersNear = (points: Points, nodes: readonly string[], place: SheetPoint): readonly string[] =>
	Object.keys(points)
		.filter((name) => !nodes.includes(name))
		.toSorted((a, b) => distance(points[a] ?? place, place) - distance(points[b] ?? place, place));

const isAt = (place: SheetPoint, named: SheetPoint | undefined): boolean =>
	named !== undefined && distance(place, named) <= POINT_TOLERANCE;

/** Drawn from or to another of the points on the sheet. */
const namedEnds = (nodes: readonly string[], placed: Path, points: Points): readonly CurveMisstep[] => {
	const ends = [
		{ node: nodes[0] ?? '', place: pathStart(placed), key: 'curveFrom' },
		{ node: nodes.at(-1) ?? '', place: pathEnd(placed), key: 'curveTo' }
	] as const;
	return ends.flatMap(({ node, place, key }) => {
		if (isAt(place, points[node])) return [];
		const wrong = othersNear(points, nodes, place).find((name) => isAt(place, points[name]));
		if (wrong === undefined) return [];
		return [{ note: `ends:${wrong}-for-${node}`, slips: [slip(key, { wrong, right: node })] }];
	});
};

const passes = (placed: Path, place: SheetPoint | undefined, within: Mm): boolean =>
	place !== undefined && distance(nearestOnPath(placed, place), place) <= within;

/** The points between the ends that the curve does not run through, each with the other point that one of its pieces ends at instead. */
const missedNodes = (nodes: readonly string[], placed: Path, points: Points): readonly CurveMisstep[] => {
	// A line of many more pieces than the rule's tells nothing by where they meet.
	const joints = placed.length <= nodes.length ? placed.slice(1).map(({ from }) => from) : [];
	return nodes.slice(1, -1).flatMap((node) => {
		const place = points[node];
		if (!place || passes(placed, place, CURVE_TOLERANCE)) return [];
		const wrong = othersNear(points, nodes, place).find((name) =>
			joints.some((joint) => isAt(joint, points[name]))
		);
		return wrong === undefined
			? [{ note: `node:missed:${node}`, slips: [slip('nodeMissed', { node })] }]
			: [{ note: `node:${wrong}-for-${node}`, slips: [slip('nodeTaken', { wrong, right: node })] }];
	});
};

/** Whether the curve runs through some point between its ends that it should run through. */
const isThroughSome = (nodes: readonly string[], placed: Path, points: Points): boolean =>
	nodes.slice(1, -1).some((node) => passes(placed, points[node], POINT_TOLERANCE));

/** As deep as it should not be, or laid the other way round: whichever explains it better. */
const turnedOrDepth = (placed: Path, right: Path, error: number): readonly CurveMisstep[] => {
	const [turned, depth] = [awayFromTurned(placed, right), otherDepth(placed, right, error)];
	if (depth && depth.away <= turned) {
		const { times } = depth;
		return [
			times < 1 ? said('too-flat', slip('tooFlat', { times })) : said('too-deep', slip('tooDeep', { times }))
		];
	}
	const isFar = error > 2 * CURVE_TOLERANCE;
	return turned <= (isFar ? CURVE_TOLERANCE : 0) || turned <= LEFT_OVER * error ? [MIRRORED] : [];
};

/** How many more bends than the rule's make a line that wavers, and not one that is bent amiss in one place. */
const WAVERING = 2;

/** What explains the whole shape at once, the best first. */
const shapeMissteps = (
	nodes: readonly string[],
	placed: Path,
	right: Path,
	points: Points
): readonly CurveMisstep[] => {
	const error = shapesApart(placed, right);
	const straight = isStraight(placed, right) ? [said('straight', slip('straightened'))] : [];
	const fitted = turnedOrDepth(placed, right, error);
	const otherSide = bulgesWrongWay(placed, right) ? [said('wrong-way', slip('wrongBulge'))] : [];
	if (error <= CURVE_TOLERANCE) return [...straight, ...otherSide, ...fitted];
	const missed = missedNodes(nodes, placed, points);
	const isWavering = bendsOf(placed).length >= bendsOf(right).length + WAVERING;
	return [
		...missed.filter(({ slips: [first] }) => first?.key === 'nodeTaken'),
		...straight,
		...(hasWrongEnds(placed, right) ? [said('wrong-ends', slip('wrongEnds'))] : []),
		...(isThroughSome(nodes, placed, points) && fitted.length === 0 && !isWavering ? missed : []),
		...otherSide,
		...fitted,
		...(isWavering ? [said('wobble', slip('wobble'))] : []),
		...missed
	];
};

const isDirection = (finding: Finding): finding is FindingOf<'direction'> =>
	finding.aspect === 'direction' && !finding.within && finding.square;

const slanting = (findings: readonly Finding[]): readonly CurveMisstep[] => {
	const points = new Map(findings.filter(isDirection).map((each) => [each.point, each.way]));
	return [...points].map(([point, way]) => {
		const key = way === 'leaving' ? 'leftSlanting' : 'reachedSlanting';
		return said(`not-square:${point}`, slip(key, { point }));
	});
};

const lengthWrong = (findings: readonly Finding[]): readonly CurveMisstep[] =>
	findings.flatMap((finding) => {
		if (finding.aspect !== 'length' || finding.within) return [];
		return [finding.by > 0 ? said('too-long', slip('tooLong')) : said('too-short', slip('tooShort'))];
	});

/** The shapes that turn an end as well, so that its slant is no slip of its own. */
const EXPLAIN_SLANTS: ReadonlySet<string> = new Set(['curve:straight', 'curve:wrong-way', 'curve:wobble']);

/** A slant that is seen at once; less comes of a curve that is too deep or too flat as well. */
const CLEARLY_SLANTING = 2 * TANGENT_TOLERANCE;

/** A slant at one end alone bends the rest of the line as well; but where another depth explains it all, that was the slip. */
const isSlantAlone = (findings: readonly Finding[], drawn: Path, right: Path): boolean => {
	const slants = findings.filter(isDirection);
	const [first] = slants;
	if (!first || slants.some(({ point }) => point !== first.point)) return false;
	if (findings.some(({ aspect }) => aspect === 'start' || aspect === 'end')) return false;
	const error = shapesApart(drawn, right);
	if (error <= CURVE_TOLERANCE && isOtherDepth(drawn, right)) return false;
	const depth = otherDepth(drawn, right, error);
	const isDepth = depth !== undefined && depth.away <= Math.max(UNSTEADY, error / 4);
	return !isDepth || (error <= CURVE_TOLERANCE && first.turned > CLEARLY_SLANTING);
};

/** A depth that explains less of what a curve is off may as well be a slant at one end. */
const EXPLAINS_ALL = 0.9;

/**
 * Whether the first of some explanations is certain: it is known by where the line begins or ends; or it is the only one,
 * explains nearly all, and what the curve is off is more than two unsteady hands leave, so that no cause at all leads there seldom.
 */
export const isCurveCertain = (
	[first, ...rivals]: readonly CurveMisstep[],
	placed: Path,
	right: Path
): boolean => {
	if (!first) return false;
	if (first.note.startsWith('ends:')) return true;
	const drawn = turnedTo(placed, right);
	const isDepth = first.note === 'curve:too-flat' || first.note === 'curve:too-deep';
	if (isDepth && depthBeside(drawn, right).explains < EXPLAINS_ALL) return false;
	return rivals.every(({ note }) => note === first.note) && shapesApart(drawn, right) > 2 * UNSTEADY;
};

/**
 * What is wrong with the shape of a curve, what explains most of it first; nothing where the curve keeps
 * its tolerances, or where its error is of no known shape. `points` are those on the sheet.
 */
export const diagnoseCurve = (
	step: Step,
	placed: Path,
	right: Path,
	points: Points = {}
): readonly CurveMisstep[] => {
	const drawn = turnedTo(placed, right);
	const findings = checkLine(step, drawn, right, TOLERANCES.normal).filter(({ within }) => !within);
	if (findings.length === 0) return [];
	const answer = stepAnswer(step);
	const nodes = answer.put === 'handles' ? answer.through.map(({ point }) => point) : [];
	const whole = [
		...(isOverFold(drawn, right, shapesApart(drawn, right)) ? [MIRRORED] : []),
		...namedEnds(nodes, drawn, points)
	];
	if (whole.length > 0) return whole;
	const [shape, slants] = [shapeMissteps(nodes, drawn, right, points), slanting(findings)];
	if (isSlantAlone(findings, drawn, right) && !EXPLAIN_SLANTS.has(shape[0]?.note ?? ''))
		return [...slants, ...shape];
	if (shape.length > 0) return shape;
	const strays = findings.some(({ aspect }) => aspect === 'course' || aspect === 'direction');
	return [
		...(strays && wobblesBeside(drawn, right) ? [said('wobble', slip('wobble'))] : []),
		...slants,
		...lengthWrong(findings)
	];
};
