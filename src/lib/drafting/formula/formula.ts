import { keptFor } from '#shared/kept.ts';
import type { MeasurementKey } from '#shared/measurements.ts';
import { isBorrowed } from '../names.ts';

/** A formula as a typed tree. Its value is a length in millimetres or, where it holds only numbers, a plain share. */
export type Formula =
	/** A plain number; a fixed length only where a wear check names one. */
	| { readonly kind: 'number'; readonly value: number; readonly isLength?: true }
	| { readonly kind: 'measurement'; readonly key: MeasurementKey }
	| { readonly kind: 'allowance'; readonly key: string }
	/** An allowance that is a choice among named values: a plain number. */
	| { readonly kind: 'share'; readonly key: string }
	| { readonly kind: 'distance'; readonly from: string; readonly to: string }
	| { readonly kind: 'length'; readonly line: string }
	| Measured
	| { readonly kind: 'negative'; readonly of: Formula }
	/** The greater, or the lesser, of two. */
	| { readonly kind: 'greater' | 'lesser'; readonly left: Formula; readonly right: Formula }
	/** One formula where `over` is more than nothing, else another. */
	| { readonly kind: 'choice'; readonly over: Formula; readonly yes: Formula; readonly no: Formula }
	| Operation;

/**
 * What is measured on a draft or a piece beside lengths, all as plain geometry:
 *
 * - `rise(A, B)`: how much higher B lies than A; negative where it lies lower.
 * - `across(A, B)`: how much further out from the centre B lies than A.
 * - `angle(A, B)`: the way from A to B, in degrees from level; upward is more than nothing.
 * - `turn(a, b)`: by how many degrees the way turns where line `b` goes on from line `a`.
 * - `widthAt(piece, A)`: how wide the piece is at the level of A, its darts closed; `widthAt(piece, A, h)` so much above A.
 * - `openWidthAt(piece, A, h)`: the same with the darts left open, as the piece lies flat.
 * - `sewn(piece.edge)`: how long an edge is; nothing where this body's piece does not have it.
 *
 * Angles and turns are plain numbers, the rest are lengths.
 */
export interface Measured {
	readonly kind: 'measured';
	readonly what: MeasuredKind;
	readonly names: readonly string[];
	/** Of a width: how far above its point it is taken. */
	readonly above?: Formula;
}
export type MeasuredKind = 'rise' | 'across' | 'angle' | 'turn' | 'widthAt' | 'openWidthAt' | 'sewn';

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
	if (formula.kind === 'measured') return formula.above ? [formula.above] : [];
	return formula.kind === 'negative' ? [formula.of] : [];
};

/** The points and lines that something is measured between; pieces and their edges are none. */
const drawnNames = ({ what, names }: Measured): readonly string[] => {
	if (what === 'sewn') return [];
	return what === 'widthAt' || what === 'openWidthAt' ? names.slice(1) : names;
};

/** The points and lines that a formula leans on, of its own draft or of another's (`back.shoulder`). */
export const formulaNames = keptFor((formula: Formula): readonly string[] => {
	if (formula.kind === 'distance') return [formula.from, formula.to];
	if (formula.kind === 'length') return [formula.line];
	const own = formula.kind === 'measured' ? drawnNames(formula) : [];
	return [...own, ...formulaParts(formula).flatMap(formulaNames)];
});

/** Those of its own draft alone. */
export const formulaNeeds = keptFor((formula: Formula): readonly string[] =>
	formulaNames(formula).filter((name) => !isBorrowed(name))
);

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
