import { BadInput } from './bad-input.ts';
import { message } from './speech/message.ts';
import { mm, type Mm, type Unit } from './units.ts';
import type { Noun } from './speech/noun.ts';

/** A number that the drafter chooses, with a default and the range in which it is sane. */
export interface Allowance {
	readonly key: string;
	/** What it is called, where a method brings it; the standing ones are named by their keys in the `nouns` of each language. */
	readonly noun?: Noun;
	readonly default: Mm;
	readonly range: readonly [Mm, Mm];
}

const allowance = (key: string, usual: number, least: number, most: number): Allowance => ({
	key,
	default: mm(usual * 10),
	range: [mm(least * 10), mm(most * 10)]
});

/**
 * The allowances of the body block, in centimetres here. Defaults and ranges: common practice, no
 * single source. A method may add its own.
 */
export const BLOCK_ALLOWANCES: readonly Allowance[] = [
	allowance('bustEase', 4, -4, 30),
	allowance('waistEase', 4, -4, 30),
	allowance('hipEase', 4, -4, 30),
	allowance('armholeDrop', 3, 1, 6),
	allowance('neckAllow', 1, 0, 2),
	allowance('frontNeckDrop', 1, 0, 4),
	allowance('backNeckDepth', 2.5, 1.5, 4),
	allowance('shoulderDropBack', 3, 1, 6),
	allowance('shoulderDropFront', 4, 1, 7),
	allowance('hollowBack', 1, 0, 3),
	allowance('hollowFront', 1.5, 0, 3),
	allowance('dartBelow', 6, 3, 12),
	allowance('dartShort', 2.5, 0, 5)
];

/** What is cut outside the stitching line, where an edge says nothing of its own. Defaults: common practice, no single source. */
export const CUTTING_ALLOWANCES: readonly Allowance[] = [
	allowance('seamAllowance', 1, 0, 4),
	allowance('hemAllowance', 3, 0, 10)
];

/** Chosen values by key, in millimetres. */
export type AllowanceValues = Readonly<Record<string, Mm>>;

/**
 * Throws BadInput, naming place, range and value in `unit`, where a chosen value lies outside its
 * allowance's range. `seen` is what stands in a file.
 */
export const checkAllowance = (
	{ key, noun, range }: Allowance,
	value: Mm,
	place: string,
	unit: Unit = 'cm',
	seen?: string
): Mm => {
	const [least, most] = range;
	if (value >= least && value <= most) return value;
	throw new BadInput(
		place + key,
		message('input', 'outside', { of: { key, noun }, range, value, unit, seen })
	);
};
