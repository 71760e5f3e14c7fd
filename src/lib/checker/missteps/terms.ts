import { mm, type Mm } from '#shared/units.ts';
import type { Formula } from '#drafting/formula/formula.ts';
import { chosenOf, numberOf, type Scope } from '#drafting/formula/value.ts';

/**
 * A formula as a sum of terms, each a share of one length: `bust / 4 + bustEase / 4` is a quarter of
 * the bust and a quarter of the ease, and so is `(bust + bustEase) / 4`. Wrong rules are made by
 * changing terms, and typed sums are compared with them.
 */
export interface Term {
	/** What is taken a share of: a measurement, an allowance, a distance or a length; or a part that is no such sum. */
	readonly leaf: Formula;
	/** The whole of it, in millimetres. */
	readonly base: Mm;
	/** The share that is taken, negative where it is taken off. */
	readonly share: number;
}

/** The value of a formula of plain numbers; undefined where it names a length. */
const plainNumber = (formula: Formula, scope: Scope): number | undefined => {
	if (formula.kind === 'number' || formula.kind === 'share') return numberOf(formula, scope);
	if (formula.kind === 'negative') {
		const value = plainNumber(formula.of, scope);
		return value === undefined ? undefined : -value;
	}
	if (formula.kind !== 'operation') return undefined;
	const [left, right] = [plainNumber(formula.left, scope), plainNumber(formula.right, scope)];
	if (left === undefined || right === undefined) return undefined;
	if (formula.sign === '+') return left + right;
	if (formula.sign === '-') return left - right;
	return formula.sign === '*' ? left * right : left / right;
};

/** The one of two that the greater, or the lesser, of them is. */
const takenOf = (formula: Extract<Formula, { kind: 'greater' | 'lesser' }>, scope: Scope): Formula => {
	const isLeft = numberOf(formula, scope) === numberOf(formula.left, scope);
	return isLeft ? formula.left : formula.right;
};

const scaled = (formula: Formula, share: number, scope: Scope): readonly Term[] => {
	if (formula.kind === 'negative') return scaled(formula.of, -share, scope);
	if (formula.kind === 'choice') return scaled(chosenOf(formula, scope), share, scope);
	if (formula.kind === 'greater' || formula.kind === 'lesser')
		return scaled(takenOf(formula, scope), share, scope);
	if (formula.kind !== 'operation') return [{ leaf: formula, base: mm(numberOf(formula, scope)), share }];
	const { sign, left, right } = formula;
	if (sign === '+' || sign === '-')
		return [...scaled(left, share, scope), ...scaled(right, sign === '+' ? share : -share, scope)];
	const [first, second] = [plainNumber(left, scope), plainNumber(right, scope)];
	if (second !== undefined) return scaled(left, sign === '*' ? share * second : share / second, scope);
	if (first !== undefined && sign === '*') return scaled(right, share * first, scope);
	return [{ leaf: formula, base: mm(numberOf(formula, scope)), share }];
};

/** The terms of a length formula, worked for a body, in the order in which it is written. */
export const termsOf = (formula: Formula, scope: Scope): readonly Term[] => scaled(formula, 1, scope);

/** The summands of a formula as they are written, each with its sign: a bracket, or a choice between lengths, is one. */
export const summandsOf = (formula: Formula, sign = 1): readonly (readonly [Formula, number])[] => {
	if (formula.kind === 'negative') return summandsOf(formula.of, -sign);
	if (formula.kind !== 'operation' || (formula.sign !== '+' && formula.sign !== '-'))
		return [[formula, sign]];
	return [
		...summandsOf(formula.left, sign),
		...summandsOf(formula.right, formula.sign === '+' ? sign : -sign)
	];
};

/** The same terms, one of them changed. */
export const replaced = (terms: readonly Term[], i: number, change: Partial<Term>): readonly Term[] =>
	terms.map((term, k) => (k === i ? { ...term, ...change } : term));

/** What terms add up to. */
export const sumOf = (terms: readonly Term[]): Mm =>
	mm(terms.reduce((sum, { base, share }) => sum + base * share, 0));
