import { BadInput } from './bad-input.ts';
import { oneOf } from './reading.ts';
import { message } from './speech/message.ts';
import { mm, type Mm, type Unit } from './units.ts';
import type { Noun } from './speech/noun.ts';
import type { Speech } from './speech/speech.ts';

interface Chosen {
	readonly key: string;
	/** What it is called, where a method brings it; the standing ones are named by their keys in the `nouns` of each language. */
	readonly noun?: Noun;
}

/** A length that the drafter chooses, with a default and the range in which it is sane. */
export interface LengthAllowance extends Chosen {
	readonly default: Mm;
	readonly range: readonly [Mm, Mm];
}

/** A named value: files know it by its name, a person by its label, a formula as a plain number. */
export interface Choice {
	readonly name: string;
	readonly label: string;
	readonly share: number;
}

/** One of a few named values that the drafter chooses; the default is the share of one of them. */
export interface ChoiceAllowance extends Chosen {
	readonly default: number;
	readonly choices: readonly Choice[];
}

/** What the drafter chooses: a length, or one of a few named values. */
export type Allowance = LengthAllowance | ChoiceAllowance;

export const isChoice = (allowance: Allowance): allowance is ChoiceAllowance => 'choices' in allowance;

const allowance = (key: string, usual: number, least: number, most: number): LengthAllowance => ({
	key,
	default: mm(usual * 10),
	range: [mm(least * 10), mm(most * 10)]
});

/**
 * The allowances of the body block, in centimetres here. Defaults and ranges: common practice, no
 * single source. A method may add its own.
 */
export const BLOCK_ALLOWANCES: readonly LengthAllowance[] = [
	allowance('bustEase', 8, -4, 30),
	allowance('waistEase', 4, -4, 30),
	allowance('hipEase', 6, -4, 30),
	allowance('sideMost', 3, 0, 6),
	allowance('waistDartTop', 2, 0, 8),
	allowance('armholeDrop', 3, 1, 6),
	allowance('neckAllow', 1, 0, 2),
	allowance('frontNeckDrop', 1, 0, 4),
	allowance('backNeckDepth', 2.5, 1.5, 4),
	allowance('shoulderDropBack', 4, 1, 8),
	allowance('shoulderDropFront', 5, 1, 9),
	allowance('hollowBack', 1, 0, 3),
	allowance('hollowFront', 1.5, 0, 3),
	allowance('dartBelow', 6, 3, 12),
	allowance('dartShort', 2.5, 0, 5)
];

/** What is cut outside the stitching line, where an edge says nothing of its own. Defaults: common practice, no single source. */
export const CUTTING_ALLOWANCES: readonly LengthAllowance[] = [
	allowance('seamAllowance', 1, 0, 4),
	allowance('hemAllowance', 3, 0, 10)
];

/** Chosen values by key: millimetres for a length, the share for a named value. */
export type AllowanceValues = Readonly<Record<string, number>>;

/**
 * Throws BadInput, naming place, range and value in `unit`, where a chosen value lies outside its
 * allowance's range. `seen` is what stands in a file.
 */
export const checkAllowance = (
	{ key, noun, range }: LengthAllowance,
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

/** The share of the value of this name. Throws BadInput at `place`, naming the nearest and all that there are. */
export const namedChoice = ({ key, choices }: ChoiceAllowance, name: string, place: string): number => {
	const names = choices.map((each) => each.name);
	const known = oneOf('value', name, names, place + key, names);
	return choices[names.indexOf(known)]?.share ?? NaN;
};

/** A chosen value that was kept as a number, where it is one that may be chosen. Throws BadInput as reading it does. */
export const checkChosen = (allowance: Allowance, value: number, place = ''): number => {
	if (!isChoice(allowance)) return checkAllowance(allowance, mm(value), place);
	const known = allowance.choices.some(({ share }) => share === value);
	return known ? value : namedChoice(allowance, String(value), place);
};

/** A chosen value as it is read: a length in the unit of whoever reads, or the label of a named value. */
export const chosenWords = (allowance: Allowance, value: number, speech: Speech): string =>
	isChoice(allowance)
		? (allowance.choices.find(({ share }) => share === value)?.label ?? speech.number(value))
		: speech.length(mm(value));
