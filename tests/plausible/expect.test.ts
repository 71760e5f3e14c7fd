import { readFileSync } from 'node:fs';
import { inverse, Matrix } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { surveyBodies } from '../measure/body-slips.ts';
import { distance, expected, nearer } from '#shared/plausible/expect.ts';
import { alone, PEOPLE, percentile, together } from '#shared/plausible/people.ts';
import { SURVEYED_KEYS, type SurveyedKey } from '#shared/plausible/stand-ins.ts';
import type { Measurements } from '#shared/body.ts';
import { mm } from '#shared/units.ts';

const only = (measurements: Measurements, keys: readonly SurveyedKey[]): Measurements =>
	Object.fromEntries(keys.map((key) => [key, measurements[key]]));

/** Some of all measurements: every third, and those that a draft needs. */
const SETS: readonly (readonly SurveyedKey[])[] = [
	SURVEYED_KEYS,
	SURVEYED_KEYS.slice(0, 10),
	SURVEYED_KEYS.filter((_, i) => i % 3 === 0),
	['bust', 'hip']
];
const BODIES = surveyBodies().filter((_, i) => i % 50 === 0);

/** The survey's own figures as the file has them, read past our code. */
const FILE = JSON.parse(
	readFileSync(new URL('../../shared/survey/statistics.json', import.meta.url), 'utf8')
) as {
	readonly columns: readonly string[];
	readonly percents: readonly number[];
	readonly women: {
		readonly mean: readonly number[];
		readonly percentiles: readonly (readonly number[])[];
		readonly covariance: readonly (readonly number[])[];
	};
};

describe.each(PEOPLE)('what is expected beside the survey of %s, against ml-matrix', (people) => {
	it.each(SETS.map((keys) => [keys.length, keys] as const))(
		'conditional means, spreads and distances of %d measurements',
		(_, keys) => {
			const { mean, covariance } = together(people, keys);
			const whole = new Matrix(covariance.map((row) => [...row]));
			for (const { measurements } of BODIES) {
				const body = only(measurements, keys);
				const off = Matrix.columnVector(keys.map((key, i) => (body[key] ?? NaN) - (mean[i] ?? NaN)));
				const squared = off.transpose().mmul(inverse(whole)).mmul(off).get(0, 0);
				expect(distance(people, body)).toBeCloseTo(squared, 6);
				keys.forEach((key, at) => {
					const rest = keys.flatMap((_each, i) => (i === at ? [] : [i]));
					const among = whole.selection(rest, rest);
					const across = whole.selection([at], rest);
					const weights = across.mmul(inverse(among));
					const restOff = off.selection(rest, [0]);
					const conditional = (mean[at] ?? NaN) + weights.mmul(restOff).get(0, 0);
					const sd = Math.sqrt(whole.get(at, at) - weights.mmul(across.transpose()).get(0, 0));
					const found = expected(people, key, body);
					expect(found?.value).toBeCloseTo(conditional, 6);
					const further = restOff.transpose().mmul(inverse(among)).mmul(restOff).get(0, 0) / rest.length;
					expect(found?.sd).toBeCloseTo(sd * Math.sqrt(Math.max(1, further)), 6);
				});
			}
		}
	);
});

describe('the survey’s own figures', () => {
	it('stand as the file has them where a column is the measurement, and a sum of columns by its variance', () => {
		const at = (name: string): number => FILE.columns.indexOf(name);
		expect(alone('women', 'bust').mean).toBeCloseTo(10 * (FILE.women.mean[at('bust')] ?? NaN), 9);
		const drop = FILE.columns.map((name) =>
			name === 'side_neck_height' ? 1 : name === 'acromion_height' ? -1 : 0
		);
		const row = Matrix.rowVector(drop);
		const variance = row
			.mmul(new Matrix(FILE.women.covariance.map((each) => [...each])))
			.mmul(row.transpose())
			.get(0, 0);
		expect(alone('women', 'shoulderDrop').sd).toBeCloseTo(10 * Math.sqrt(variance), 9);
	});

	it('percentiles are the file’s, and lie between two of them in between', () => {
		const bust = FILE.women.percentiles[FILE.columns.indexOf('bust')] ?? [];
		FILE.percents.forEach((percent, i) => {
			if (percent === 100) return;
			expect(percentile('women', 'bust', mm(10 * (bust[i] ?? NaN)))).toBeCloseTo(percent, 6);
		});
		const middle = mm(5 * ((bust[4] ?? NaN) + (bust[5] ?? NaN)));
		expect(percentile('women', 'bust', middle)).toBeCloseTo(62.5, 6);
		expect(percentile('women', 'bust', mm(2000))).toBe(100);
		expect(percentile('women', 'bust', mm(100))).toBe(0);
		expect(percentile('women', 'frontLength', mm(440))).toBeUndefined();
	});

	it('nothing is expected of what the survey took nothing like', () => {
		expect(expected('women', 'acrossChest', { bust: mm(960) })).toBeUndefined();
		expect(expected('women', 'hip', {})?.value).toBeCloseTo(alone('women', 'hip').mean, 9);
	});
});

describe('how many lie nearer to the middle', () => {
	// Chi-squared tables, as any textbook prints them: 0.5, 0.95 and 0.99 quantiles.
	it.each([
		[3, 2.366, 50],
		[3, 7.815, 95],
		[10, 9.342, 50],
		[10, 18.307, 95],
		[10, 23.209, 99],
		[21, 32.671, 95]
	])('of %d measurements at %d: %d', (count, squared, percent) => {
		expect(Math.abs(nearer(squared, count) - percent)).toBeLessThan(1);
	});
});
