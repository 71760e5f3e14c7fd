import { UNSPOKEN } from '#shared/tolerances.ts';
import { radians, type Mm } from '#shared/units.ts';
import { lengthOf, type Scope } from '#drafting/formula/value.ts';
import { formulaLengths } from '#drafting/formula/formula.ts';
import { isPointName } from '#drafting/names.ts';
import { turnAngle } from '#drafting/steps/motion.ts';
import { asideOfWay, placesByLength } from '#drafting/steps/until.ts';
import type { StepOf } from '#drafting/steps/step-rules.ts';
import { movedBy, turning } from '#geometry/motion.ts';
import { pathLength } from '#geometry/path.ts';
import { at, distance, type SheetPoint } from '#geometry/point.ts';
import { slip, type Misstep } from '../misstep.ts';
import { PRIORS, STRAY } from '../priors.ts';
import type { Stand } from '../stand.ts';
import { lineOf } from '../taken.ts';
import { wronglyStarted, wronglyWorked, type KindMissteps } from './kind-missteps.ts';

/**
 * Where the point would come to lie with a curve of another length, seen from a start; nowhere where the learner's
 * point lies beside the whole way, since finding each place draws its curve some ten times and, where there is none, fifty.
 */
const placesFrom = (step: StepOf<'until'>, { placed }: Stand, scope: Scope) =>
	placed && asideOfWay(step, scope, placed) > 2 * STRAY ? () => undefined : placesByLength(step, scope);

/** The lines that the length could be taken from by mistake: those drawn before, and the edges of the draft that the rule borrows from. */
const otherLines = (step: StepOf<'until'>, { method, scope }: Stand): readonly string[] => {
	const named = formulaLengths(step.length).flatMap((leaf) => (leaf.kind === 'length' ? [leaf.line] : []));
	const own = method.steps.slice(
		0,
		method.steps.findIndex(({ name }) => name === step.name)
	);
	const borrowed = named.flatMap((line) => {
		const [alias = '', name] = line.split('.');
		return name === undefined ? [] : (method.uses[alias]?.outline ?? []).map((edge) => `${alias}.${edge}`);
	});
	const lines = [...own.map(({ name }) => name).filter((name) => !isPointName(name)), ...borrowed];
	return lines.filter((line) => !named.includes(line) && scope.has(line));
};

/** As far as makes the curve as long as another line; of lines of one length, the first stands for all. */
const asLongAsOthers = (
	step: StepOf<'until'>,
	stand: Stand,
	placeAt: (length: Mm) => SheetPoint | undefined
): readonly Misstep[] => {
	const lines = otherLines(step, stand).flatMap((line) => {
		const place = placeAt(pathLength(stand.scope.line(line)));
		return place ? [{ line, place }] : [];
	});
	const first = lines.filter(
		({ place }, i) => lines.findIndex((other) => distance(other.place, place) <= UNSPOKEN) === i
	);
	return first.map(({ line, place }) => ({
		note: `length:${line}`,
		prior: PRIORS.otherLine / first.length,
		place,
		slips: [slip('asLongAs', { line: lineOf(stand.method, line) })]
	}));
};

/** The same way back, and not at all. */
const wrongWays = (step: StepOf<'until'>, stand: Stand): readonly Misstep[] => {
	const [start, { right }] = [stand.scope.point(step.from), stand];
	const centre = step.about === undefined ? undefined : stand.scope.point(step.about);
	const back = centre
		? movedBy(turning(centre, radians(-turnAngle(centre, start, right))), start)
		: at(2 * start.x - right.x, 2 * start.y - right.y);
	return [
		{
			note: 'direction:opposite',
			prior: PRIORS.opposite,
			place: back,
			slips: [slip('oppositeFrom', { from: step.from })]
		},
		{
			note: 'unmoved',
			prior: PRIORS.unmoved,
			place: start,
			slips: [slip('notGoneOn', { from: step.from })]
		}
	];
};

/** A point that goes on until its curve is long enough: from elsewhere, as long as another line, or the other way. */
export const untilMissteps: KindMissteps<'until'> = (step, stand) => {
	const placeAt = placesFrom(step, stand, stand.scope);
	const length = lengthOf(step.length, stand.scope);
	const from = (start: SheetPoint): Scope => ({
		...stand.scope,
		point: (name) => (name === step.from ? start : stand.scope.point(name))
	});
	return [
		...wronglyWorked(step.length, stand, placeAt),
		...wronglyStarted(step.from, stand, (start) => placesFrom(step, stand, from(start))(length)),
		...asLongAsOthers(step, stand, placeAt),
		...wrongWays(step, stand)
	];
};
