import type { CourseFile } from '#shared/method.ts';
import type { SaidHeading } from '#shared/speech/en/steps.ts';
import type { Noun } from '#shared/speech/noun.ts';
import { cornerCurve, thirdsCurve, type CurveEnd } from '#geometry/corner-curve.ts';
import { pathMovedBy, turning } from '#geometry/motion.ts';
import { endDirection, pathEnd, pathStart, polyline, startDirection, type Path } from '#geometry/path.ts';
import {
	alongness,
	directionOf,
	directionTo,
	distance,
	opposite,
	squareTo,
	type Direction,
	type SheetPoint
} from '#geometry/point.ts';
import type { CubicSegment } from '#geometry/segment.ts';
import type { Scope } from '../formula/value.ts';
import type { Telling } from '../formula/words.ts';
import { COMPASS } from './compass.ts';
import { turnAngle } from './motion.ts';
import type { Heading, StepOf } from './step-rules.ts';

/** The rule and the points of a curve, wherever a step holds them. */
export type CurveFile = Pick<StepOf<'curve'>, 'rule' | 'through'>;
/** A point of a curve, and the direction in which the curve runs through it. */
export type CurveNode = CurveFile['through'][number];

/** The names that a drawn line, or a straight way between two points, is worked from. */
export const courseNeeds = (course: CourseFile): readonly string[] =>
	typeof course === 'string' ? [course] : course;

/** A drawn line, or the straight way between two points. */
export const coursePath = (course: CourseFile, scope: Scope): Path =>
	typeof course === 'string' ? scope.line(course) : polyline(scope.point(course[0]), scope.point(course[1]));

/** What a course is called: "the shoulder", "U–V". */
export const courseNoun = (course: CourseFile, telling: Telling): Noun =>
	typeof course === 'string' ? telling.line(course) : { name: course.join('–') };

/** The direction of a drawn line where it passes a place: at whichever of its own ends is the nearer. */
export const directionNear = (path: Path, place: SheetPoint): Direction | undefined =>
	distance(pathStart(path), place) <= distance(pathEnd(path), place)
		? startDirection(path)
		: endDirection(path);

/** Half way between the directions of a line that ends at a join and of one that begins there. */
const smoothAcross = (first: Path, second: Path): Direction | undefined => {
	const [ending, beginning] = [endDirection(first), startDirection(second)];
	return ending && beginning && directionOf(ending.dx + beginning.dx, ending.dy + beginning.dy);
};

const headingAt = (heading: Heading, place: SheetPoint, chord: Direction, scope: Scope): Direction => {
	if (heading === 'chord') return chord;
	if (typeof heading === 'string') return COMPASS[heading];
	if ('along' in heading) return directionNear(coursePath(heading.along, scope), place) ?? chord;
	if ('sewn' in heading) {
		const about = scope.point(heading.about);
		const sewn = turning(about, turnAngle(about, scope.point(heading.from), scope.point(heading.onto)));
		return directionNear(pathMovedBy(sewn, coursePath(heading.sewn, scope)), place) ?? chord;
	}
	if ('across' in heading) {
		const [first, second] = heading.across;
		return smoothAcross(scope.line(first), scope.line(second)) ?? chord;
	}
	const line = directionNear(coursePath(heading.squareTo, scope), place);
	const square = line ? squareTo(line) : COMPASS[heading.toward];
	return alongness(square, COMPASS[heading.toward]) >= 0 ? square : opposite(square);
};

/** The names that a heading is worked from. */
const headingNeeds = (heading: Heading): readonly string[] => {
	if (typeof heading === 'string') return [];
	if ('along' in heading) return courseNeeds(heading.along);
	if ('sewn' in heading) return [...courseNeeds(heading.sewn), heading.about, heading.from, heading.onto];
	return 'across' in heading ? heading.across : courseNeeds(heading.squareTo);
};

/** A heading as a rule says it. */
export const saidHeading = (heading: Heading, telling: Telling): SaidHeading => {
	if (typeof heading === 'string') return heading;
	if ('along' in heading) return { along: courseNoun(heading.along, telling) };
	if ('sewn' in heading) return { sewn: courseNoun(heading.sewn, telling) };
	return 'across' in heading ? 'join' : { squareTo: courseNoun(heading.squareTo, telling) };
};

/** The points and lines that a curve is worked from. */
export const curveNeeds = ({ through }: CurveFile): readonly string[] =>
	through.flatMap(({ point, heading }) => [point, ...headingNeeds(heading)]);

/** One segment of a curve between two of its points, by its rule. */
const segmentBetween = (
	rule: CurveFile['rule'],
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

/** The segments of a curve, one between each of its points and the next. Throws for fewer than two points. */
export const curveSegments = (
	{ rule, through }: CurveFile,
	scope: Scope
): [CubicSegment, ...CubicSegment[]] => {
	const [first, ...rest] = through.slice(1).map((to, i) => segmentBetween(rule, through[i] ?? to, to, scope));
	if (!first) throw new Error('a curve has fewer than two points');
	return [first, ...rest];
};
