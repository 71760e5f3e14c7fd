import { NEEDED_KEYS, type NeededKey } from '#shared/measurements.ts';
import statistics from '#shared/survey/statistics-women.json' with { type: 'json' };
import type { Chance } from '../chance.ts';

/** What stands in for a measurement: shares of the survey's columns, and so many centimetres more. */
interface StandIn {
	readonly columns: Readonly<Record<string, number>>;
	readonly more: number;
}

/** How much longer the tape lies across the back than the caliper's straight breadth, in cm. */
const TAPE_OVER_CALIPER = 2;
/** How much higher the side neck point lies than the nape, in cm. */
const SIDE_NECK_OVER_NAPE = 2;
/** With a sixth of the neck these two allowances of the block, in cm, are how deep the front neck lies. */
const NECK_ALLOWANCE_AND_DROP = 2;

/** The survey did not take all that a draft needs. shared/survey/README.md says why each of these stands in. */
const STAND_INS: Readonly<Record<NeededKey, StandIn>> = {
	bust: { columns: { bust: 1 }, more: 0 },
	waist: { columns: { waist_natural: 1 }, more: 0 },
	hip: { columns: { hip: 1 }, more: 0 },
	neck: { columns: { neck_base: 1 }, more: 0 },
	shoulderWidth: { columns: { biacromial: 1 }, more: TAPE_OVER_CALIPER },
	backLength: { columns: { back_waist_natural: 1 }, more: SIDE_NECK_OVER_NAPE },
	waistToHip: { columns: { natural_waist_to_hip: 1 }, more: 0 },
	frontLength: {
		columns: { front_waist_natural_from_front_neck: 1, neck_base: 1 / 6 },
		more: NECK_ALLOWANCE_AND_DROP
	},
	bustHeight: { columns: { neck_to_bustpoint: 1 }, more: 0 },
	bustSpan: { columns: { bustpoint_span: 1 }, more: 0 }
};

/** A body's ten measurements in centimetres. */
export type Centimetres = Readonly<Record<NeededKey, number>>;

const eachKey = (value: (key: NeededKey) => number): Centimetres =>
	Object.fromEntries(NEEDED_KEYS.map((key) => [key, value(key)])) as Record<NeededKey, number>;

const dot = (a: readonly number[], b: readonly number[]): number =>
	a.reduce((sum, value, i) => sum + value * (b[i] ?? 0), 0);

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

/**
 * The lower triangle L for which L times its own mirror image is the given matrix (Cholesky). Throws
 * where there is none: the matrix is then no covariance.
 */
export const lowerTriangle = (matrix: readonly (readonly number[])[]): readonly (readonly number[])[] => {
	const lower: number[][] = [];
	matrix.forEach((row, i) => {
		const made: number[] = [];
		for (let j = 0; j <= i; j++) {
			const above = j < i ? (lower[j] ?? []) : made;
			const left = (row[j] ?? NaN) - dot(above.slice(0, j), made);
			if (j === i && !(left > 0)) throw new Error(`row ${i + 1} of the matrix is not that of a covariance`);
			made.push(j === i ? Math.sqrt(left) : left / (above[j] ?? NaN));
		}
		lower.push(made);
	});
	return lower;
};

const TRIANGLE = lowerTriangle(SURVEY_COVARIANCE);

/**
 * Ten measurements that go together as they do in the survey: of the normal distribution with its
 * means and covariances. No woman's own row is ever read.
 */
export const drawnMeasurements = (chance: Chance): Centimetres => {
	const normals = NEEDED_KEYS.map(() => chance.normal());
	return eachKey((key) => SURVEY_MEANS[key] + dot(TRIANGLE[NEEDED_KEYS.indexOf(key)] ?? [], normals));
};
