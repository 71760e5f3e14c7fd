import { printLength } from '#shared/units.ts';
import { pathLength } from '#geometry/path.ts';
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

const RULES: Readonly<Record<StepOf<'curve'>['rule'], string>> = {
	corner:
		'The square lines from the two ends meet at a corner; each handle goes 0.55 of the way from its end to that corner.',
	thirds: 'Each handle lies a third of the straight distance from its own end.'
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
			rule: RULES[step.rule],
			worked: `Handles: ${handleWords(segments, step.through, unit)}. The curve is ${printLength(pathLength(segments), unit)} long.`
		};
	}
};
