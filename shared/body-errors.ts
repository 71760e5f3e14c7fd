import type { Body, Measurements } from './body.ts';
import { MEASUREMENT_KEYS, type MeasurementKey } from './measurements.ts';
import { expected } from './plausible/expect.ts';
import { readingError, type ReadingErrors } from './reading-errors.ts';
import type { Mm } from './units.ts';

/**
 * How far what is known of each measurement of a body strays, as a standard deviation: the reading's error, less where it was read more
 * than once; for one that was estimated, how far women with the same other measurements differ in it, which is far more.
 */
export const bodyErrors = (body: Body, errors: ReadingErrors = {}): ((key: MeasurementKey) => Mm) => {
	const taken: Measurements = Object.fromEntries(
		MEASUREMENT_KEYS.flatMap((key) => {
			const length = body.measurements[key];
			return length === undefined || body.supposed?.[key] ? [] : [[key, length]];
		})
	);
	return (key) => {
		const guess = body.supposed?.[key] === 'estimated' ? expected('women', key, taken) : undefined;
		return guess?.sd ?? readingError(key, { ...errors, readings: body.readings ?? {} });
	};
};
