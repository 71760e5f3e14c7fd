import { printLength } from '#shared/units.ts';
import { curveCorner } from '#geometry/corner-curve.ts';
import { pathLength } from '#geometry/path.ts';
import { directionTo } from '#geometry/point.ts';
import type { CubicSegment } from '#geometry/segment.ts';
import { offsetWords } from '../words.ts';
import { curveNeeds, curveSegments, headingWords, type CurveNode } from './course.ts';
import { madeLine, type StepOf, type StepRules, type Unit } from './step-rules.ts';

const handleWords = (segments: readonly CubicSegment[], through: readonly CurveNode[], unit: Unit): string =>
	segments
		.map(({ from, leaving, arriving, to }, i) => {
			const [start, end] = [through[i]?.point, through[i + 1]?.point];
			return `out of ${start}, ${offsetWords(from, leaving, unit)}; into ${end}, ${offsetWords(to, arriving, unit)} from it`;
		})
		.join('; ');

const CORNER =
	'The square lines from the two ends meet at a corner; each handle goes 0.55 of the way from its end to that corner.';
const THIRDS = 'Each handle lies a third of the straight distance from its own end.';
const BOTH =
	'Where the square lines from two ends meet ahead of both, each handle goes 0.55 of the way to that corner; where they do not, it lies a third of the straight distance from its end.';

/** Whether the lines ahead of a piece's start and back from its end meet at a corner. */
const hasCorner = ({ from, leaving, arriving, to }: CubicSegment): boolean => {
	const [out, into] = [directionTo(from, leaving), directionTo(arriving, to)];
	if (!out || !into) return false;
	return curveCorner({ point: from, heading: out }, { point: to, heading: into }) !== undefined;
};

/** The rule of the handles, as it holds for this body. */
const ruleWords = (rule: StepOf<'curve'>['rule'], segments: readonly CubicSegment[]): string => {
	const corners = segments.filter(hasCorner).length;
	if (rule === 'thirds' || corners === 0) return THIRDS;
	return corners === segments.length ? CORNER : BOTH;
};

/**
 * A curve through points with a heading at each, as a chain of cubic Bezier segments, so that its
 * length is unambiguous. A heading is a way on the sheet, along the chord, or told by drawn lines.
 */
export const curve: StepRules<'curve'> = {
	makes: 'line',
	read: (file) => file,
	formulas: () => [],
	needs: curveNeeds,
	start: ({ through }) => through[0]?.point,
	work: (step, scope) => madeLine(curveSegments(step, scope)),
	explain: (step, scope, { unit, lineWords }) => {
		const segments = curveSegments(step, scope);
		const ways = step.through.map(({ point, heading }) => `${point} ${headingWords(heading, lineWords)}`);
		return {
			where: `Look at how the curve runs: through ${ways.join(', then ')}.`,
			rule: ruleWords(step.rule, segments),
			worked: `Handles: ${handleWords(segments, step.through, unit)}. The curve is ${printLength(pathLength(segments), unit)} long.`
		};
	}
};
