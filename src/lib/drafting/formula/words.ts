import { measurementOf } from '#shared/measurements.ts';
import { inParts, PRINTED_PARTS, printLength, printNumber, type Mm, type Unit } from '#shared/units.ts';
import type { Formula, Operation } from './formula.ts';
import { chosenOf, lengthOf, type Scope } from './value.ts';

/** How rules are spoken of: the unit, the words for allowances and lines, and whether allowances are said by name or by number. */
export interface Speech {
	readonly unit: Unit;
	/** The parts of the unit in which numbers are written, where they are not the usual ones. */
	readonly parts?: number;
	readonly allowances: 'named' | 'numbered';
	readonly allowanceWords: (key: string) => string;
	readonly lineWords: (name: string) => string;
}

const FRACTIONS: Readonly<Record<number, string>> = {
	2: 'half',
	3: 'a third of',
	4: 'a quarter of',
	5: 'a fifth of',
	6: 'a sixth of',
	8: 'an eighth of',
	12: 'a twelfth of'
};

const isSum = (formula: Formula): formula is Operation =>
	formula.kind === 'operation' && (formula.sign === '+' || formula.sign === '-');

const bracketed = (formula: Formula, words: string): string =>
	isSum(formula) || formula.kind === 'greater' || formula.kind === 'lesser' ? `(${words})` : words;

const operationWords = (formula: Operation, scope: Scope, speech: Speech): string => {
	const { sign, left, right } = formula;
	const [a, b] = [formulaWords(left, scope, speech), formulaWords(right, scope, speech)];
	if (sign === '+' || sign === '-') return `${a} ${sign === '+' ? '+' : '−'} ${bracketed(right, b)}`;
	if (sign === '/') {
		const fraction = right.kind === 'number' ? FRACTIONS[right.value] : undefined;
		return fraction ? `${fraction} ${bracketed(left, a)}` : `${bracketed(left, a)} ÷ ${bracketed(right, b)}`;
	}
	return `${bracketed(left, a)} × ${bracketed(right, b)}`;
};

/** A formula in words: "half the back width + 3", or with named allowances "half the back width + the armhole drop". */
export const formulaWords = (formula: Formula, scope: Scope, speech: Speech): string => {
	switch (formula.kind) {
		case 'number':
			return String(formula.value);
		case 'measurement':
			return measurementOf(formula.key).words;
		case 'allowance':
			return speech.allowances === 'named'
				? speech.allowanceWords(formula.key)
				: printNumber(scope.allowance(formula.key), speech.unit, speech.parts);
		case 'distance':
			return `the distance ${formula.from}–${formula.to}`;
		case 'length':
			return `the length of ${speech.lineWords(formula.line)}`;
		case 'greater':
		case 'lesser': {
			const [a, b] = [formulaWords(formula.left, scope, speech), formulaWords(formula.right, scope, speech)];
			return `the ${formula.kind} of ${a} and ${b}`;
		}
		case 'choice':
			return formulaWords(chosenOf(formula, scope), scope, speech);
		case 'negative':
			return `− ${bracketed(formula.of, formulaWords(formula.of, scope, speech))}`;
		case 'operation':
			return operationWords(formula, scope, speech);
	}
};

/** The terms of a sum with their values: "19.2 + 3". */
const sumNumbers = (formula: Formula, scope: Scope, unit: Unit, parts: number): string => {
	if (!isSum(formula)) return printNumber(lengthOf(formula, scope), unit, parts);
	const sign = formula.sign === '+' ? '+' : '−';
	const right = sumNumbers(formula.right, scope, unit, parts);
	return `${sumNumbers(formula.left, scope, unit, parts)} ${sign} ${bracketed(formula.right, right)}`;
};

/** What the terms of a sum come to as they are written, each rounded to whole parts of the unit. */
const sumInParts = (formula: Formula, scope: Scope, unit: Unit, parts: number): number => {
	if (!isSum(formula)) return inParts(lengthOf(formula, scope), unit, parts);
	const right = sumInParts(formula.right, scope, unit, parts);
	return sumInParts(formula.left, scope, unit, parts) + (formula.sign === '+' ? right : -right);
};

/** The parts of the unit in which a sum adds up as it is written, the coarsest that will do; undefined where none does. */
const partsFor = (formula: Formula, result: Mm, scope: Scope, unit: Unit): number | undefined =>
	PRINTED_PARTS[unit].find(
		(parts) => sumInParts(formula, scope, unit, parts) === inParts(result, unit, parts)
	);

/**
 * A length formula with its arithmetic: "half the back width + 3 = 19.2 + 3 = 22.2 cm". The numbers of a
 * sum add up as they are written, in finer parts of the unit where they must; else the result is "about".
 */
export const formulaArithmetic = (formula: Formula, scope: Scope, speech: Speech): string => {
	const { unit } = speech;
	const length = lengthOf(formula, scope);
	if (formula.kind === 'allowance')
		return `${speech.allowanceWords(formula.key)} = ${printLength(length, unit)}`;
	const exact = partsFor(formula, length, scope, unit);
	const parts = exact ?? PRINTED_PARTS[unit][0];
	const words = formulaWords(formula, scope, { ...speech, allowances: 'numbered', parts });
	const numbers = isSum(formula) ? [sumNumbers(formula, scope, unit, parts)] : [];
	const result = `${exact ? '' : 'about '}${printLength(length, unit, parts)}`;
	return [words, ...numbers, result].join(' = ');
};
