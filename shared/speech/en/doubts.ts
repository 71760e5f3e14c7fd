import type { MeasurementKey } from '../../measurements.ts';
import { mm, MM_PER, type Mm } from '../../units.ts';
import type { Voice } from '../voice.ts';
import { The, the } from './grammar.ts';
import { measurementNoun } from './nouns.ts';

/** What may have happened to a number on its way from the tape. */
export const SLIPS = [
	'less',
	'more',
	'digits',
	'inches',
	'centimetres',
	'half',
	'twice',
	'point',
	'hundred',
	'swapped',
	'instead'
] as const;
export type Slip = (typeof SLIPS)[number];

/** A measurement beside what hardly anybody has, or beside what the others let expect. */
export interface Doubted {
	readonly of: MeasurementKey;
	readonly value: Mm;
	readonly other?: MeasurementKey;
	readonly plain?: readonly [Mm, Mm];
	readonly expected?: { readonly value: Mm; readonly range: readonly [Mm, Mm] };
}

/** What is asked about measurements that do not go together. */
export const doubts = (v: Voice) => {
	const ten = v.length(mm(10 * MM_PER[v.unit]));
	/** What the other measurements let expect. */
	const beside = ({ expected }: Doubted): string => {
		if (!expected) return '';
		const { least, most } = v.range(expected.range);
		return ` Beside the other measurements about ${v.length(mm(Math.round(expected.value)))} would be usual, from ${least} to ${most}.`;
	};
	return {
		doubted: (doubt: Doubted): string => {
			const { of, value, other, plain } = doubt;
			const { name } = measurementNoun(of);
			if (other)
				return `${The(measurementNoun(of))} and ${the(measurementNoun(other))} seem to stand in each other’s fields.`;
			if (plain) {
				const { least, most } = v.range(plain);
				return `A ${name} of ${v.outside(value, plain)}? Nearly everybody’s lies between ${least} and ${most}.`;
			}
			return `${The(measurementNoun(of))}: ${v.length(value)}?${beside(doubt)}`;
		},
		/** What may have happened; `other` is the measurement that it was mixed up with. */
		slipped: ({ slip, other }: { slip: Slip; other?: MeasurementKey | undefined }): string => {
			const it = other ? the(measurementNoun(other)) : '';
			switch (slip) {
				case 'less':
					return `Did you read ${ten} too little?`;
				case 'more':
					return `Did you read ${ten} too much?`;
				case 'digits':
					return 'Are two digits swapped?';
				case 'inches':
					return 'Was it read in inches?';
				case 'centimetres':
					return 'Was it read in centimetres?';
				case 'half':
					return 'Is it half the way round?';
				case 'twice':
					return 'Was it doubled?';
				case 'point':
					return 'Did the decimal point slip?';
				case 'hundred':
					return 'Is the 1 of the hundred left off?';
				case 'swapped':
					return `Do this number and that of ${it} stand in each other’s fields?`;
				case 'instead':
					return `Was ${it} measured in its place?`;
			}
		},
		use: ({ value }: { value: Mm }) => `Make it ${v.length(value)}`,
		swap: 'Swap the two',
		again: 'Measure it once more. If it stays, keep it: nobody has every measurement as most have it.',
		/** Every number at once. */
		otherUnit: ({ unit }: { unit: 'inches' | 'centimetres' }): string =>
			unit === 'inches'
				? 'All these numbers would be a grown body’s in inches. Was the tape read in inches? Then choose inches at the top and type them again.'
				: 'All these numbers would be a grown body’s in centimetres. Was the tape read in centimetres? Then choose centimetres at the top and type them again.',
		/** A body with a measurement that hardly anybody has cannot be drafted: what to do about it. */
		doubtFirst: 'Measure that once more, or look whether it was typed as it was read.'
	};
};
