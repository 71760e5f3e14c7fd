import type { MeasurementKey, Supposed } from '../../measurements.ts';
import { MM_PER, type Mm, type Unit } from '../../units.ts';
import type { Noun } from '../noun.ts';
import type { Voice } from '../voice.ts';
import { wordsOf } from '../given-words.ts';
import { capital, the } from './grammar.ts';
import { allowanceNoun, MEASUREMENT_WORDS, measurementNoun, STANDING } from './nouns.ts';

/** Lengths that people know and a drafter does not use. */
const OTHER_UNITS = /^(m|km|met(er|re)s?|ft|foot|feet|yd|yards?|dm)$/;
const WAYS = /^(down|up|across|out|left|right)$/;
/** Words whose numbers stand beside the step. */
const GIVEN = wordsOf({
	...STANDING,
	...Object.fromEntries(Object.entries(MEASUREMENT_WORDS).map(([key, { noun }]) => [key, noun]))
});

/** What may be named, by the word for it, and how the names that there are are led in where it is not "there are". */
const KINDS = {
	allowance: ['allowance'],
	command: ['command'],
	draft: ['draft'],
	edge: ['edge'],
	format: ['kind of file'],
	given: ['measurement or allowance'],
	garment: ['garment', 'the garments are'],
	garmentOrMethod: ['garment or method'],
	language: ['language'],
	lesson: ['lesson'],
	line: ['line'],
	measurement: ['measurement'],
	method: ['method', 'the methods are'],
	option: ['option'],
	paper: ['paper'],
	piece: ['piece'],
	point: ['point'],
	scale: ['scale'],
	step: ['step'],
	value: ['value', 'the values are']
} as const;

/** A kind of thing that may be named. */
export type Kind = keyof typeof KINDS;

/** A name that nothing has. */
export interface UnknownName {
	readonly kind: Kind;
	/** Absent where the place ends in it. */
	readonly name?: string;
	readonly near: string | undefined;
	/** All that there are, where the reader may choose. */
	readonly known?: readonly string[];
}

/** A length outside of its range: of a measurement or an allowance, in the unit it was written in. */
export interface Outside {
	readonly of: MeasurementKey | { readonly key: string; readonly noun?: Noun | undefined };
	readonly range: readonly [Mm, Mm];
	readonly value: Mm;
	readonly unit: Unit;
	/** As it stands in a file, where the reader does not see it. */
	readonly seen?: string | undefined;
}

const near = (name: string | undefined): string => (name === undefined ? '' : ` (did you mean "${name}"?)`);

const LENGTH = 'write a number such as 96, 96.5, 96,5 or 37 3/4, with cm, mm or " after it if you like';

/** What a person wrote that cannot be used: names, measurements, allowances, lengths, typed sums, shapes of data. */
export const input = (v: Voice) => ({
	unknown: ({ kind, name, near: like, known }: UnknownName) => {
		const [word, lead = 'there are'] = KINDS[kind] as readonly [string, string?];
		const what = name === undefined ? `${word} of this name` : `${word} "${name}"`;
		return `there is no ${what}${near(like)}${known ? `; ${lead} ${known.join(', ')}` : ''}`;
	},
	noSuchStep: (given: { readonly near: string | undefined }) => `there is no such step${near(given.near)}`,
	/** A measurement under the name that it had and under the one that it has. */
	twoNames: ({ now }: { readonly now: string }) =>
		`this is called ${now} now, which stands beside it; leave one of them out`,
	didYouMean: (given: { readonly near: string | undefined }) => near(given.near),

	notWritten: ({ seen }: { readonly seen: string }) =>
		`a length is a number or a text such as "37 3/4", not ${seen}`,
	notLength: ({ seen }: { readonly seen: string }) => `${seen} is not a length; ${LENGTH}`,
	notNumber: ({ seen }: { readonly seen: string }) => `${seen} is not a number`,
	outside: ({ of, range, value, unit, seen }: Outside) => {
		const own = v.inUnit(unit);
		const { least, most } = own.range(range);
		const noun = typeof of === 'string' ? measurementNoun(of) : allowanceNoun(of);
		const written = seen === undefined ? '' : ` (written ${seen}, unit ${unit})`;
		return `${the(noun)} must lie from ${least} to ${most}, not ${own.outside(value, range)}${written}`;
	},

	notInches: ({ of, value }: { readonly of: MeasurementKey; readonly value: Mm }) =>
		`no body is so large in inches: ${the(measurementNoun(of))} would be ${v.inUnit('cm').length(value)}; if these are centimetres, write cm`,

	/** A word where only numbers can stand: a way, a length that a drafter does not use, or anything else. */
	sumWord: ({ written }: { readonly written: string }) => {
		const word = written.toLowerCase();
		if (WAYS.test(word)) return `"${written}" has a field of its own; write only the number here`;
		if (OTHER_UNITS.test(word)) return `"${written}" is not known here; write cm, mm or in after a number`;
		const shown = GIVEN.has(word) ? ', and its number is shown beside the step' : '';
		return `write numbers only, such as 12/2+1; "${written}" is a word${shown}`;
	},
	sumNumber: ({ text }: { readonly text: string }) =>
		`"${text}" is not a number; write it with one point or comma, such as 12.5`,
	sumSign: ({ text }: { readonly text: string }) =>
		`"${text}" cannot stand in a sum; write numbers with + − × ÷ and brackets`,
	sumClosed: 'a bracket is closed that was not opened',
	sumOpened: 'a bracket is opened and not closed',
	sumBetween: ({ before, after }: { readonly before: string; readonly after: string }) =>
		`write a sign (+ − × ÷) between "${before}" and "${after}"`,
	sumMissingAfter: ({ text }: { readonly text: string }) => `a number is missing after "${text}"`,
	sumMissingBefore: ({ text }: { readonly text: string }) => `a number is missing before "${text}"`,
	sumTooLong: ({ most }: { readonly most: number }) =>
		`that is too long; a sum may have ${most} signs and figures`,
	sumEmpty: 'write a number, or a sum such as 38.4/2+3',
	sumByNothing: ({ text }: { readonly text: string }) => `"${text}" divides by nothing`,
	tooFar: ({ length, inMm }: { readonly length: Mm; readonly inMm: boolean }) => {
		const metres = `that is ${Number((length / (100 * MM_PER.cm)).toPrecision(3))} m`;
		return inMm ? `${metres}: did you mean mm?` : `${metres}, further than the sheet goes`;
	},

	/** A clause of this area as a sentence of its own. */
	sentence: ({ clause }: { readonly clause: string }) => `${capital(clause)}.`,
	/** A measurement that a body lacks. */
	/** A measurement that no tape took. */
	supposed: ({ value, how }: { readonly value: string; readonly how: Supposed }) =>
		`${value}, ${how === 'estimated' ? 'estimated' : 'worked out'}`,
	notMeasured: 'not measured'
});
