import type { Compass } from '#shared/method.ts';
import { mm, type Mm } from '#shared/units.ts';
import { pathEnd, pathLength, pathStart } from '#geometry/path.ts';
import { alongness, directionTo, moved, opposite, type Direction, type SheetPoint } from '#geometry/point.ts';
import { lengthOf } from '#drafting/formula/value.ts';
import { COMPASS } from '#drafting/steps/compass.ts';
import { workStep } from '#drafting/steps/kinds.ts';
import type { StepOf } from '#drafting/steps/step-rules.ts';
import { courseOnLine, courseToward, straightCourse, type Course } from '../courses.ts';
import { slip, type Misstep, type Part } from '../misstep.ts';
import {
	aimParts,
	laid,
	laidOn,
	laidOnOthers,
	laidTogether,
	lengthParts,
	startParts,
	twoTerms
} from '../parts.ts';
import { PRIORS } from '../priors.ts';
import type { Stand } from '../stand.ts';
import { lineOf } from '../taken.ts';
import { otherLines } from '../other-lengths.ts';
import { backward, type KindMissteps } from './kind-missteps.ts';

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

/** The length measured square where the rule goes as another line runs. */
const squareSame = (start: SheetPoint, slope: Direction, length: Mm): readonly Misstep[] =>
	(Object.keys(COMPASS) as Compass[])
		.filter((way) => alongness(COMPASS[way], slope) > SQUARE_ENOUGH)
		.map((way) => ({
			note: 'slope',
			prior: PRIORS.slope,
			place: moved(start, COMPASS[way], length),
			slips: [slip('notSloping', { wrong: way })]
		}));

const towardPoint = (step: StepOf<'along'>, { from, toward }: OnPoints, stand: Stand): readonly Misstep[] => {
	const [start, aim] = [stand.scope.point(from), stand.scope.point(toward)];
	const slope = directionTo(start, aim);
	if (!slope) return [];
	const length = lengthOf(step.by, stand.scope);
	const [starts, aims] = [startParts(from, stand), aimParts(toward, from, stand)];
	const course = straightCourse(stand, start, slope);
	const lengths = lengthParts(step.by, stand, course, ...starts, ...aims);
	const between = (begin: SheetPoint, end: SheetPoint): SheetPoint | undefined => {
		const way = directionTo(begin, end);
		return way && moved(begin, way, length);
	};
	// Whoever begins at the point that is gone toward turns back.
	const begun = starts.map((part) => ({
		...part,
		value:
			part.value === aim ? straightCourse(stand, aim, opposite(slope)) : courseToward(stand, part.value, aim)
	}));
	const aimed = aims.map((part) => ({ ...part, value: courseToward(stand, start, part.value) }));
	return [
		...laidOn(stand, lengths, course),
		...laid(stand, [...begun, ...aimed], ({ at }) => at(length)),
		{
			note: 'direction:opposite',
			prior: PRIORS.opposite,
			place: moved(start, slope, backward(length)),
			slips: [slip('away', { toward })]
		},
		...squareInstead(start, slope, length, toward),
		...twoTerms(step.by, lengths, stand, course),
		...laidOnOthers(stand, lengths, begun),
		...laidOnOthers(stand, lengths, aimed),
		...laidTogether(stand, starts, aims, between)
	];
};

/** What the line is taken for: another that is drawn, from either end; or the straight way from its end to end, or square from it. */
const otherCourses = ({ line, from }: OnLine, length: Mm, stand: Stand): readonly Misstep[] => {
	const { scope, method } = stand;
	if (!stand.placed) return [];
	const path = scope.line(line);
	const [begin, end] = from === 'start' ? [pathStart(path), pathEnd(path)] : [pathEnd(path), pathStart(path)];
	const ways = [directionTo(begin, end), ...Object.values(COMPASS)].filter((way) => way !== undefined);
	const others = otherLines(stand).filter((other) => other.line !== line);
	return [
		...ways.map((way) => ({
			note: 'length:straight',
			prior: PRIORS.straightForCurved / ways.length,
			place: moved(begin, way, length),
			slips: [slip('measuredStraight', { line: lineOf(method, line) })]
		})),
		...others.flatMap(({ line: other, length: whole, share }) => {
			const { at, near } = courseOnLine(stand, scope.line(other));
			return [length, mm(whole - length)].flatMap((by) => {
				const place = near(by) ? at(by) : undefined;
				return place
					? [
							{
								note: `line:${other}-for-${line}`,
								prior: (PRIORS.otherLine / 2) * share,
								place,
								slips: [slip('alongOther', { wrong: lineOf(method, other), right: lineOf(method, line) })]
							}
						]
					: [];
			});
		})
	];
};

const alongLine = (step: StepOf<'along'>, on: OnLine, stand: Stand): readonly Misstep[] => {
	const { line, from } = on;
	const path = stand.scope.line(line);
	const [whole, length] = [pathLength(path), lengthOf(step.by, stand.scope)];
	const forth = courseOnLine(stand, path);
	const back: Course = {
		at: (by) => forth.at(mm(whole - by)),
		near: (by) => forth.near(whole - by)
	};
	const [course, other] = from === 'start' ? [forth, back] : [back, forth];
	const farEnd: Part<Course> = {
		note: 'direction:opposite',
		prior: PRIORS.opposite,
		value: other,
		slip: () => slip('otherEnd', { line: lineOf(stand.method, line), from })
	};
	const lengths = lengthParts(step.by, stand, course, farEnd);
	return [
		...laidOn(stand, lengths, course),
		...laid(stand, [farEnd], ({ at }) => at(length)),
		...laidOnOthers(stand, lengths, [farEnd]),
		...twoTerms(step.by, lengths, stand, course),
		...otherCourses(on, length, stand)
	];
};

/** The way that a step goes which goes as another line runs. */
const wayAs = (step: StepOf<'along'>, start: SheetPoint, { scope }: Stand): Direction | undefined => {
	const ahead = workStep({ ...step, by: { kind: 'number', value: 1 } }, scope);
	return ahead.kind === 'point' ? directionTo(start, ahead.point) : undefined;
};

/** A length laid off the way that another line runs: worked wrongly, begun elsewhere, turned back, or measured square. */
const sameWay = (step: StepOf<'along'>, { from: begin }: OnCourse, stand: Stand): readonly Misstep[] => {
	const start = stand.scope.point(begin);
	const slope = wayAs(step, start, stand);
	if (!slope) return [];
	const length = lengthOf(step.by, stand.scope);
	const starts = startParts(begin, stand);
	const course = straightCourse(stand, start, slope);
	const lengths = lengthParts(step.by, stand, course, ...starts);
	const from = starts.map((part) => ({ ...part, value: straightCourse(stand, part.value, slope) }));
	return [
		...laidOn(stand, lengths, course),
		...laid(stand, from, ({ at }) => at(length)),
		{
			note: 'direction:opposite',
			prior: PRIORS.opposite,
			place: moved(start, slope, backward(length)),
			slips: [slip('opposite')]
		},
		...(stand.placed ? squareSame(start, slope, length) : []),
		...twoTerms(step.by, lengths, stand, course),
		...laidOnOthers(stand, lengths, from)
	];
};

/** A point along a line: the distance, the start, the aim, and square instead of along the slope. */
export const alongMissteps: KindMissteps<'along'> = (step, stand) => {
	const { on } = step;
	if ('line' in on) return alongLine(step, on, stand);
	return 'as' in on ? sameWay(step, on, stand) : towardPoint(step, on, stand);
};
