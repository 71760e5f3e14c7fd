import type { Compass } from '#shared/method.ts';
import type { Share, Taken } from '#shared/speech/en/missteps.ts';
import { mm, type Mm } from '#shared/units.ts';
import { at, between, moved, type SheetPoint } from '#geometry/point.ts';
import { COMPASS } from '#drafting/steps/compass.ts';
import { lengthOf } from '#drafting/formula/value.ts';
import { isPointName } from '#drafting/names.ts';
import { dependenceFormulas, stepFormulas, stepLeansOn, stepNeeds } from '#drafting/steps/kinds.ts';
import { fractionOf } from './fractions.ts';
import { slip, type Misstep } from './misstep.ts';
import { mayBeMeant } from './parts.ts';
import { metAllowances } from './met.ts';
import { LOWERED, PRIORS } from './priors.ts';
import type { NamedPoint, Stand } from './stand.ts';
import { takenAllowance, takenOf } from './taken.ts';
import { otherRulers } from './other-lengths.ts';
import { termsOf } from './terms.ts';

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
	const needs = stepLeansOn(stand.step);
	const pairs = needs.length * (needs.length - 1);
	const bothNeeded = (...points: readonly NamedPoint[]): number =>
		points.every(({ name }) => needs.includes(name)) ? PRIORS.squaresOfNeeds / pairs : 0;
	const isMeant = ({ x, y }: SheetPoint): boolean => mayBeMeant(stand, at(x, y));
	const above = earlier.filter(({ place }) => isMeant({ ...placed, x: place.x }));
	const beside = earlier.filter(({ place }) => isMeant({ ...placed, y: place.y }));
	return above.flatMap((down) =>
		beside
			.filter((across) => across !== down)
			.map((across) => ({
				note: `squares:${down.name}-${across.name}`,
				prior: PRIORS.squares * down.share * across.share + bothNeeded(down, across),
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

/** A share of a length that may be laid off where the rule lays off none. */
interface Laid {
	readonly of: Taken | { readonly kind: 'rule'; readonly name: string };
	readonly share: Share;
	readonly length: Mm;
	readonly prior: number;
}

/** What may be laid off of a length: all of it, half, or twice as much. */
const LAID_SHARES = [
	{ share: 'whole', times: 1, seldom: 1 },
	{ share: 'half', times: 1 / 2, seldom: LOWERED.seldom },
	{ share: 'twice', times: 2, seldom: LOWERED.seldom }
] as const;

const inShares = (of: Taken, length: Mm, prior: number): readonly Laid[] =>
	LAID_SHARES.map(({ share, times, seldom }) => ({
		...{ of, share },
		length: mm(length * times),
		prior: prior * seldom
	}));

/** The lengths that the step itself works with, also those that tell whether it is done at all; and each of their terms alone. */
const ownLengths = ({ step, method, scope }: Stand): readonly Laid[] => {
	const formulas = [...stepFormulas(step), ...dependenceFormulas(step)];
	const prior = PRIORS.laidOff / 2 / formulas.length;
	return formulas.flatMap((formula) => {
		const terms = termsOf(formula, scope);
		const alone = terms.length < 2 ? [] : terms.filter(({ leaf }) => leaf.kind !== 'number');
		return [
			...inShares(takenOf(formula, method), lengthOf(formula, scope), prior),
			...alone.map(({ leaf, base, share }, i) => ({
				of: takenOf(leaf, method),
				share: fractionOf(share).name,
				length: mm(base * Math.abs(share)),
				// What stands first fills the mind.
				prior: (prior / alone.length) * (i === 0 ? 1 : LOWERED.seldom)
			}))
		];
	});
};

/** The lengths of the other steps, and the allowances. */
const otherLengths = (stand: Stand): readonly Laid[] => {
	const { method, scope } = stand;
	const rules = otherRulers(stand).map(({ name, length, away }) => ({
		of: { kind: 'rule', name } as const,
		share: 'whole' as const,
		length,
		prior: PRIORS.laidOff / (2 + away)
	}));
	const prior = PRIORS.laidOff / method.allowances.length;
	const allowances = metAllowances(method).flatMap(({ key }) =>
		inShares(takenAllowance(method, key), scope.allowance(key), prior)
	);
	return [...rules, ...allowances];
};

/** What the step starts from, and what the lines that it runs along start from; then what those points start from, which is less likely. */
const startsOf = (stand: Stand): readonly (readonly [NamedPoint, number])[] => {
	const { step, method, earlier } = stand;
	const needs = stepNeeds(step);
	const needed = method.steps.filter(({ name }) => needs.includes(name));
	const near = [...needs, ...needed.filter(({ name }) => !isPointName(name)).flatMap(stepNeeds)];
	const far = needed.flatMap(stepNeeds).filter((name) => !near.includes(name));
	const of = (names: readonly string[], share: number) => {
		const points = earlier.filter(({ name }) => names.includes(name));
		return points.map((point) => [point, share / points.length] as const);
	};
	return [...of(near, 1), ...of(far, LOWERED.seldom)];
};

/** A length of this step or another, or an allowance, laid off straight from a point that the rule starts from, whatever the rule does from there. */
const laidOff = (stand: Stand): readonly Misstep[] => {
	const lengths = [...ownLengths(stand), ...otherLengths(stand)];
	// The rule's own way is the likeliest of the four.
	const go = 'go' in stand.step ? stand.step.go : undefined;
	return startsOf(stand).flatMap(([{ name: from, place: start }, likely]) =>
		lengths.flatMap(({ of, share, length, prior }) =>
			COMPASSES.flatMap((way) => {
				const place = moved(start, COMPASS[way], length);
				if (!mayBeMeant(stand, place)) return [];
				return [
					{
						note: `laid-off:${way}-from-${from}`,
						prior: prior * likely * (way === go ? 1 / 2 : 1 / 6),
						place,
						slips: [slip('laidOff', { of, share, way, from })]
					}
				];
			})
		)
	);
};

/** All of them, for a mark that is to be explained. */
export const widePoints = (stand: Stand): readonly Misstep[] =>
	stand.placed ? [...leftAt(stand), ...squares(stand), ...halfway(stand), ...laidOff(stand)] : [];
