import { MM_PER, mm, printNumber, type Mm, type Unit } from '#shared/units.ts';

/** Decimals with which a length is written down while drafting: a tenth of a centimetre, a whole millimetre. */
const WRITTEN_DECIMALS = 1;

/** The number as a learner would write it: centimetres to the millimetre, inches with their fraction. */
const written = (length: Mm, unit: Unit): string =>
	unit === 'in'
		? printNumber(length, unit)
		: String(Number((length / MM_PER[unit]).toFixed(WRITTEN_DECIMALS)));

/** A length as it is written down, in millimetres. */
export const asWritten = (length: Mm, unit: Unit): Mm => mm(valueOf(written(length, unit)) * MM_PER[unit]);

const valueOf = (text: string): number => {
	const [whole = '', fraction] = text.split(' ');
	const [top, bottom] = (fraction ?? '').split('/');
	return Number(whole) + (top && bottom ? Number(top) / Number(bottom) : 0);
};

/**
 * A length with two neighbouring digits of its number in the wrong order, one for each such pair: 96 gives
 * 69, 38.4 gives 83.4 and 34.8; no number is begun with a nought. Of inches only the whole ones are changed, their fractions stay.
 */
export const digitSwaps = (length: Mm, unit: Unit): readonly Mm[] => {
	const text = written(length, unit);
	if (text.startsWith('-') || (unit === 'in' && !/^\d+( |$)/.test(text))) return [];
	const end = unit === 'in' ? text.search(/ |$/) : text.length;
	const digits = Array.from(text);
	const places = digits.slice(0, end).flatMap((sign, i) => (sign === '.' ? [] : [i]));
	return places.slice(1).flatMap((place, k) => {
		const before = places[k] ?? 0;
		const [a = '', b = ''] = [digits[before], digits[place]];
		if (a === b || (before === 0 && b === '0')) return [];
		return [mm(valueOf(digits.with(before, b).with(place, a).join('')) * MM_PER[unit])];
	});
};
