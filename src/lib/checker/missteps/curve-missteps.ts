import { CURVE_TOLERANCE, POINT_TOLERANCE, TOLERANCES } from '#shared/tolerances.ts';
import type { Finding, FindingOf } from '#shared/verdict.ts';
import { pathEnd, pathStart, type Path } from '#geometry/path.ts';
import { at, distance, type SheetPoint } from '#geometry/point.ts';
import type { Step } from '#drafting/steps/step-rules.ts';
import { checkLine, turnedTo } from '../check-line.ts';
import {
	bulgeOf,
	carried,
	depthOf,
	mapped,
	mirroredIn,
	shapesApart,
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

const explains = (placed: Path, explained: Path, error: number): boolean => {
	const away = shapesApart(placed, explained);
	return away <= CURVE_TOLERANCE || (away <= 2 * CURVE_TOLERANCE && away <= LEFT_OVER * error);
};

const said = (note: string, what: Slip): CurveMisstep => ({ note: `curve:${note}`, slips: [what] });

/** Whether the curve is the rule's, moved so. */
const isMoved = (
	placed: Path,
	right: Path,
	error: number,
	move: (place: SheetPoint) => SheetPoint
): boolean => explains(placed, turnedTo(mapped(right, move), placed), error);

/** On the other side of the fold. */
const isOverFold = (placed: Path, right: Path, error: number): boolean =>
	isMoved(placed, right, error, ({ x, y }) => at(-x, y));

/** Mirrored from end to end, or turned by half a turn: the curved ruler laid the other way round. */
const isTurnedRound = (placed: Path, right: Path, error: number): boolean => {
	const [a, b] = [pathStart(right), pathEnd(right)];
	const [half, inChord] = [turnedAbout(a, b), mirroredIn(a, b)];
	return (
		isMoved(placed, right, error, half) || isMoved(placed, right, error, (place) => half(inChord(place)))
	);
};

const hasWrongEnds = (placed: Path, right: Path): boolean => {
	const [a, b, c, d] = [pathStart(right), pathEnd(right), pathStart(placed), pathEnd(placed)];
	if (Math.max(distance(a, c), distance(b, d)) <= POINT_TOLERANCE) return false;
	return shapesApart(placed, mapped(right, carried(a, b, c, d))) <= CURVE_TOLERANCE;
};

const isStraightened = (drawn: Path, right: Path): boolean => {
	const depth = depthOf(right);
	return depth > CURVE_TOLERANCE && depthOf(drawn) < STRAIGHT_SHARE * depth;
};

/** Straight as a whole, or in one of its pieces, where it was drawn in the rule's. */
const isStraight = (placed: Path, right: Path): boolean =>
	isStraightened(placed, right) ||
	(placed.length === right.length &&
		placed.some((piece, i) => {
			const wanted = right[i];
			const isThere = wanted !== undefined && distance(piece.from, wanted.from) <= 2 * CURVE_TOLERANCE;
			return isThere && isStraightened([piece], [wanted]);
		}));

/** A curve that lies to the wrong side so many times as far as to the right one bulges the wrong way; less is a wobble. */
const MOSTLY = 2;

const bulgesWrongWay = (placed: Path, right: Path): boolean => {
	const [drawn, wanted] = [bulgeOf(placed), bulgeOf(right)];
	const [same, wrong] = wanted.mean > 0 ? [drawn.one, drawn.other] : [drawn.other, drawn.one];
	return wrong > CURVE_TOLERANCE && wrong > MOSTLY * same;
};

const MIRRORED = said('mirrored', slip('mirrored'));

/** What explains the whole shape at once, the best first. */
const shapeMissteps = (placed: Path, right: Path, error: number): readonly CurveMisstep[] => {
	if (isOverFold(placed, right, error)) return [MIRRORED];
	return [
		...(isStraight(placed, right) ? [said('straight', slip('straightened'))] : []),
		...(bulgesWrongWay(placed, right) ? [said('wrong-way', slip('wrongBulge'))] : []),
		...(isTurnedRound(placed, right, error) ? [MIRRORED] : []),
		...(hasWrongEnds(placed, right) ? [said('wrong-ends', slip('wrongEnds'))] : [])
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

/**
 * What is wrong with the shape of a curve, what explains most of it first; nothing where the curve keeps
 * its tolerances, or where its error is of no known shape.
 */
export const diagnoseCurve = (step: Step, placed: Path, right: Path): readonly CurveMisstep[] => {
	const drawn = turnedTo(placed, right);
	const error = shapesApart(drawn, right);
	const shape = error > CURVE_TOLERANCE ? shapeMissteps(drawn, right, error) : [];
	if (shape.length > 0) return shape;
	const findings = checkLine(step, drawn, right, TOLERANCES.normal).filter(({ within }) => !within);
	const strays = findings.some(({ aspect }) => aspect === 'course' || aspect === 'direction');
	return [
		...(strays && wobblesBeside(drawn, right) ? [said('wobble', slip('wobble'))] : []),
		...slanting(findings),
		...lengthWrong(findings)
	];
};
