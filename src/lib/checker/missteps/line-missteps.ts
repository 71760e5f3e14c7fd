import { POINT_TOLERANCE } from '#shared/tolerances.ts';
import { mm } from '#shared/units.ts';
import type { Body } from '#shared/body.ts';
import type { Compass } from '#shared/method.ts';
import { pathEnd, pathReversed, pathStart, type Path } from '#geometry/path.ts';
import { alongness, directionTo, distance, type SheetPoint } from '#geometry/point.ts';
import { scopeOf, type Drafted } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import { COMPASS } from '#drafting/steps/compass.ts';
import { stepAnswer, workStep } from '#drafting/steps/kinds.ts';
import type { Step, StepOf } from '#drafting/steps/step-rules.ts';
import { keeps } from '../check-point.ts';
import { turnedTo } from '../check-line.ts';
import { diagnoseCurve, isCurveCertain } from './curve-missteps.ts';
import { NO_DIAGNOSIS, slip, type Diagnosis } from './misstep.ts';
import { PRIORS } from './priors.ts';
import { passes, standOf } from './stand.ts';
import { weighed } from './weigh.ts';

const isAt = (a: SheetPoint, b: SheetPoint): boolean => keeps(distance(a, b), POINT_TOLERANCE);

/** How squarely a level drawn the wrong way still runs up, down or in: the cosine of 15 degrees. */
const SQUARELY = Math.cos(Math.PI / 12);

/** The points that stand on the sheet when a step is drawn. */
const pointsBefore = ({ steps }: Method, step: Step, { points }: Drafted): Drafted['points'] => {
	const names = steps
		.slice(
			0,
			steps.findIndex(({ name }) => name === step.name)
		)
		.map(({ name }) => name);
	return Object.fromEntries(Object.entries(points).filter(([name]) => names.includes(name)));
};

/** The ends that a line is ruled between, by name, where it is ruled between points at all. */
const endsOf = (step: Step): readonly string[] => {
	const answer = stepAnswer(step);
	if (answer.put === 'ends') return [answer.first, answer.last];
	return answer.put === 'level' ? [answer.from] : [];
};

/** A line ruled from or to another of the points on the sheet, its other end being right. */
const wrongEnd = (step: Step, drafted: Drafted, placed: Path): Diagnosis => {
	const ends = [pathStart(placed), pathEnd(placed)].map((place, i) => ({ place, i }));
	const wrong = endsOf(step).flatMap((name, i) => {
		const [end, meant] = [ends[i], drafted.points[name]];
		return end && meant && !isAt(end.place, meant) ? [{ ...end, name }] : [];
	});
	const [only, ...more] = wrong;
	if (!only || more.length > 0) return NO_DIAGNOSIS;
	const named = Object.entries(drafted.points).find(([, place]) => isAt(place, only.place));
	if (!named) return NO_DIAGNOSIS;
	const misstep = {
		note: `ends:${named[0]}-for-${only.name}`,
		slips: [slip(only.i === 0 ? 'ruledFrom' : 'ruledTo', { wrong: named[0], right: only.name })],
		place: only.place,
		prior: PRIORS.start
	};
	return { kind: 'certain', misstep };
};

/** A level drawn another way than across: from its point, but up, down or toward the centre. */
const wrongWay = (step: StepOf<'level'>, drafted: Drafted, placed: Path): Diagnosis => {
	const from = drafted.points[step.from];
	const start = from && [placed, pathReversed(placed)].find((path) => isAt(pathStart(path), from));
	const drawn = start && directionTo(pathStart(start), pathEnd(start));
	const way =
		drawn && (Object.keys(COMPASS) as Compass[]).find((each) => alongness(COMPASS[each], drawn) > SQUARELY);
	if (!start || way === undefined || way === 'across') return NO_DIAGNOSIS;
	const misstep = {
		note: way === 'in' ? 'direction:opposite' : 'direction:crossed',
		slips: [slip('way', { wrong: way, right: 'across' as const })],
		place: pathEnd(start),
		prior: PRIORS.opposite
	};
	return { kind: 'certain', misstep };
};

/** A level of the wrong length, its end lying on it: the end is then explained as a point marked so far across would be. */
const wrongLength = (
	{ name, label, from, reach }: StepOf<'level'>,
	method: Method,
	body: Body,
	drafted: Drafted,
	placed: Path
): Diagnosis => {
	const mark: Step = { kind: 'mark', name, label, from, go: 'across', by: reach };
	const [stand, end] = [standOf(method, mark, body, drafted), pathEnd(placed)];
	if (!stand || passes(stand, end) || !keeps(mm(Math.abs(end.y - stand.right.y)), POINT_TOLERANCE))
		return NO_DIAGNOSIS;
	return weighed(end, stand);
};

/** What probably went wrong at a line: the shape of a curve, or another end. Throws NotDrafted, BadInput. */
export const diagnoseLine = (
	method: Method,
	step: Step,
	body: Body,
	drafted: Drafted,
	placed: Path
): Diagnosis => {
	const work = workStep(step, scopeOf(method, body, drafted));
	if (work.kind !== 'line') return NO_DIAGNOSIS;
	const drawn = turnedTo(placed, work.path);
	if (stepAnswer(step).put !== 'handles') {
		if (step.kind !== 'level') return wrongEnd(step, drafted, drawn);
		const tried = [wrongWay(step, drafted, drawn), wrongEnd(step, drafted, drawn)];
		return tried.find(({ kind }) => kind !== 'none') ?? wrongLength(step, method, body, drafted, drawn);
	}
	const explained = diagnoseCurve(step, drawn, work.path, pointsBefore(method, step, drafted));
	const [first] = explained;
	if (!first) return NO_DIAGNOSIS;
	const misstep = { ...first, place: pathEnd(drawn), prior: PRIORS.curve };
	return isCurveCertain(explained, drawn, work.path)
		? { kind: 'certain', misstep }
		: { kind: 'either', missteps: [misstep] };
};
