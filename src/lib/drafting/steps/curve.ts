import { curveCorner } from '#geometry/corner-curve.ts';
import { pathLength } from '#geometry/path.ts';
import { directionTo } from '#geometry/point.ts';
import type { CubicSegment } from '#geometry/segment.ts';
import { curveNeeds, curveSegments, saidHeading } from './course.ts';
import { madeLine, NOTHING, offsetTo, type StepOf, type StepRules } from './step-rules.ts';

/** Whether the lines ahead of a piece's start and back from its end meet at a corner. */
const hasCorner = ({ from, leaving, arriving, to }: CubicSegment): boolean => {
	const [out, into] = [directionTo(from, leaving), directionTo(arriving, to)];
	if (!out || !into) return false;
	return curveCorner({ point: from, heading: out }, { point: to, heading: into }) !== undefined;
};

/** The rule of the handles, as it holds for this body. */
const handlesOf = (
	rule: StepOf<'curve'>['rule'],
	segments: readonly CubicSegment[]
): 'thirds' | 'corner' | 'both' => {
	const corners = segments.filter(hasCorner).length;
	if (rule === 'thirds' || corners === 0) return 'thirds';
	return corners === segments.length ? 'corner' : 'both';
};

/**
 * A curve through points with a heading at each, as a chain of cubic Bezier segments, so that its
 * length is unambiguous. A heading is a way on the sheet, along the chord, or told by drawn lines.
 */
export const curve: StepRules<'curve'> = {
	makes: 'line',
	answer: ({ through, given }) => (given ? NOTHING : { put: 'handles', through }),
	passes: ({ through }) => through.map(({ point }) => point),
	rule: ({ rule }) => [rule],
	read: (file) => file,
	formulas: () => [],
	needs: curveNeeds,
	start: ({ through }) => through[0]?.point,
	work: (step, scope) => madeLine(curveSegments(step, scope)),
	explain: (step, scope, telling) => {
		const segments = curveSegments(step, scope);
		return telling.speech.words.steps.curve({
			through: step.through.map(({ point, heading }) => ({ point, heading: saidHeading(heading, telling) })),
			handles: handlesOf(step.rule, segments),
			pieces: segments.map(({ from, leaving, arriving, to }, i) => ({
				from: step.through[i]?.point ?? '',
				out: offsetTo(from, leaving),
				to: step.through[i + 1]?.point ?? '',
				into: offsetTo(to, arriving)
			})),
			length: pathLength(segments)
		});
	}
};
