import { describe, expect, it } from 'vitest';
import { lowerTriangle } from '#shared/plausible/matrix.ts';
import type { Body } from '#shared/body.ts';
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import { NEEDED_KEYS } from '#shared/measurements.ts';
import { evaluate } from '#drafting/evaluate.ts';
import { SURVEY_COVARIANCE, SURVEY_MEANS } from '#practice/bodies/survey.ts';
import { drawnBody, generatedBody } from '#practice/generate-body.ts';
import { surveyFigures } from '../reference/survey-bodies.ts';
import { BACK, FRONT, seeds } from './methods.ts';

const BODIES = 2000;
/** Of 55 covariances and 10 means one in three hundred such trials would have one further off. */
const MOST_DEVIATIONS = 4;
/** What rounding to half a centimetre adds to a variance, in square centimetres. */
const ROUNDING = 0.5 ** 2 / 12;

type Row = readonly number[];
const centimetres = ({ measurements }: Body): Row =>
	NEEDED_KEYS.map((key) => (measurements[key] ?? NaN) / 10);
const REAL = surveyFigures().map((figure): Row => NEEDED_KEYS.map((key) => figure[key]));

const meanOf = (rows: readonly Row[], i: number): number =>
	rows.reduce((sum, row) => sum + (row[i] ?? NaN), 0) / rows.length;

/** The most that any mean, and any covariance, lies from the survey's, in standard errors. */
const deviations = (rows: readonly Row[], rounding: number): { mean: number; covariance: number } => {
	const n = rows.length;
	const means = NEEDED_KEYS.map((_, i) => meanOf(rows, i));
	const survey = (i: number, j: number): number => SURVEY_COVARIANCE[i]?.[j] ?? NaN;
	const ofMeans = NEEDED_KEYS.map(
		(key, i) => Math.abs((means[i] ?? NaN) - SURVEY_MEANS[key]) / Math.sqrt(survey(i, i) / n)
	);
	const ofCovariances = NEEDED_KEYS.flatMap((_, i) =>
		NEEDED_KEYS.map((__, j) => {
			const products = rows.map(
				(row) => ((row[i] ?? NaN) - (means[i] ?? NaN)) * ((row[j] ?? NaN) - (means[j] ?? NaN))
			);
			const found = products.reduce((sum, each) => sum + each, 0) / (n - 1) - (i === j ? rounding : 0);
			// The standard error of a covariance of normal numbers.
			const error = Math.sqrt((survey(i, i) * survey(j, j) + survey(i, j) ** 2) / (n - 1));
			return Math.abs(found - survey(i, j)) / error;
		})
	);
	return { mean: Math.max(...ofMeans), covariance: Math.max(...ofCovariances) };
};

describe('the numbers that bodies are drawn from', () => {
	it('are those of the 300 real women, as a sample of 300 can show', () => {
		const { mean, covariance } = deviations(REAL, 0);
		expect(mean).toBeLessThan(MOST_DEVIATIONS);
		expect(covariance).toBeLessThan(MOST_DEVIATIONS);
	});

	it('stand in as shared/survey/README.md says', () => {
		expect(SURVEY_MEANS.bust).toBe(90.7081);
		expect(SURVEY_MEANS.shoulderWidth).toBeCloseTo(36.2609 + 2, 10);
		expect(SURVEY_MEANS.backLength).toBeCloseTo(36.7315 + 2, 10);
		expect(SURVEY_MEANS.frontLength).toBeCloseTo(31.1709 + 34.6169 / 6 + 2, 10);
		const at = (a: string, b: string): number | undefined =>
			SURVEY_COVARIANCE[NEEDED_KEYS.indexOf(a as never)]?.[NEEDED_KEYS.indexOf(b as never)];
		// var(x + y / 6) = var x + 2 cov(x, y) / 6 + var y / 36.
		expect(at('frontLength', 'frontLength')).toBeCloseTo(5.51453 + (2 * 0.29425) / 6 + 2.66659 / 36, 10);
		expect(at('frontLength', 'neck')).toBeCloseTo(0.29425 + 2.66659 / 6, 10);
		expect(at('bust', 'waist')).toBe(34.5494);
	});

	it('are taken apart as by hand', () => {
		expect(lowerTriangle([[4]])).toEqual([[2]]);
		expect(
			lowerTriangle([
				[4, 2, 6],
				[2, 10, 9],
				[6, 9, 35]
			])
		).toEqual([[2], [1, 3], [3, 2, Math.sqrt(22)]]);
		// Two numbers cannot go together more than each goes with itself.
		expect(() =>
			lowerTriangle([
				[1, 2],
				[2, 1]
			])
		).toThrow('row 2');
	});
});

