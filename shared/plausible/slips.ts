import { NEEDED_KEYS, type MeasurementKey } from '../measurements.ts';
import type { Slip } from '../speech/en/doubts.ts';
import { MM_PER, mm, printNumber, type Mm, type Unit } from '../units.ts';
import type { SurveyedKey } from './stand-ins.ts';

/**
 * What may have happened to a number on its way from the tape: how it is put right, and by how much the right number
 * changes where the written one does.
 */
export interface Righted {
	readonly slip: Slip;
	readonly value: Mm;
	readonly stretch: number;
}

const GIRTHS: ReadonlySet<MeasurementKey> = new Set([
	'bust',
	'waist',
	'hip',
	'neck',
	'upperBust',
	'underBust',
	'upperArm',
	'wrist'
]);
/** Widths across the body that may be taken from its middle only. */
const WIDTHS: ReadonlySet<MeasurementKey> = new Set([
	'shoulderWidth',
	'acrossBack',
	'acrossChest',
	'bustSpan'
]);

/** How common each slip is among those of one number, as shares. Common practice, no source: no choice of them is the best for every kind. */
export const COMMON: Readonly<Record<Slip, number>> = {
	less: 0.16,
	more: 0.16,
	digits: 0.16,
	inches: 0.1,
	centimetres: 0.04,
	half: 0.1,
	twice: 0.08,
	point: 0.06,
	hundred: 0.04,
	swapped: 0.16,
	instead: 0.1
};

/** The number with two neighbouring digits changed about, each way that there is. */
const otherDigits = (value: Mm, unit: Unit): readonly Mm[] => {
	const [whole = '', ...rest] = printNumber(value, unit).split(' ');
	// A nought that came to stand before was not written.
	const signs = Array.from(`0${whole}`);
	const places = signs.flatMap((sign, i) => (/\d/.test(sign) ? [i] : []));
	// A tape's fraction of an inch is read as a whole.
	if (whole.includes('/')) return [];
	return places.slice(1).flatMap((place, i) => {
		const before = places[i] ?? 0;
		if (signs[before] === signs[place]) return [];
		const changed = signs.with(before, signs[place] ?? '').with(place, signs[before] ?? '');
		const [top = 0, bottom = 1] = (rest[0] ?? '0/1').split('/').map(Number);
		return [mm((Number(changed.join('')) + top / bottom) * MM_PER[unit])];
	});
};

/** What a number may have been before one slip, whatever the others are. */
export const righted = (of: MeasurementKey, value: Mm, unit: Unit): readonly Righted[] => {
	const ten = 10 * MM_PER[unit];
	const one = (slip: Slip, right: number, stretch = 1): Righted => ({ slip, value: mm(right), stretch });
	return [
		one('less', value + ten),
		one('more', value - ten),
		...otherDigits(value, unit).map((each) => one('digits', each)),
		one('inches', value * 2.54, 2.54),
		one('centimetres', value / 2.54, 1 / 2.54),
		one('point', value * 10, 10),
		one('point', value / 10, 0.1),
		...(unit === 'cm' ? [one('hundred', value + 1000)] : []),
		...(GIRTHS.has(of) || WIDTHS.has(of) ? [one('half', value * 2, 2)] : []),
		one('twice', value / 2, 0.5)
	].filter((each) => each.value > 0);
};

/** Girths that are taken by mistake in each other's place: the tape lay too high or too low. Common practice, no source. */
const LEVELS: readonly SurveyedKey[] = ['upperBust', 'bust', 'underBust', 'waist', 'hip'];

/** What may have been measured in the place of a measurement. */
export const insteadOf = (of: SurveyedKey, taken: readonly SurveyedKey[]): readonly SurveyedKey[] => {
	const level = LEVELS.indexOf(of);
	return level < 0
		? []
		: taken.filter((each) => Math.abs(LEVELS.indexOf(each) - level) === 1 && LEVELS.includes(each));
};

/** Whether two numbers may be written into each other's fields: those that stand side by side on a card are likelier, and none is ruled out. */
export const apartOnCard = (a: SurveyedKey, b: SurveyedKey): number => {
	const place = (key: SurveyedKey): number => NEEDED_KEYS.findIndex((each) => each === key);
	return Math.abs(place(a) - place(b));
};
