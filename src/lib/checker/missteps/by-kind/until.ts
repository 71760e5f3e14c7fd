import { UNSPOKEN } from '#shared/tolerances.ts';
import { mm, radians, type Mm } from '#shared/units.ts';
import { lengthOf, type Scope } from '#drafting/formula/value.ts';
import { formulaLengths } from '#drafting/formula/formula.ts';
import { isPointName } from '#drafting/names.ts';
import { COMPASS } from '#drafting/steps/compass.ts';
import { turnAngle } from '#drafting/steps/motion.ts';
import { lengthWith, placesByLength } from '#drafting/steps/until.ts';
import type { StepOf } from '#drafting/steps/step-rules.ts';
import { movedBy, turning } from '#geometry/motion.ts';
import { pathLength } from '#geometry/path.ts';
import { at, distance, moved, type SheetPoint } from '#geometry/point.ts';
import { slip, type Misstep } from '../misstep.ts';
import { laid, laidTogether, lengthParts, startParts, twoTerms } from '../parts.ts';
import { PRIORS, STRAY } from '../priors.ts';
import type { Stand } from '../stand.ts';
import { lineOf } from '../taken.ts';
import type { KindMissteps } from './kind-missteps.ts';
import { asideOfWay, placesNear } from './until-near.ts';

/** Where the point would come to lie with a curve of another length, seen from a start; for a mark, only near it. */
const placesFrom = (
	step: StepOf<'until'>,
	{ placed }: Stand,
	scope: Scope
): ((length: Mm) => SheetPoint | undefined) => {
	if (!placed) return placesByLength(step, scope);
	if (asideOfWay(step, scope, placed) > 2 * STRAY) return () => undefined;
	return placesNear(step, scope, placed, mm(2 * STRAY));
};

/** The lines that the length could be taken from by mistake: those drawn before, and the edges of the draft that the rule borrows from. */
const edges = (step: StepOf<'until'>, { method, scope }: Stand): readonly string[] => {
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
	const lines = edges(step, stand).flatMap((line) => {
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

/** Straight on by the whole length, or by what the curve lacks; straight where the rule goes round a point: only for a mark. */
const straightOn = (step: StepOf<'until'>, stand: Stand, length: Mm): readonly Misstep[] => {
	const { placed, scope } = stand;
	if (!placed) return [];
	const [start, way] = [scope.point(step.from), COMPASS[step.go]];
	const first = step.through.find(({ point }) => point !== step.name);
	const begin = first && scope.point(first.point);
	const lacks = mm(length - lengthWith(step, start, scope));
	const unswung = placesFrom({ ...step, about: undefined }, stand, scope)(length);
	const places = [
		{ place: moved(start, way, length), how: 'byWhole' as const },
		{ place: moved(start, way, lacks), how: 'byWhatLacks' as const },
		...(begin ? [{ place: moved(at(begin.x, start.y), way, length), how: 'byWhole' as const }] : []),
		...(step.about !== undefined && unswung ? [{ place: unswung, how: 'notRound' as const }] : [])
	];
	return places.map(({ place, how }) => ({
		note: `straight-on:${how}`,
		prior: PRIORS.slope / 2,
		place,
		slips: [slip('straightOn', { how })]
	}));
};

/** A point that goes on until its curve is long enough: from elsewhere, as long as another line, straight on, or the other way. */
export const untilMissteps: KindMissteps<'until'> = (step, stand) => {
	const placeAt = placesFrom(step, stand, stand.scope);
	const length = lengthOf(step.length, stand.scope);
	const from = (start: SheetPoint): ((wanted: Mm) => SheetPoint | undefined) =>
		placesFrom(step, stand, {
			...stand.scope,
			point: (name) => (name === step.from ? start : stand.scope.point(name))
		});
	const [lengths, starts] = [lengthParts(step.length, stand), startParts(step.from, stand)];
	// Seen from each start once: what is measured there serves all the lengths.
	const begun = starts.map((start) => ({ ...start, value: from(start.value) }));
	return [
		...laid(stand, lengths, placeAt),
		...laid(stand, begun, (places) => places(length)),
		...laidTogether(stand, begun, lengths, (places, wanted) => places(wanted)),
		...twoTerms(step.length, lengths, stand, { at: placeAt, near: () => true }),
		...asLongAsOthers(step, stand, placeAt),
		...straightOn(step, stand, length),
		...wrongWays(step, stand)
	];
};
