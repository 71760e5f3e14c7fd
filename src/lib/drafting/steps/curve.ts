import { printLength } from '#shared/units.ts';
import { cornerCurve, thirdsCurve, type CurveEnd } from '#geometry/corner-curve.ts';
import { pathEnd, pathLength, pathStart, endDirection, startDirection, type Path } from '#geometry/path.ts';
import {
	alongness,
	directionTo,
	distance,
	opposite,
	squareTo,
	type Direction,
	type SheetPoint
} from '#geometry/point.ts';
import type { CubicSegment } from '#geometry/segment.ts';
import type { Scope } from '../formula/value.ts';
import { COMPASS_WORDS, offsetWords } from '../words.ts';
import { COMPASS } from './compass.ts';
import { madeLine, type Heading, type StepOf, type StepRules, type Unit } from './step-rules.ts';

type CurveNode = StepOf<'curve'>['through'][number];

/** The direction of a drawn line where it passes an end of a curve: at whichever of its own ends is the nearer. */
const directionNear = (path: Path, place: SheetPoint): Direction | undefined =>
	distance(pathStart(path), place) <= distance(pathEnd(path), place)
		? startDirection(path)
		: endDirection(path);

const headingAt = (heading: Heading, place: SheetPoint, chord: Direction, scope: Scope): Direction => {
	if (heading === 'chord') return chord;
	if (typeof heading === 'string') return COMPASS[heading];
	const line = directionNear(scope.line(heading.squareTo), place);
	const square = line ? squareTo(line) : COMPASS[heading.toward];
	return alongness(square, COMPASS[heading.toward]) >= 0 ? square : opposite(square);
};

/** One segment of a curve between two of its points, by the step's rule. */
const segmentBetween = (
	rule: StepOf<'curve'>['rule'],
	from: CurveNode,
	to: CurveNode,
	scope: Scope
): CubicSegment => {
	const [start, end] = [scope.point(from.point), scope.point(to.point)];
	const chord = directionTo(start, end) ?? COMPASS.down;
	const leaving: CurveEnd = { point: start, heading: headingAt(from.heading, start, chord, scope) };
	const arriving: CurveEnd = { point: end, heading: headingAt(to.heading, end, chord, scope) };
	return rule === 'corner' ? cornerCurve(leaving, arriving) : thirdsCurve(leaving, arriving);
};

const segmentsOf = (
	{ name, rule, through }: StepOf<'curve'>,
	scope: Scope
): [CubicSegment, ...CubicSegment[]] => {
	const [first, ...rest] = through.slice(1).map((to, i) => segmentBetween(rule, through[i] ?? to, to, scope));
	if (!first) throw new Error(`the curve ${name} has fewer than two points`);
	return [first, ...rest];
};

const headingWords = (heading: Heading, lineWords: (name: string) => string): string => {
	if (heading === 'chord') return 'straight at the other end';
	return typeof heading === 'string' ? COMPASS_WORDS[heading] : `square to ${lineWords(heading.squareTo)}`;
};

const handleWords = (segments: readonly CubicSegment[], through: readonly CurveNode[], unit: Unit): string =>
	segments
		.map(({ from, leaving, arriving, to }, i) => {
			const [start, end] = [through[i]?.point, through[i + 1]?.point];
			return `out of ${start}, ${offsetWords(from, leaving, unit)}; into ${end}, ${offsetWords(to, arriving, unit)} from it`;
		})
		.join('; ');

const RULES: Readonly<Record<StepOf<'curve'>['rule'], string>> = {
	corner:
		'The square lines from the two ends meet at a corner; each handle goes 0.55 of the way from its end to that corner.',
	thirds: 'Each handle lies a third of the straight distance from its own end.'
};

/**
 * A curve through points with a heading at each, as a chain of cubic Bezier segments, so that its
 * length is unambiguous. A heading is a way on the sheet, along the chord, or square to a drawn line.
 */
export const curve: StepRules<'curve'> = {
	makes: 'line',
	read: (file) => file,
	formulas: () => [],
	needs: ({ through }) =>
		through.flatMap(({ point, heading }) => [
			point,
			...(typeof heading === 'object' ? [heading.squareTo] : [])
		]),
	start: ({ through }) => through[0]?.point,
	work: (step, scope) => madeLine(segmentsOf(step, scope)),
	explain: (step, scope, { unit, lineWords }) => {
		const segments = segmentsOf(step, scope);
		const ways = step.through.map(({ point, heading }) => `${point} ${headingWords(heading, lineWords)}`);
		return {
			where: `Look at how the curve runs: through ${ways.join(', then ')}.`,
			rule: RULES[step.rule],
			worked: `Handles: ${handleWords(segments, step.through, unit)}. The curve is ${printLength(pathLength(segments), unit)} long.`
		};
	}
};
