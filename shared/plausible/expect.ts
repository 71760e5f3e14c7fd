import type { Measurements } from '../body.ts';
import type { MeasurementKey } from '../measurements.ts';
import { mm, type Mm } from '../units.ts';
import { dot } from './matrix.ts';
import { alone, together, type People } from './people.ts';
import { isSurveyed, SURVEYED_KEYS, type SurveyedKey } from './stand-ins.ts';

/** What a measurement may be expected to be, from others: most likely, and how far bodies lie about it. */
export interface Expected {
	readonly value: Mm;
	readonly sd: Mm;
	/** Nineteen of twenty lie between these, to half a centimetre: more would not be known. */
	readonly range: readonly [Mm, Mm];
}

/** How many standard deviations about the mean nineteen of twenty lie within, where they are spread evenly about it. */
const NINETEEN_OF_TWENTY = 1.96;
const STEP = mm(5);

/** The measurements of a body that the survey knows something of. */
export const surveyedOf = (measurements: Measurements): readonly SurveyedKey[] =>
	SURVEYED_KEYS.filter((key) => measurements[key] !== undefined);

/** How far a body lies from the survey's middle one: its Mahalanobis distance, squared, by the measurements that were taken. */
export const distance = (people: People, measurements: Measurements): number => {
	const keys = surveyedOf(measurements);
	const { mean, precision } = together(people, keys);
	const off = keys.map((key, i) => (measurements[key] ?? NaN) - (mean[i] ?? NaN));
	return dot(
		off,
		precision.map((row) => dot(row, off))
	);
};

/**
 * A body that lies far out lets less be expected of it than one in the middle: its parts have not been seen together.
 * So its spread is wider, by how much further out it is than its number of measurements lets expect.
 */
const widened = (squared: number, count: number): number =>
	Math.sqrt(Math.max(1, squared / Math.max(count, 1)));

const expectedOf = (value: number, sd: number): Expected => ({
	value: mm(value),
	sd: mm(sd),
	range: [
		mm(Math.floor((value - NINETEEN_OF_TWENTY * sd) / STEP) * STEP),
		mm(Math.ceil((value + NINETEEN_OF_TWENTY * sd) / STEP) * STEP)
	]
});

/**
 * What a measurement may be expected to be from all others that were taken (its conditional mean and standard
 * deviation in the survey), whether it was taken itself or not; undefined where the survey took nothing like it.
 */
export const expected = (
	people: People,
	of: MeasurementKey,
	measurements: Measurements
): Expected | undefined => {
	if (!isSurveyed(of)) return undefined;
	const others: Measurements = { ...measurements, [of]: undefined };
	const keys = surveyedOf(others);
	if (keys.length === 0) {
		const { mean, sd } = alone(people, of);
		return expectedOf(mean, sd);
	}
	// Of all with this one last: its row of the precision holds how the others weigh on it.
	const { mean, precision } = together(people, [...keys, of]);
	const row = precision[keys.length] ?? [];
	const own = row[keys.length] ?? NaN;
	const off = keys.map((key, i) => (others[key] ?? NaN) - (mean[i] ?? NaN));
	const value = (mean[keys.length] ?? NaN) - dot(row.slice(0, keys.length), off) / own;
	return expectedOf(value, Math.sqrt(1 / own) * widened(distance(people, others), keys.length));
};

/** The share of a normal distribution below a value, by Abramowitz and Stegun 26.2.17: to 1e-7. */
const below = (z: number): number => {
	const t = 1 / (1 + 0.2316419 * Math.abs(z));
	const series = [0.31938153, -0.356563782, 1.781477937, -1.821255978, 1.330274429];
	const sum = series.reduce((all, each, i) => all + each * t ** (i + 1), 0);
	const tail = (Math.exp(-0.5 * z ** 2) / Math.sqrt(2 * Math.PI)) * sum;
	return z < 0 ? tail : 1 - tail;
};

/**
 * How many in a hundred bodies lie nearer to the middle than a squared distance over so many measurements: of a
 * chi-squared distribution, by Wilson and Hilferty's cube root (to about 1 in 100).
 */
export const nearer = (squared: number, count: number): number => {
	const spread = 2 / (9 * count);
	return 100 * below((Math.cbrt(squared / count) - 1 + spread) / Math.sqrt(spread));
};
