import type { Compass } from '#shared/method.ts';
import { mm, type Mm } from '#shared/units.ts';
import { pathLength, pointAtLength } from '#geometry/path.ts';
import { alongness, directionTo, moved, opposite, type Direction, type SheetPoint } from '#geometry/point.ts';
import { lengthOf } from '#drafting/formula/value.ts';
import { COMPASS } from '#drafting/steps/compass.ts';
import type { StepOf } from '#drafting/steps/step-rules.ts';
import { slip, type Misstep } from '../misstep.ts';
import { PRIORS } from '../priors.ts';
import type { Stand } from '../stand.ts';
import { lineOf } from '../taken.ts';
import { backward, wronglyAimed, wronglyStarted, wronglyWorked, type KindMissteps } from './kind-missteps.ts';

type On = StepOf<'along'>['on'];
type OnPoints = Extract<On, { toward: string }>;
type OnLine = Extract<On, { line: string }>;
type OnCourse = Extract<On, { as: unknown }>;

/** The least that a square way runs along the slope to be taken for it: the cosine of 75 degrees. */
const SQUARE_ENOUGH = 0.26;

/** The length measured square, up or down or across, where the rule measures along the slope; or square until the slope is met. */
const squareInstead = (
	start: SheetPoint,
	slope: Direction,
	length: Mm,
	toward: string
): readonly Misstep[] => {
	const ways = (Object.keys(COMPASS) as Compass[]).map((way) => ({
		way,
		along: alongness(COMPASS[way], slope)
	}));
	return ways
		.filter(({ along }) => along > SQUARE_ENOUGH)
		.flatMap(({ way, along }) =>
			[moved(start, COMPASS[way], length), moved(start, slope, mm(length / along))].map((place) => ({
				note: 'slope',
				prior: (PRIORS.slope / 2) * along,
				place,
				slips: [slip('squareTo', { wrong: way, toward })]
			}))
		);
};

const towardPoint = (step: StepOf<'along'>, { from, toward }: OnPoints, stand: Stand): readonly Misstep[] => {
	const [start, aim] = [stand.scope.point(from), stand.scope.point(toward)];
	const slope = directionTo(start, aim);
	if (!slope) return [];
	const length = lengthOf(step.by, stand.scope);
	const lay = (begin: SheetPoint, end: SheetPoint): SheetPoint | undefined => {
		const way = directionTo(begin, end);
		return way && moved(begin, way, length);
	};
	return [
		...wronglyWorked(step.by, stand, (by) => moved(start, slope, by)),
		...wronglyStarted(from, stand, (begin) =>
			begin === aim ? moved(aim, opposite(slope), length) : lay(begin, aim)
		),
		...wronglyAimed(toward, from, stand, (end) => lay(start, end)),
		{
			note: 'direction:opposite',
			prior: PRIORS.opposite,
			place: moved(start, slope, backward(length)),
			slips: [slip('away', { toward })]
		},
		...squareInstead(start, slope, length, toward)
	];
};

const alongLine = (step: StepOf<'along'>, { line, from }: OnLine, stand: Stand): readonly Misstep[] => {
	const path = stand.scope.line(line);
	const [whole, length] = [pathLength(path), lengthOf(step.by, stand.scope)];
	const lay = (by: Mm, end: OnLine['from']): SheetPoint | undefined =>
		pointAtLength(path, end === 'start' ? by : mm(whole - by));
	const other = lay(length, from === 'start' ? 'end' : 'start');
	return [
		...wronglyWorked(step.by, stand, (by) => lay(by, from)),
		...(other
			? [
					{
						note: 'direction:opposite',
						prior: PRIORS.opposite,
						place: other,
						slips: [slip('otherEnd', { line: lineOf(stand.method, line), from })]
					}
				]
			: [])
	];
};

/** A length laid off the way that another line runs: worked wrongly, begun elsewhere, or turned back. */
const sameWay = (step: StepOf<'along'>, { from }: OnCourse, stand: Stand): readonly Misstep[] => {
	const start = stand.scope.point(from);
	const slope = directionTo(start, stand.right);
	if (!slope) return [];
	const length = lengthOf(step.by, stand.scope);
	return [
		...wronglyWorked(step.by, stand, (by) => moved(start, slope, by)),
		...wronglyStarted(from, stand, (begin) => moved(begin, slope, length)),
		{
			note: 'direction:opposite',
			prior: PRIORS.opposite,
			place: moved(start, slope, backward(length)),
			slips: [slip('opposite')]
		}
	];
};

/** A point along a line: the distance, the start, the aim, and square instead of along the slope. */
export const alongMissteps: KindMissteps<'along'> = (step, stand) => {
	const { on } = step;
	if ('line' in on) return alongLine(step, on, stand);
	return 'as' in on ? sameWay(step, on, stand) : towardPoint(step, on, stand);
};
