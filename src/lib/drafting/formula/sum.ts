import { BadInput } from '#shared/bad-input.ts';
import { MM_PER, mm, spellFractions, type Mm, type Unit } from '#shared/units.ts';
import type { Formula } from './formula.ts';
import { parseFormula } from './parse.ts';
import { numberOf, type Scope } from './value.ts';

/** A sum as a drafter types it, such as `38.4/2+3`: its tree of plain numbers, and its value. */
export interface TypedSum {
	readonly formula: Formula;
	readonly value: Mm;
}

const NO_NAMES = { allowances: [], points: [], lines: [] };
const nothingNamed = (): never => {
	throw new Error('a typed sum names nothing');
};
const NUMBERS_ONLY: Scope = {
	measurement: nothingNamed,
	allowance: nothingNamed,
	point: nothingNamed,
	line: nothingNamed
};

const UNIT_SUFFIX = /(\d+(?:\.\d*)?|\.\d+|\))\s*(cm|mm|inches|inch|in\b|"|″|”)/g;
const unitOf = (suffix: string): Unit => (suffix === 'cm' || suffix === 'mm' ? suffix : 'in');

/** Rewrites what people write into plain arithmetic in `unit`: signs, decimal commas, 37 3/4, ½, and units after numbers. */
const plain = (text: string, unit: Unit): string =>
	spellFractions(text)
		.toLowerCase()
		.replace(/[×x]/g, '*')
		.replace(/[÷:]/g, '/')
		.replace(/[−–]/g, '-')
		.replace(/(\d),(\d)/g, '$1.$2')
		.replace(/(^|[^\d.])(\d+)\s+(\d+)\s*\/\s*(\d+)/g, '$1($2+$3/$4)')
		.replace(UNIT_SUFFIX, (_, number: string, suffix: string) => {
			const factor = MM_PER[unitOf(suffix)] / MM_PER[unit];
			return factor === 1 ? number : `${number}*${factor}`;
		})
		.trim();

/**
 * Reads a number or a sum that a learner typed; bare numbers are in `unit`. Throws BadInput, whose
 * rule says what could not be read and where.
 */
export const readSum = (text: string, unit: Unit): TypedSum => {
	const sum = plain(text, unit);
	if (sum === '') throw new BadInput('sum', 'write a number, or a sum such as 38.4/2+3');
	const formula = parseFormula(sum, 'sum', NO_NAMES, 'share');
	const value = numberOf(formula, NUMBERS_ONLY);
	if (!Number.isFinite(value)) throw new BadInput('sum', `"${text}" divides by nothing`);
	return { formula, value: mm(value * MM_PER[unit]) };
};
