import { SAME_PLACE } from '#shared/tolerances.ts';
import type { Compass } from '#shared/method.ts';
import { endDirection, pathEnd, pathStart, startDirection, type Path } from '#geometry/path.ts';
import {
	alongness,
	directionTo,
	distance,
	moved,
	opposite,
	squareTo,
	type Direction,
	type SheetPoint
} from '#geometry/point.ts';
import { lengthOf } from '#drafting/formula/value.ts';
import { COMPASS } from '#drafting/steps/compass.ts';
import type { StepOf } from '#drafting/steps/step-rules.ts';
import { straightCourse } from '../courses.ts';
import { slip, type Part } from '../misstep.ts';
import { laid, laidOn, laidOnOthers, laidTogether, lengthParts, startParts, twoTerms } from '../parts.ts';
import { LOWERED, PRIORS } from '../priors.ts';
import type { Stand } from '../stand.ts';
import type { KindMissteps } from './kind-missteps.ts';

/** Each way, and the three others: the opposite, the crossed one, and that one's opposite. */
const OTHER_WAYS: Readonly<Record<Compass, readonly [opposite: Compass, crossed: Compass, both: Compass]>> = {
	down: ['up', 'across', 'in'],
	up: ['down', 'in', 'across'],
	across: ['in', 'down', 'up'],
	in: ['across', 'up', 'down']
};

const wrongWays = ({ go }: StepOf<'mark'>): readonly Part<Direction>[] => {
	const [back, crossed, both] = OTHER_WAYS[go];
	const ways: readonly (readonly [Compass, string, number])[] = [
		[back, 'direction:opposite', PRIORS.opposite],
		[crossed, 'direction:crossed', PRIORS.crossed],
		[both, 'direction:crossed', PRIORS.crossed * LOWERED.crossedAndOpposite]
	];
	return ways.map(([way, note, prior]) => ({
		...{ note, prior, value: COMPASS[way] },
		slip: () => slip('way', { wrong: way, right: go })
	}));
};

/** The least that a slope runs the way of the rule to be taken for it (cosine of 60 degrees), and the most to be another way at all. */
const SLOPE: readonly [number, number] = [0.5, 0.9999];

/** The way along a drawn line from a point at one of its ends. */
const wayFrom = (path: Path, start: SheetPoint): Direction | undefined => {
	if (distance(pathStart(path), start) <= SAME_PLACE) return startDirection(path);
	const way = distance(pathEnd(path), start) <= SAME_PLACE ? endDirection(path) : undefined;
	return way && opposite(way);
};

/** Along the lines drawn before that leave the start on a slope. */
const alongSlopes = ({ go }: StepOf<'mark'>, stand: Stand, start: SheetPoint): readonly Part<Direction>[] => {
	const before = stand.method.steps.slice(0, stand.method.steps.indexOf(stand.step));
	return before.flatMap(({ name, label }) => {
		const path = stand.drafted.lines[name]?.path;
		const way = path && wayFrom(path, start);
		const along = way ? alongness(way, COMPASS[go]) : 0;
		if (!way || along < SLOPE[0] || along > SLOPE[1]) return [];
		return [
			{
				note: 'slope',
				prior: PRIORS.slope,
				value: way,
				slip: () => slip('alongLine', { line: { noun: label }, right: go })
			}
		];
	});
};

/** Square to the slanted line that the start divides, to its one side and its other. */
const squareToGuide = (
	{ from, go }: StepOf<'mark'>,
	{ method, scope }: Stand
): readonly Part<Direction>[] => {
	const start = method.steps.find(({ name }) => name === from);
	if (start?.kind !== 'division') return [];
	const way = directionTo(scope.point(start.from), scope.point(start.to));
	if (!way || Math.max(Math.abs(way.dx), Math.abs(way.dy)) > SLOPE[1]) return [];
	const square = squareTo(way);
	const nearer = alongness(square, COMPASS[go]) >= 0 ? square : opposite(square);
	const [towardRule, away] = [nearer, opposite(nearer)];
	return [
		{ value: towardRule, prior: PRIORS.slope },
		{ value: away, prior: PRIORS.slope * LOWERED.seldom }
	].map((each) => ({
		...each,
		note: 'slope:square',
		slip: () => slip('squareToGuide', { from: start.from, to: start.to, right: go })
	}));
};

/** A point marked from an earlier one: the distance, the start, the way, and any two of them. */
export const markMissteps: KindMissteps<'mark'> = (step, stand) => {
	const [start, length, way] = [
		stand.scope.point(step.from),
		lengthOf(step.by, stand.scope),
		COMPASS[step.go]
	];
	const starts = startParts(step.from, stand);
	const ways = [...wrongWays(step), ...alongSlopes(step, stand, start), ...squareToGuide(step, stand)];
	const course = straightCourse(stand, start, way);
	const lengths = lengthParts(step.by, stand, course, ...starts, ...ways);
	const from = starts.map((part) => ({ ...part, value: straightCourse(stand, part.value, way) }));
	const otherWays = ways.map((part) => ({ ...part, value: straightCourse(stand, start, part.value) }));
	return [
		...laidOn(stand, lengths, course),
		...laid(stand, [...from, ...otherWays], ({ at }) => at(length)),
		...twoTerms(step.by, lengths, stand, course),
		...laidOnOthers(stand, lengths, from),
		...laidOnOthers(stand, lengths, otherWays),
		...laidTogether(stand, starts, ways, (begin, other) => moved(begin, other, length))
	];
};
