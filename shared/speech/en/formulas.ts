import type { Noun } from '../noun.ts';
import type { Voice } from '../voice.ts';
import { the } from './grammar.ts';

const FRACTIONS: Readonly<Record<number, string>> = {
	2: 'half',
	3: 'a third of',
	4: 'a quarter of',
	5: 'a fifth of',
	6: 'a sixth of',
	8: 'an eighth of',
	12: 'a twelfth of'
};
/** What else is measured than lengths of lines. */
const MEASURED = {
	rise: (names: readonly string[]) => `rise ${names.join('–')}`,
	across: (names: readonly string[]) => `way across ${names.join('–')}`,
	angle: (names: readonly string[]) => `angle of ${names.join('–')}`,
	turn: ([one = '', other = '']: readonly string[]) => `turn from ${one} to ${other}`,
	widthAt: ([piece = '', point = '']: readonly string[]) => `width of ${piece} at ${point}`,
	openWidthAt: ([piece = '', point = '']: readonly string[]) => `width of ${piece} at ${point}, darts open`,
	sewn: ([edge = '']: readonly string[]) => `length of ${edge}`
};
/** A number of a formula is written as it is, whatever its decimals. */
const ALL_DECIMALS = 15;

/** A rule's formula in words, with its arithmetic. The words of a formula are a noun, so that they can be part of another. */
export const formulas = (v: Voice) => ({
	number: (value: number): Noun => ({
		name: value === Math.PI ? 'π' : v.number(value, ALL_DECIMALS)
	}),
	distance: ({ from, to }: { from: string; to: string }): Noun => ({
		article: 'the',
		name: `distance ${from}–${to}`
	}),
	length: (line: Noun): Noun => ({ article: 'the', name: `length of ${the(line)}` }),
	measured: ({ what, names }: { what: keyof typeof MEASURED; names: readonly string[] }): Noun => ({
		article: 'the',
		name: MEASURED[what](names)
	}),
	greater: ({ one, other }: { one: Noun; other: Noun }): Noun => ({
		article: 'the',
		name: `greater of ${the(one)} and ${the(other)}`
	}),
	lesser: ({ one, other }: { one: Noun; other: Noun }): Noun => ({
		article: 'the',
		name: `lesser of ${the(one)} and ${the(other)}`
	}),
	/** A whole divided by a number that has a word of its own; undefined where it has none. */
	part: ({ whole, by }: { whole: Noun; by: number }): Noun | undefined => {
		const fraction = FRACTIONS[by];
		return fraction === undefined ? undefined : { name: `${fraction} ${the(whole)}` };
	},
	bracketed: (inside: Noun): Noun => ({ name: `(${the(inside)})` }),
	negative: (of: Noun): Noun => ({ name: `− ${the(of)}` }),
	joined: ({ sign, left, right }: { sign: string; left: Noun; right: Noun }): Noun => ({
		name: `${the(left)} ${sign} ${the(right)}`
	}),
	/** What a formula comes to: each rung of the sum, and whether the last is exact as it is written. */
	arithmetic: ({
		words,
		sum,
		result,
		exact
	}: {
		words: Noun;
		sum: string | undefined;
		result: string;
		exact: boolean;
	}) => [the(words), ...(sum === undefined ? [] : [sum]), `${exact ? '' : 'about '}${result}`].join(' = ')
});
