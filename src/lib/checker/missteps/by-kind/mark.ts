import { SAME_PLACE } from '#shared/tolerances.ts';
import type { Compass } from '#shared/method.ts';
import type { Mm } from '#shared/units.ts';
import { endDirection, pathEnd, pathStart, startDirection, type Path } from '#geometry/path.ts';
import { alongness, distance, moved, opposite, type Direction, type SheetPoint } from '#geometry/point.ts';
import { lengthOf } from '#drafting/formula/value.ts';
import { COMPASS } from '#drafting/steps/compass.ts';
import type { StepOf } from '#drafting/steps/step-rules.ts';
import { slip, type Misstep } from '../misstep.ts';
import { LOWERED, PRIORS } from '../priors.ts';
import type { Stand } from '../stand.ts';
import { backward, wronglyStarted, wronglyWorked, type KindMissteps } from './kind-missteps.ts';

/** Each way, and the three others: the opposite, the crossed one, and that one's opposite. */
const OTHER_WAYS: Readonly<Record<Compass, readonly [opposite: Compass, crossed: Compass, both: Compass]>> = {
	down: ['up', 'across', 'in'],
	up: ['down', 'in', 'across'],
	across: ['in', 'down', 'up'],
	in: ['across', 'up', 'down']
};

const wrongWay = (
	{ go }: StepOf<'mark'>,
	start: SheetPoint,
	length: Mm,
	way: Compass,
	note: string,
	prior: number
): Misstep => ({
	note,
	prior,
	place: moved(start, COMPASS[way], length),
	slips: [slip('way', { wrong: way, right: go })]
});

const wrongWays = (step: StepOf<'mark'>, start: SheetPoint, length: Mm): readonly Misstep[] => {
	const [back, crossed, both] = OTHER_WAYS[step.go];
	return [
		wrongWay(step, start, length, back, 'direction:opposite', PRIORS.opposite),
		wrongWay(step, start, length, crossed, 'direction:crossed', PRIORS.crossed),
		wrongWay(step, start, length, both, 'direction:crossed', PRIORS.crossed * LOWERED.crossedAndOpposite)
	];
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
const alongSlopes = (
	step: StepOf<'mark'>,
	stand: Stand,
	start: SheetPoint,
	length: Mm
): readonly Misstep[] => {
	const before = stand.method.steps.slice(0, stand.method.steps.indexOf(stand.step));
	return before.flatMap(({ name, label }) => {
		const path = stand.drafted.lines[name]?.path;
		const way = path && wayFrom(path, start);
		const along = way ? alongness(way, COMPASS[step.go]) : 0;
		if (!way || along < SLOPE[0] || along > SLOPE[1]) return [];
		return [
			{
				note: 'slope',
				prior: PRIORS.slope,
				place: moved(start, way, length),
				slips: [slip('alongLine', { line: { noun: label }, right: step.go })]
			}
		];
	});
};

/** A point marked from an earlier one: the distance, the start, the way. */
export const markMissteps: KindMissteps<'mark'> = (step, stand) => {
	const [start, length] = [stand.scope.point(step.from), lengthOf(step.by, stand.scope)];
	const lay = (from: SheetPoint, by: Mm): SheetPoint =>
		by < 0 ? moved(from, opposite(COMPASS[step.go]), backward(by)) : moved(from, COMPASS[step.go], by);
	return [
		...wronglyWorked(step.by, stand, (by) => lay(start, by)),
		...wronglyStarted(step.from, stand, (from) => lay(from, length)),
		...wrongWays(step, start, length),
		...alongSlopes(step, stand, start, length)
	];
};
