import { MM_PER, mm, printNumber, type Mm, type Unit } from '#shared/units.ts';
import type { Formula } from '#drafting/formula/formula.ts';
import { sumOf, type Term } from './terms.ts';

/**
 * A sum that a learner typed, held against the terms of a rule. Both are sums of shares, so the order of
 * terms and factors does not matter, (96+4)/4 is 96/4+4/4, and a term may have been worked in the head.
 */

/** One term of a typed sum: numbers that are multiplied, numbers that it is divided by, and its sign. */
export interface TypedTerm {
	readonly sign: number;
	readonly above: readonly number[];
	readonly below: readonly number[];
}

const ONE: TypedTerm = { sign: 1, above: [], below: [] };

const multiplied = (a: TypedTerm, b: TypedTerm): TypedTerm => ({
	sign: a.sign * b.sign,
	above: [...a.above, ...b.above],
	below: [...a.below, ...b.below]
});

const turnedOver = ({ sign, above, below }: TypedTerm): TypedTerm => ({ sign, above: below, below: above });

const multipliedOut = (numbers: readonly number[]): number =>
	numbers.reduce((all, number) => all * number, 1);

const product = (terms: readonly TypedTerm[]): number =>
	terms.reduce(
		(sum, { sign, above, below }) => sum + (sign * multipliedOut(above)) / multipliedOut(below),
		0
	);

/** Every way of choosing some of these, the rest beside them. */
const choices = <T>(items: readonly T[]): readonly (readonly [T[], T[]])[] =>
	items.reduce<readonly (readonly [T[], T[]])[]>(
		(all, item) =>
			all.flatMap(([chosen, left]) => [
				[[...chosen, item], left],
				[chosen, [...left, item]]
			]),
		[[[], []]]
	);

const isWhole = (formula: Formula): formula is Extract<Formula, { kind: 'number' }> =>
	formula.kind === 'number' && Number.isInteger(formula.value);

/** A number written as a tape in inches shows it, 37 3/4 (read as 37+3/4): one number, and not a sum of two. */
const mixedNumber = (formula: Formula): number | undefined => {
	if (formula.kind !== 'operation' || formula.sign !== '+' || formula.right.kind !== 'operation')
		return undefined;
	const { left, right } = { left: formula.left, right: formula.right };
	if (!isWhole(left) || right.sign !== '/' || !isWhole(right.left) || !isWhole(right.right)) return undefined;
	const fraction = right.left.value / right.right.value;
	return fraction > 0 && fraction < 1 ? left.value + fraction : undefined;
};

/** The terms of a typed sum, brackets multiplied out. A divisor that is itself a sum counts as the number it comes to. */
export const typedTerms = (formula: Formula): readonly TypedTerm[] => {
	if (formula.kind === 'number') return [{ ...ONE, above: [formula.value] }];
	if (formula.kind === 'negative')
		return typedTerms(formula.of).map((term) => ({ ...term, sign: -term.sign }));
	const mixed = mixedNumber(formula);
	if (mixed !== undefined) return [{ ...ONE, above: [mixed] }];
	if (formula.kind !== 'operation') throw new Error(`a typed sum holds numbers only, not a ${formula.kind}`);
	const [left, right] = [typedTerms(formula.left), typedTerms(formula.right)];
	if (formula.sign === '+') return [...left, ...right];
	if (formula.sign === '-') return [...left, ...right.map((term) => ({ ...term, sign: -term.sign }))];
	if (formula.sign === '*') return left.flatMap((a) => right.map((b) => multiplied(a, b)));
	const [only, ...more] = right;
	const divisor = only && more.length === 0 ? only : { ...ONE, above: [product(right)] };
	return left.map((term) => multiplied(term, turnedOver(divisor)));
};

/** The most that working in the head may round off: half a millimetre, half a sixteenth of an inch. */
const ROUNDING: Readonly<Record<Unit, Mm>> = { mm: mm(0.5), cm: mm(0.5), in: mm(25.4 / 32) };
/** Floating-point noise, a thousand times below what is printed. */
const NOISE = 1e-6;

/** Whether two lengths are the same number as printed, or one is the other rounded in the head. */
const roundsTo = (a: number, b: number, unit: Unit): boolean => Math.abs(a - b) <= ROUNDING[unit] + NOISE;

/** Whether two measured lengths are the same number as printed. */
const printsAs = (a: Mm, b: Mm, unit: Unit): boolean => printNumber(a, unit) === printNumber(b, unit);

/** Numbers besides which a term holds nothing: `1/4*96` is a quarter of 96. */
const telling = ({ above, below }: TypedTerm): number =>
	above.filter((number) => number !== 1).length + below.length;

/** Whether a term is a part of an inch, such as 3/4: one number, though it is written as two. */
const isInchPart = ({ above, below }: TypedTerm, unit: Unit): boolean => {
	const [top = 0, bottom = 0] = [above[0], below[0]];
	return unit === 'in' && above.length === 1 && below.length === 1 && top < bottom && 16 % bottom === 0;
};

/** Whether a typed term is just these terms of the rule: their one share of all of them, or the number that comes to. */
export const isTheSame = (typed: TypedTerm, terms: readonly Term[], unit: Unit): boolean => {
	const value = product([typed]) * MM_PER[unit];
	if (!roundsTo(value, sumOf(terms), unit)) return false;
	if (telling(typed) < 2 || isInchPart(typed, unit)) return true;
	const share = terms[0]?.share ?? 0;
	if (share === 0 || terms.some((term) => Math.abs(Math.abs(term.share) - Math.abs(share)) > NOISE))
		return false;
	const base = mm(terms.reduce((sum, term) => sum + term.base * Math.sign(term.share), 0));
	// The value is the rule's already, so that with the same base the share is the same too.
	return choices(typed.above).some(
		([of]) => of.length > 0 && printsAs(mm(multipliedOut(of) * MM_PER[unit]), mm(Math.abs(base)), unit)
	);
};

const matches = (typed: readonly TypedTerm[], terms: readonly Term[], unit: Unit): boolean => {
	const [first, ...rest] = typed;
	if (!first) return terms.length === 0;
	return choices(terms).some(
		([chosen, left]) => chosen.length > 0 && isTheSame(first, chosen, unit) && matches(rest, left, unit)
	);
};

/** How many numbers a typed sum shows. */
export const numbersIn = (typed: readonly TypedTerm[]): number =>
	typed.reduce((sum, term) => sum + Math.max(1, telling(term)), 0);

/** Whether something can be seen of how the number was worked. */
export const isWorked = (typed: readonly TypedTerm[]): boolean =>
	typed.length > 1 || typed.some((term) => telling(term) > 1);

/** Terms of a sum, and numbers of a term, at most: beyond it nobody's rule is met, and the ways of pairing would be many. */
const MOST = 6;

/**
 * Whether a typed sum is the sum of these terms: 'sum' where it is so term by term, 'number' where it only
 * comes to the same number; undefined where it does not.
 */
export const comparedWith = (
	typed: readonly TypedTerm[],
	terms: readonly Term[],
	unit: Unit
): 'sum' | 'number' | undefined => {
	const total = product(typed) * MM_PER[unit];
	const slack = ROUNDING[unit] * Math.max(typed.length, 1) + NOISE;
	if (Math.abs(total - sumOf(terms)) > slack) return undefined;
	const isShort = typed.length <= MOST && typed.every(({ above }) => above.length <= MOST);
	if (isWorked(typed) && isShort && matches(typed, terms, unit)) return 'sum';
	return roundsTo(total, sumOf(terms), unit) ? 'number' : undefined;
};
