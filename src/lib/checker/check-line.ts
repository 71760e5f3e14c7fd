import {
	HANDLE_SHARE,
	SAME_PLACE,
	SQUARE_TOLERANCE,
	TANGENT_TOLERANCE,
	type Tolerances
} from '#shared/tolerances.ts';
import { mm, radians, type Mm, type Radians } from '#shared/units.ts';
import type { Finding, FindingOf } from '#shared/verdict.ts';
import { greatestDistance } from '#geometry/apart.ts';
import { pathEnd, pathLength, pathReversed, pathStart, polyline, type Path } from '#geometry/path.ts';
import {
	alongness,
	angleBetween,
	at,
	directionTo,
	distance,
	squareTo,
	type SheetPoint
} from '#geometry/point.ts';
import { segmentDirection, type Segment } from '#geometry/segment.ts';
import { stepAnswer } from '#drafting/steps/kinds.ts';
import type { Answer, Heading, Step } from '#drafting/steps/step-rules.ts';

type Handles = Extract<Answer, { put: 'handles' }>;
import { keeps, placeFinding } from './check-point.ts';

/** The learner's line turned round where it was drawn from its end to its start: either way is right. */
export const turnedTo = (placed: Path, right: Path): Path => {
	const straightOn =
		distance(pathStart(placed), pathStart(right)) + distance(pathEnd(placed), pathEnd(right));
	const turned = distance(pathEnd(placed), pathStart(right)) + distance(pathStart(placed), pathEnd(right));
	return turned < straightOn ? pathReversed(placed) : placed;
};

const lengthFinding = (aspect: 'length' | 'reach', by: Mm, tolerance: Mm): FindingOf<'length' | 'reach'> => ({
	aspect,
	within: keeps(mm(Math.abs(by)), tolerance),
	note: `${aspect}:${by > 0 ? 'too-long' : 'too-short'}`,
	by,
	tolerance
});

const courseFinding = (placed: Path, right: Path, tolerance: Mm): Finding => {
	const { away, on, nearest } = greatestDistance(placed, right);
	return {
		aspect: 'course',
		within: keeps(away, tolerance),
		note: 'course',
		away,
		where: [on.x, on.y],
		across: mm(on.x - nearest.x),
		down: mm(on.y - nearest.y),
		tolerance
	};
};

/** Square at the centre line is judged most strictly: a slip there is doubled when the fold is opened. */
const directionTolerance = (segmentEnd: { readonly x: Mm }, square: boolean): Radians =>
	square && Math.abs(segmentEnd.x) <= SAME_PLACE ? SQUARE_TOLERANCE : TANGENT_TOLERANCE;

/** What turns a line's end when it is moved: a curve's handle, or the other end of a straight piece. */
const handleOf = (segment: Segment, way: 'leaving' | 'arriving'): SheetPoint =>
	segment.kind === 'straight' ? segment[way === 'leaving' ? 'to' : 'from'] : segment[way];

/**
 * Whether a handle lies so near the rule's way that a hand meant it: short ones are turned far by a hair. One that is
 * much shorter than the rule's lies near any way, and tells nothing.
 */
const isOnWay = (
	placed: Segment,
	right: Segment,
	way: 'leaving' | 'arriving',
	{ point }: Tolerances
): boolean => {
	const [node, ahead, put] = [
		right[way === 'leaving' ? 'from' : 'to'],
		handleOf(right, way),
		handleOf(placed, way)
	];
	const [out, along] = [directionTo(node, ahead), distance(node, put)];
	const off = out && directionTo(node, put);
	if (!off || along < distance(node, ahead) / 2) return false;
	return alongness(out, off) > 0 && along * Math.abs(alongness(squareTo(out), off)) <= point * HANDLE_SHARE;
};

/** The way that a heading asks for, in the finding's words. */
const wantedWay = (heading: Heading): NonNullable<FindingOf<'direction'>['wanted']> => {
	if (heading === 'chord') return 'course';
	return typeof heading === 'string' ? heading : 'square';
};