describe('generated bodies', () => {
	const drawn = seeds(BODIES).map((seed) => centimetres(drawnBody(seed, 0)));
	const generated = seeds(BODIES).map((seed) => centimetres(generatedBody(seed, BACK)));

	it('have the survey’s means and covariances, before and after the refused ones are drawn again', () => {
		for (const rows of [drawn, generated]) {
			const { mean, covariance } = deviations(rows, ROUNDING);
			expect(mean).toBeLessThan(MOST_DEVIATIONS);
			expect(covariance).toBeLessThan(MOST_DEVIATIONS);
		}
	});

	it('would be told from bodies whose measurements do not go together', () => {
		// The same numbers, each measurement taken from another body: every mean is the same, nothing else is.
		const mixed = drawn.map((row, k) => row.map((_, i) => drawn[(k + i) % drawn.length]?.[i] ?? NaN));
		const { mean, covariance } = deviations(mixed, ROUNDING);
		expect(mean).toBeLessThan(MOST_DEVIATIONS);
		expect(covariance).toBeGreaterThan(20);
	});

	it('are read as a tape is: whole half centimetres, in centimetres', () => {
		for (const row of generated) for (const value of row) expect(value * 2).toBe(Math.round(value * 2));
		expect(generatedBody(1, BACK)).toMatchObject({ unit: 'cm', allowances: {} });
	});

	it('are never a real woman’s row, nor a demo body’s', () => {
		const written = (row: Row): string => row.map((value) => Math.round(value * 2) / 2).join(' ');
		const taken = new Set([...REAL, ...DEMO_BODIES.map(({ body }) => centimetres(body))].map(written));
		expect(taken.size).toBe(300 + DEMO_BODIES.length);
		for (const row of [...drawn, ...generated]) expect(taken).not.toContain(written(row));
	});

	it('can all be drafted, by both blocks', () => {
		for (const method of [BACK, FRONT]) {
			for (const seed of seeds(500))
				expect(evaluate(method, generatedBody(seed, method)).kind, `${method.id} ${seed}`).toBe('drafted');
		}
	});

	it('are drawn again where they are refused', () => {
		const refused = seeds(500).filter((seed) => evaluate(BACK, drawnBody(seed, 0)).kind === 'refused');
		expect(refused.length).toBeGreaterThan(0);
		for (const seed of refused) expect(generatedBody(seed, BACK)).not.toEqual(drawnBody(seed, 0));
		const kept = seeds(500).filter((seed) => !refused.includes(seed));
		for (const seed of kept) expect(generatedBody(seed, BACK)).toEqual(drawnBody(seed, 0));
	});

	it('are the same for the same seed, in every release', () => {
		expect(generatedBody(1, BACK)).toEqual(generatedBody(1, BACK));
		expect(generatedBody(1, BACK)).toEqual({
			name: 'Whinchat',
			unit: 'cm',
			measurements: {
				bust: 935,
				waist: 705,
				hip: 945,
				neck: 350,
				shoulderWidth: 410,
				backLength: 380,
				waistToHip: 265,
				frontLength: 380,
				bustHeight: 255,
				bustSpan: 185
			},
			allowances: {}
		});
		expect(new Set(generated.map(String)).size).toBe(BODIES);
	});

	it('are named after birds, none of them a demo body', () => {
		const names = new Set(seeds(BODIES).map((seed) => generatedBody(seed, BACK).name));
		expect(names.size).toBeGreaterThan(100);
		for (const { body } of DEMO_BODIES) expect(names).not.toContain(body.name);
		for (const name of names) expect(name).toMatch(/^[A-Z][a-z]+$/);
	});
});
