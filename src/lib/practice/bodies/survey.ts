import { NEEDED_KEYS, type NeededKey } from '#shared/measurements.ts';
import { dot, lowerTriangle } from '#shared/plausible/matrix.ts';
import { STAND_INS } from '#shared/plausible/stand-ins.ts';
import statistics from '#shared/survey/statistics-women.json' with { type: 'json' };
import type { Chance } from '../chance.ts';

/** A body's ten measurements in centimetres. */
export type Centimetres = Readonly<Record<NeededKey, number>>;

const eachKey = (value: (key: NeededKey) => number): Centimetres =>
	Object.fromEntries(NEEDED_KEYS.map((key) => [key, value(key)])) as Record<NeededKey, number>;

/** A stand-in as one number for each column of the survey. */
const weights = (key: NeededKey): readonly number[] =>
	statistics.columns.map((column) => STAND_INS[key].columns[column] ?? 0);

/** The mean of each measurement over all 2,208 women, in centimetres. */
export const SURVEY_MEANS: Centimetres = eachKey(
	(key) => dot(weights(key), statistics.mean) + STAND_INS[key].more
);

/** The covariance of each two measurements over all 2,208 women, in square centimetres, in the order of NEEDED_KEYS. */
export const SURVEY_COVARIANCE: readonly (readonly number[])[] = NEEDED_KEYS.map((a) =>
	NEEDED_KEYS.map((b) =>
		dot(
			weights(a),
			statistics.covariance.map((row) => dot(row, weights(b)))
		)
	)
);

const TRIANGLE = lowerTriangle(SURVEY_COVARIANCE);

/**
 * Ten measurements that go together as they do in the survey: of the normal distribution with its
 * means and covariances. No woman's own row is ever read.
 */
export const drawnMeasurements = (chance: Chance): Centimetres => {
	const normals = NEEDED_KEYS.map(() => chance.normal());
	return eachKey((key) => SURVEY_MEANS[key] + dot(TRIANGLE[NEEDED_KEYS.indexOf(key)] ?? [], normals));
};