const directionFinding = (
	placed: Segment,
	right: Segment,
	way: 'leaving' | 'arriving',
	node: Handles['through'][number],
	allowed: Tolerances
): Finding => {
	const t = way === 'leaving' ? 0 : 1;
	const [drawn, wanted] = [segmentDirection(placed, t), segmentDirection(right, t)];
	const turned = drawn && wanted ? angleBetween(drawn, wanted) : radians(Math.PI);
	const square = node.heading !== 'chord';
	const tolerance = directionTolerance(way === 'leaving' ? right.from : right.to, square);
	// Where both ends of a piece may lie elsewhere, it may be turned by that.
	const wider = (2 * (allowed.wider ?? 0)) / Math.max(distance(placed.from, placed.to), SAME_PLACE);
	return {
		aspect: 'direction',
		within: turned <= tolerance + wider || isOnWay(placed, right, way, allowed),
		note: square ? 'direction:not-square' : 'direction',
		point: node.point,
		way,
		square,
		wanted: wantedWay(node.heading),
		turned,
		tolerance
	};
};

/** Whether a line's pieces meet where the rule's do: only then is a direction there the same question. */
const cutAlike = (placed: Path, right: Path, allowed: Tolerances): boolean =>
	placed.length === right.length &&
	placed.every((piece, i) => {
		const cut = right[i];
		return i === 0 || (cut !== undefined && keeps(distance(piece.from, cut.from), allowed.curve));
	});

/** The directions at every point of a curve; only at its two ends where the learner drew it in other pieces. */
const directionFindings = (
	{ through }: Handles,
	placed: Path,
	right: Path,
	allowed: Tolerances
): readonly Finding[] => {
	const alike = cutAlike(placed, right, allowed);
	return right.flatMap((segment, i) => {
		const [from, to] = [through[i], through[i + 1]];
		if (!from || !to) return [];
		const drawn = alike ? placed[i] : undefined;
		const first = drawn ?? (i === 0 ? placed[0] : undefined);
		const last = drawn ?? (i === right.length - 1 ? placed.at(-1) : undefined);
		return [
			...(first ? [directionFinding(first, segment, 'leaving', from, allowed)] : []),
			...(last ? [directionFinding(last, segment, 'arriving', to, allowed)] : [])
		];
	});
};

/** A level is compared with the true level of the length that it was drawn in; that its length is the rule's is asked apart. */
const checkLevel = (placed: Path, right: Path, allowed: Tolerances): readonly Finding[] => {
	const [start, drawn] = [pathStart(right), turnedTo(placed, right)];
	const reach = mm(pathEnd(drawn).x - pathEnd(right).x);
	const end = at(pathEnd(drawn).x, start.y);
	return [
		placeFinding('start', pathStart(drawn), start, allowed.point),
		placeFinding('end', pathEnd(drawn), end, allowed.point),
		lengthFinding('reach', reach, allowed.point),
		...(keeps(mm(-reach), allowed.point) ? [courseFinding(drawn, polyline(start, end), allowed.curve)] : [])
	];
};

/** Where a line's two ends lie. */
export const endFindings = (drawn: Path, right: Path, { point }: Tolerances): readonly Finding[] => [
	placeFinding('start', pathStart(drawn), pathStart(right), point),
	placeFinding('end', pathEnd(drawn), pathEnd(right), point)
];

/** How far a line strays from the true one, and how much longer it is. */
export const wayFindings = (drawn: Path, right: Path, allowed: Tolerances): readonly Finding[] => [
	courseFinding(drawn, right, allowed.curve),
	lengthFinding('length', mm(pathLength(drawn) - pathLength(right)), allowed.length)
];

/**
 * Everything looked at in a line: its ends, for a curve the directions at its points, its greatest
 * distance from the true line both ways, and its length.
 */
export const checkLine = (step: Step, placed: Path, right: Path, allowed: Tolerances): readonly Finding[] => {
	const answer = stepAnswer(step);
	if (answer.put === 'level') return checkLevel(placed, right, allowed);
	const drawn = turnedTo(placed, right);
	return [
		...endFindings(drawn, right, allowed),
		...(answer.put === 'handles' ? directionFindings(answer, drawn, right, allowed) : []),
		...wayFindings(drawn, right, allowed)
	];
};
