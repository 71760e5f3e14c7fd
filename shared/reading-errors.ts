import { BadInput } from './bad-input.ts';
import type { Body } from './body.ts';
import type { MeasurementKey } from './measurements.ts';
import { readingKind, type ReadingKind } from './reading-kind.ts';
import { readLength } from './reading.ts';
import { message } from './speech/message.ts';
import { mm, type Mm, type Unit } from './units.ts';

/**
 * How far one reading strays, as a standard deviation: two readings of three lie within it. The sizes are the errors that ISO 20685
 * allows between two ways of measuring (9 mm for large girths, 4 for small ones, 5 for lengths of parts of the body), here from a
 * summary of the standard. It allows them for the mean over many people; one reading of one person strays at least as far.
 */
export const READING_ERRORS: Readonly<Record<ReadingKind, Mm>> = {
	largeGirth: mm(9),
	smallGirth: mm(4),
	length: mm(5)
};

/** How much the usual error counts beside one's own readings, in further readings: two that happen to agree do not show a sure hand. Our choice. */
const USUAL_WEIGHT = 4;

/**
 * How far the mean of several readings of one measurement strays, as a standard deviation. Their own spread is pooled with the usual
 * error, since so few say little, and the mean of n strays by the root of n less.
 */
export const errorOfMean = (usual: Mm, readings: readonly Mm[]): Mm => {
	const mean = readings.reduce((sum, each) => sum + each, 0) / readings.length;
	const spread = readings.reduce((sum, each) => sum + (each - mean) ** 2, 0);
	const square = (USUAL_WEIGHT * usual ** 2 + spread) / (USUAL_WEIGHT + readings.length - 1);
	return mm(Math.sqrt(square / readings.length));
};

/** The least and the most that a reading may be said to stray: beyond it a tape is no measure. Our choice. */
const ERROR_RANGE: readonly [Mm, Mm] = [mm(0.5), mm(50)];

/** Reads how far a reading strays, as written. Throws BadInput at `place`. */
export const readReadingError = (value: string, unit: Unit, place: string): Mm => {
	const error = readLength(value, unit, place);
	if (error >= ERROR_RANGE[0] && error <= ERROR_RANGE[1]) return error;
	throw new BadInput(place, message('sureness', 'errorRange', { range: ERROR_RANGE }));
};

/** The errors that are taken for a body: of each kind, of single measurements where they are known, and what was read more than once. */
export interface ReadingErrors {
	readonly kinds?: Readonly<Partial<Record<ReadingKind, Mm>>>;
	readonly single?: Readonly<Partial<Record<MeasurementKey, Mm>>>;
	readonly readings?: Body['readings'];
}

/** How far what is known of a measurement strays, as a standard deviation: what was said of it alone, else what is usual of its kind, made surer where it was taken more than once. */
export const readingError = (
	key: MeasurementKey,
	{ kinds = {}, single = {}, readings = {} }: ReadingErrors = {}
): Mm => {
	const kind = readingKind(key);
	const error = single[key] ?? kinds[kind] ?? READING_ERRORS[kind];
	const read = readings[key] ?? [];
	return read.length > 1 ? errorOfMean(error, read) : error;
};
