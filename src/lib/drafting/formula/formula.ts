import type { MeasurementKey } from '#shared/measurements.ts';
import { isBorrowed } from '../names.ts';

/** A formula as a typed tree. Its value is a length in millimetres or, where it holds only numbers, a plain share. */
export type Formula =
	| { readonly kind: 'number'; readonly value: number }
	| { readonly kind: 'measurement'; readonly key: MeasurementKey }
	| { readonly kind: 'allowance'; readonly key: string }
	/** An allowance that is a choice among named values: a plain number. */
	| { readonly kind: 'share'; readonly key: string }
	| { readonly kind: 'distance'; readonly from: string; readonly to: string }
	| { readonly kind: 'length'; readonly line: string }
	| { readonly kind: 'negative'; readonly of: Formula }
	/** The greater, or the lesser, of two. */
	| { readonly kind: 'greater' | 'lesser'; readonly left: Formula; readonly right: Formula }
	/** One formula where `over` is more than nothing, else another. */
	| { readonly kind: 'choice'; readonly over: Formula; readonly yes: Formula; readonly no: Formula }
	| Operation;

/** Two formulas joined by one of the four signs. */
export interface Operation {
	readonly kind: 'operation';
	readonly sign: Sign;
	readonly left: Formula;
	readonly right: Formula;
}

export const SIGNS = ['+', '-', '*', '/'] as const;
export type Sign = (typeof SIGNS)[number];

/** The parts that a formula is made of, one level down. */
export const formulaParts = (formula: Formula): readonly Formula[] => {
	if (formula.kind === 'operation' || formula.kind === 'greater' || formula.kind === 'lesser')
		return [formula.left, formula.right];
	if (formula.kind === 'choice') return [formula.over, formula.yes, formula.no];
	return formula.kind === 'negative' ? [formula.of] : [];
};

/** The points and lines of its own draft that a formula leans on. */
export const formulaNeeds = (formula: Formula): readonly string[] => {
	if (formula.kind === 'distance') return [formula.from, formula.to].filter((name) => !isBorrowed(name));
	if (formula.kind === 'length') return isBorrowed(formula.line) ? [] : [formula.line];
	return formulaParts(formula).flatMap(formulaNeeds);
};

/** The keys of the measurements, or of the allowances, that a formula names. */
export const formulaKeys = (formula: Formula, kind: 'measurement' | 'allowance'): readonly string[] =>
	formula.kind === kind || (formula.kind === 'share' && kind === 'allowance')
		? [formula.key]
		: formulaParts(formula).flatMap((part) => formulaKeys(part, kind));

/** A part of a formula that is measured on the draft itself. */
export type DrawnLength = Extract<Formula, { kind: 'distance' | 'length' }>;

/** The lengths that a formula takes from the draft, looked for in the parts that are asked: all, unless others are said. */
export const formulaLengths = (formula: Formula, partsOf = formulaParts): readonly DrawnLength[] =>
	formula.kind === 'distance' || formula.kind === 'length'
		? [formula]
		: partsOf(formula).flatMap((part) => formulaLengths(part, partsOf));
