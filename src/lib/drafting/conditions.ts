import { keptFor } from '#shared/kept.ts';
import { SAME_PLACE } from '#shared/tolerances.ts';
import { mm, type Mm } from '#shared/units.ts';
import { formulaNeeds, type Formula } from './formula/formula.ts';
import { lengthOf, type Scope } from './formula/value.ts';

/** What something in a method depends on: it holds only where `when` is more than nothing, and `unless` is not. */
export interface Dependence {
	readonly when?: Formula | undefined;
	readonly unless?: Formula | undefined;
}

/** A length to be held against bounds: between two points, across or down, or the value of a formula. */
export type Measure =
	| { readonly way: 'across' | 'down'; readonly between: readonly [from: string, to: string] }
	| { readonly way: 'value'; readonly formula: Formula };

/** The bounds that a measured length must keep. */
export interface LengthBounds {
	readonly atLeast?: Mm | undefined;
	readonly moreThan?: Mm | undefined;
	readonly atMost?: Mm | undefined;
}

/** A condition on a draft, and the two measurements that are at odds where it is broken. */
export interface Condition extends Dependence {
	readonly name: string;
	readonly measure: Measure;
	readonly bounds: LengthBounds;
	readonly odds: readonly [string, string];
	readonly because: string;
}

/** Whether a formula is more than nothing. Floating-point noise is nothing. */
const isMore = (formula: Formula, scope: Scope): boolean => {
	const value = scope.known?.get(formula) ?? lengthOf(formula, scope);
	scope.known?.set(formula, value);
	return value > SAME_PLACE;
};

/** Whether something that depends on formulas is to be. */
export const depends = ({ when, unless }: Dependence, scope: Scope): boolean =>
	(when === undefined || isMore(when, scope)) && (unless === undefined || !isMore(unless, scope));

/** The length that a condition looks at. */
export const measured = (measure: Measure, scope: Scope): Mm => {
	if (measure.way === 'value') return lengthOf(measure.formula, scope);
	const [from, to] = [scope.point(measure.between[0]), scope.point(measure.between[1])];
	return mm(measure.way === 'across' ? to.x - from.x : to.y - from.y);
};

/** Whether a length keeps its bounds; one that lies on a bound but for floating-point noise keeps it. */
export const keeps = (length: Mm, { atLeast, moreThan, atMost }: LengthBounds): boolean =>
	(atLeast === undefined || length >= atLeast - SAME_PLACE) &&
	(moreThan === undefined || length > moreThan + SAME_PLACE) &&
	(atMost === undefined || length <= atMost + SAME_PLACE);

/** The points and lines of the draft itself that a condition looks at. */
export const conditionNeeds = keptFor(({ measure, when, unless }: Condition): readonly string[] => [
	...(measure.way === 'value' ? formulaNeeds(measure.formula) : measure.between),
	...[when, unless].flatMap((formula) => (formula ? formulaNeeds(formula) : []))
]);
