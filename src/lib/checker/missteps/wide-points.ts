import { isChoice } from '#shared/allowances.ts';
import type { Compass } from '#shared/method.ts';
import { at, between, moved, type SheetPoint } from '#geometry/point.ts';
import { COMPASS } from '#drafting/steps/compass.ts';
import { lengthOf } from '#drafting/formula/value.ts';
import { isPointName } from '#drafting/names.ts';
import { dependenceFormulas, stepFormulas, stepNeeds } from '#drafting/steps/kinds.ts';
import { slip, type Misstep } from './misstep.ts';
import { mayBeMeant } from './parts.ts';
import { PRIORS } from './priors.ts';
import type { NamedPoint, Stand } from './stand.ts';
import { takenAllowance, takenOf } from './taken.ts';
import { otherRulers } from './other-lengths.ts';

/** Wrong places that any step may have, whatever its kind: rare one by one, and looked for only where a mark is to be explained. */

const COMPASSES = Object.keys(COMPASS) as readonly Compass[];

/** Left at a point that stands on the sheet. */
const leftAt = ({ step, earlier }: Stand): readonly Misstep[] => {
	const needs = stepNeeds(step);
	const needed = earlier.filter(({ name }) => needs.includes(name)).length;
	return earlier.map(({ name, place }) => ({
		note: `left:${name}`,
		prior: needs.includes(name)
			? PRIORS.leftAtNeed / needed
			: PRIORS.leftAt / Math.max(1, earlier.length - needed),
		place,
		slips: [slip('leftAt', { at: name })]
	}));
};

/** Level with one point and straight above or below another. */
const squares = (stand: Stand): readonly Misstep[] => {
	const { placed, earlier } = stand;
	if (!placed) return [];
	const isMeant = ({ x, y }: SheetPoint): boolean => mayBeMeant(stand, at(x, y));
	const above = earlier.filter(({ place }) => isMeant({ ...placed, x: place.x }));
	const beside = earlier.filter(({ place }) => isMeant({ ...placed, y: place.y }));
	return above.flatMap((down) =>
		beside
			.filter((across) => across !== down)
			.map((across) => ({
				note: `squares:${down.name}-${across.name}`,
				prior: PRIORS.squares * down.share * across.share,
				place: at(down.place.x, across.place.y),
				slips: [slip('squared', { down: down.name, across: across.name })]
			}))
	);
};

/** Half of the way between two points. */
const halfway = (stand: Stand): readonly Misstep[] => {
	const { earlier } = stand;
	const middle = (a: NamedPoint, b: NamedPoint): readonly Misstep[] => {
		const place = between(a.place, b.place, 1 / 2);
		if (!mayBeMeant(stand, place)) return [];
		return [
			{
				note: `halfway:${a.name}-${b.name}`,
				prior: PRIORS.halfway * 2 * a.share * b.share,
				place,
				slips: [slip('halfway', { from: a.name, to: b.name })]
			}
		];
	};
	return earlier.flatMap((a, i) => earlier.slice(i + 1).flatMap((b) => middle(a, b)));
};

/** The lengths that the step itself works with, also those that tell whether it is done at all. */
const ownLengths = ({ step, method, scope }: Stand) => {
	const formulas = [...stepFormulas(step), ...dependenceFormulas(step)];
	return formulas.map((formula) => ({
		of: takenOf(formula, method),
		length: lengthOf(formula, scope),
		prior: PRIORS.laidOff / 2 / formulas.length
	}));
};

/** What the step starts from, and what the lines that it runs along start from. */
const startNames = ({ step, method }: Stand): readonly string[] => {
	const needs = stepNeeds(step);
	const lines = method.steps.filter(({ name }) => needs.includes(name) && !isPointName(name));
	return [...needs, ...lines.flatMap(stepNeeds)];
};

/** A length of this step or another, or an allowance, laid off straight from a point that the rule starts from, whatever the rule does from there. */
const laidOff = (stand: Stand): readonly Misstep[] => {
	const { earlier, method, scope } = stand;
	const names = startNames(stand);
	const starts = earlier.filter(({ name }) => names.includes(name));
	const rules = otherRulers(stand).map(({ name, length, away }) => ({
		of: { kind: 'rule', name } as const,
		length,
		prior: PRIORS.laidOff / (2 + away)
	}));
	const allowances = method.allowances.flatMap((each) =>
		isChoice(each)
			? []
			: [
					{
						of: takenAllowance(method, each.key),
						length: scope.allowance(each.key),
						prior: PRIORS.laidOff / method.allowances.length
					}
				]
	);
	return starts.flatMap(({ name: from, place: start }) =>
		[...ownLengths(stand), ...rules, ...allowances].flatMap(({ of, length, prior }) =>
			COMPASSES.flatMap((way) => {
				const place = moved(start, COMPASS[way], length);
				if (!mayBeMeant(stand, place)) return [];
				return [
					{
						note: `laid-off:${way}-from-${from}`,
						prior: prior / starts.length / COMPASSES.length,
						place,
						slips: [slip('laidOff', { of, way, from })]
					}
				];
			})
		)
	);
};

/** All of them, for a mark that is to be explained. */
export const widePoints = (stand: Stand): readonly Misstep[] =>
	stand.placed ? [...leftAt(stand), ...squares(stand), ...halfway(stand), ...laidOff(stand)] : [];
