import type { Noun } from '#shared/speech/noun.ts';
import type { Speech } from '#shared/speech/speech.ts';
import { inParts, mm, PRINTED_PARTS, type Mm, type Unit } from '#shared/units.ts';
import type { Formula, Operation } from './formula.ts';
import { chosenOf, lengthOf, type Scope } from './value.ts';

/** How a method's rules are said: the speech, and what the method calls its allowances and lines. */
export interface Telling {
	readonly speech: Speech;
	readonly allowance: (key: string) => Noun;
	readonly line: (name: string) => Noun;
}

const isOperation = (formula: Formula): formula is Operation => formula.kind === 'operation';

const isSum = (formula: Formula): formula is Operation =>
	isOperation(formula) && (formula.sign === '+' || formula.sign === '-');

/** What stands in brackets within another formula. */
const isGrouped = (formula: Formula): boolean =>
	isSum(formula) || formula.kind === 'greater' || formula.kind === 'lesser';

/** The four signs as they are written. */
const WRITTEN = { '+': '+', '-': '−', '*': '×', '/': '÷' } as const;

/**
 * A formula in words: "half the shoulder width + the armhole drop". With `parts` of the unit, allowances are said by their
 * numbers: "half the shoulder width + 3".
 */
export const formulaNoun = (formula: Formula, scope: Scope, telling: Telling, parts?: number): Noun => {
	const { speech } = telling;
	const { formulas, nouns } = speech.words;
	const noun = (each: Formula): Noun => formulaNoun(each, scope, telling, parts);
	const bracketed = (each: Formula): Noun => (isGrouped(each) ? formulas.bracketed(noun(each)) : noun(each));
	switch (formula.kind) {
		case 'number':
			return formula.isLength ? { name: speech.length(mm(formula.value)) } : formulas.number(formula.value);
		case 'measurement':
			return nouns.measurement(formula.key);
		case 'allowance':
			return parts === undefined
				? telling.allowance(formula.key)
				: { name: speech.bare(scope.allowance(formula.key), parts) };
		case 'share':
			return parts === undefined ? telling.allowance(formula.key) : formulas.number(scope.share(formula.key));
		case 'distance':
			return formulas.distance(formula);
		case 'length':
			return formulas.length(telling.line(formula.line));
		case 'measured':
			return formulas.measured(formula);
		case 'greater':
		case 'lesser':
			return formulas[formula.kind]({ one: noun(formula.left), other: noun(formula.right) });
		case 'choice':
			return noun(chosenOf(formula, scope));
		case 'negative':
			return formulas.negative(bracketed(formula.of));
		case 'operation': {
			const { sign, left, right } = formula;
			const whole = isSum(formula) ? noun(left) : bracketed(left);
			const part =
				sign === '/' && right.kind === 'number' ? formulas.part({ whole, by: right.value }) : undefined;
			const by = sign === '/' && isOperation(right) ? formulas.bracketed(noun(right)) : bracketed(right);
			return part ?? formulas.joined({ sign: WRITTEN[sign], left: whole, right: by });
		}
	}
};

/** The terms of a sum with their values: "19.2 + 3". */
const sumNumbers = (formula: Formula, scope: Scope, speech: Speech, parts: number): string => {
	if (!isSum(formula)) return speech.bare(lengthOf(formula, scope), parts);
	const right = sumNumbers(formula.right, scope, speech, parts);
	const taken = isGrouped(formula.right) ? `(${right})` : right;
	return `${sumNumbers(formula.left, scope, speech, parts)} ${WRITTEN[formula.sign]} ${taken}`;
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
 * A length formula with its arithmetic: "half the shoulder width + 3 = 19.2 + 3 = 22.2 cm". The numbers of a
 * sum add up as they are written, in finer parts of the unit where they must; else the result is "about".
 */
export const formulaArithmetic = (formula: Formula, scope: Scope, telling: Telling): string => {
	const { speech } = telling;
	const length = lengthOf(formula, scope);
	const said = speech.words.formulas.arithmetic;
	if (formula.kind === 'allowance')
		return said({
			words: telling.allowance(formula.key),
			sum: undefined,
			result: speech.length(length),
			exact: true
		});
	const exact = partsFor(formula, length, scope, speech.unit);
	const parts = exact ?? PRINTED_PARTS[speech.unit][0];
	return said({
		words: formulaNoun(formula, scope, telling, parts),
		sum: isSum(formula) ? sumNumbers(formula, scope, speech, parts) : undefined,
		result: speech.length(length, parts),
		exact: exact !== undefined
	});
};

/** A length formula by its names and with its arithmetic: what a step's rule says of it. */
export const saidFormula = (formula: Formula, scope: Scope, telling: Telling) => ({
	by: formulaNoun(formula, scope, telling),
	arithmetic: formulaArithmetic(formula, scope, telling)
});
