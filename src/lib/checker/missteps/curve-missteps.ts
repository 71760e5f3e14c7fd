import { CURVE_TOLERANCE, POINT_TOLERANCE, TOLERANCES } from '#shared/tolerances.ts';
import type { Finding, FindingOf } from '#shared/verdict.ts';
import { greatestDistance } from '#geometry/apart.ts';
import { pathEnd, pathStart, type Path } from '#geometry/path.ts';
import { at, distance, type SheetPoint } from '#geometry/point.ts';
import type { StepOf } from '#drafting/steps/step-rules.ts';
import { checkLine, turnedTo } from '../check-line.ts';
import { bendsOf, bulgeOf, carried, depthOf, mapped, mirroredIn, turnedAbout } from './curve-shape.ts';

/** What is wrong with the shape of a curve. */
export interface CurveMisstep {
	readonly note: string;
	readonly words: string;
}

/** A curve that keeps less than this share of its depth was drawn straight. */
const STRAIGHT_SHARE = 0.25;

/** An explanation that leaves more than this share of the error explains too little of it. */
const LEFT_OVER = 1 / 3;

const fitsBetter = (placed: Path, explained: Path, error: number): boolean => {
	const { away } = greatestDistance(placed, explained);
	return away <= CURVE_TOLERANCE || (away <= 2 * CURVE_TOLERANCE && away <= LEFT_OVER * error);
};

const said = (note: string, words: string): CurveMisstep => ({ note: `curve:${note}`, words });

/** Mirrored from end to end, turned by half a turn, or on the other side of the fold. */
const isMirrored = (placed: Path, right: Path, error: number): boolean => {
	const [a, b] = [pathStart(right), pathEnd(right)];
	const half = turnedAbout(a, b);
	const inChord = mirroredIn(a, b);
	const fold = ({ x, y }: SheetPoint): SheetPoint => at(-x, y);
	return [half, (place: SheetPoint) => half(inChord(place)), fold].some((move) =>
		fitsBetter(placed, turnedTo(mapped(right, move), placed), error)
	);
};

const hasWrongEnds = (placed: Path, right: Path): boolean => {
	const [a, b, c, d] = [pathStart(right), pathEnd(right), pathStart(placed), pathEnd(placed)];
	if (Math.max(distance(a, c), distance(b, d)) <= POINT_TOLERANCE) return false;
	return greatestDistance(placed, mapped(right, carried(a, b, c, d))).away <= CURVE_TOLERANCE;
};

const isStraight = (placed: Path, right: Path): boolean => {
	const depth = depthOf(right);
	return depth > CURVE_TOLERANCE && depthOf(placed) < STRAIGHT_SHARE * depth;
};

const bulgesWrongWay = (placed: Path, right: Path): boolean => {
	const [drawn, wanted] = [bulgeOf(placed), bulgeOf(right)];
	return drawn.mean * wanted.mean < 0 && Math.max(drawn.one, drawn.other) > CURVE_TOLERANCE;
};

/** What explains the whole shape at once. */
const shapeMissteps = (placed: Path, right: Path, error: number): readonly CurveMisstep[] => [
	...(isStraight(placed, right)
		? [said('straight', 'You drew it almost straight; the rule makes it a hollow curve.')]
		: []),
	...(bulgesWrongWay(placed, right)
		? [said('wrong-way', 'You let it bulge the wrong way; the rule bends it to the other side.')]
		: []),
	...(isMirrored(placed, right, error)
		? [said('mirrored', 'You drew the curve the other way round; it is the mirror image of the rule’s.')]
		: []),
	...(hasWrongEnds(placed, right)
		? [
				said(
					'wrong-ends',
					'You drew the right shape on the wrong ends; it does not begin and end where the rule says.'
				)
			]
		: [])
];

const isDirection = (finding: Finding): finding is FindingOf<'direction'> =>
	finding.aspect === 'direction' && !finding.within && finding.square;

const slanting = (findings: readonly Finding[]): readonly CurveMisstep[] => {
	const points = new Map(findings.filter(isDirection).map((each) => [each.point, each.way]));
	return [...points].map(([point, way]) => {
		const [did, does] = way === 'leaving' ? ['left', 'leaves'] : ['reached', 'reaches'];
		return said(`not-square:${point}`, `You ${did} ${point} at a slant; the curve ${does} it square.`);
	});
};

const lengthWrong = (findings: readonly Finding[]): readonly CurveMisstep[] =>
	findings.flatMap((finding) => {
		if (finding.aspect !== 'length' || finding.within) return [];
		const how = finding.by > 0 ? 'long' : 'short';
		return [said(`too-${how}`, `You drew it too ${how}; it would not fit what it is sewn to.`)];
	});

/**
 * What is wrong with the shape of a curve, what explains most of it first; nothing where the curve keeps
 * its tolerances, or where its error is of no known shape.
 */
export const diagnoseCurve = (step: StepOf<'curve'>, placed: Path, right: Path): readonly CurveMisstep[] => {
	const drawn = turnedTo(placed, right);
	const findings = checkLine(step, drawn, right, TOLERANCES.normal).filter(({ within }) => !within);
	if (findings.length === 0) return [];
	const course = findings.find((each): each is FindingOf<'course'> => each.aspect === 'course');
	const shape = course ? shapeMissteps(drawn, right, course.away) : [];
	if (shape.length > 0) return shape;
	const wobbles = bendsOf(drawn) > bendsOf(right);
	return [
		...(wobbles
			? [said('wobble', 'You let the curve wobble; it bends to and fro where the rule’s does not.')]
			: []),
		...slanting(findings),
		...lengthWrong(findings)
	];
};
