import { measurementOf } from '#shared/measurements.ts';
import { mm, printLength, printNumber, type Unit } from '#shared/units.ts';
import type { Formula, Operation } from './formula.ts';
import { lengthOf, numberOf, type Scope } from './value.ts';

/** How rules are spoken of: the unit, the words for allowances and lines, and whether allowances are said by name or by number. */
export interface Speech {
	readonly unit: Unit;
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

const bracketed = (formula: Formula, words: string): string => (isSum(formula) ? `(${words})` : words);

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
				: printNumber(scope.allowance(formula.key), speech.unit);
		case 'distance':
			return `the distance ${formula.from}–${formula.to}`;
		case 'length':
			return `the length of ${speech.lineWords(formula.line)}`;
		case 'negative':
			return `− ${bracketed(formula.of, formulaWords(formula.of, scope, speech))}`;
		case 'operation':
			return operationWords(formula, scope, speech);
	}
};

/** The terms of a sum with their values: "19.2 + 3". */
const sumNumbers = (formula: Formula, scope: Scope, unit: Unit): string => {
	if (!isSum(formula)) return printNumber(lengthOf(formula, scope), unit);
	const sign = formula.sign === '+' ? '+' : '−';
	const right = sumNumbers(formula.right, scope, unit);
	return `${sumNumbers(formula.left, scope, unit)} ${sign} ${bracketed(formula.right, right)}`;
};

/** A length formula with its arithmetic: "half the back width + 3 = 19.2 + 3 = 22.2 cm". */
export const formulaArithmetic = (formula: Formula, scope: Scope, speech: Speech): string => {
	const words = formulaWords(formula, scope, { ...speech, allowances: 'numbered' });
	const numbers = sumNumbers(formula, scope, speech.unit);
	const result = printLength(mm(numberOf(formula, scope)), speech.unit);
	if (formula.kind === 'allowance') return `${speech.allowanceWords(formula.key)} = ${result}`;
	return [words, ...(isSum(formula) ? [numbers] : []), result].join(' = ');
};
