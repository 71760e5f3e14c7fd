import { Matrix, solve } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import { bodyErrors } from '#shared/body-errors.ts';
import { bodyOfSize, nearestSize, readSize, sizeBody, sizesOf } from '#shared/sizes/size.ts';
import { SIZE_TABLES, sizeTable } from '#shared/sizes/tables.ts';
import statistics from '#shared/survey/statistics-women.json' with { type: 'json' };
import { mm } from '#shared/units.ts';
import { evaluate } from '#drafting/evaluate.ts';
import { lessonCourse } from '../../src/cli/lesson-course.ts';
import { english, speechFor } from '../support/speech.ts';
import { slipWords } from '#shared/bad-input.ts';

/** What is wrong, as a person reads it. */
const slipOf = (work: () => unknown): string => {
	try {
		work();
	} catch (error) {
		return slipWords(error as Parameters<typeof slipWords>[0], english);
	}
	return 'nothing';
};

describe('tables of sizes', () => {
	it('go on by the intervals of the standard: 4 cm, and for the large ones 6 at bust and waist and 5 at the hip', () => {
		// EN 13402-3 as it is usually quoted; from memory, like the table itself: this guards against slips of typing alone.
		const { sizes } = sizeTable('women');
		const rows = Object.values(sizes);
		rows.slice(1).forEach((row, i) => {
			const steps = row.map((value, column) => value - (rows[i]?.[column] ?? NaN));
			expect(steps).toEqual(i < 7 ? [4, 4, 4] : [6, 6, 5]);
		});
	});

	it.each(SIZE_TABLES)('of %s have a source in both languages', (table) => {
		for (const language of ['en', 'es'] as const)
			expect(speechFor(language).words.sizes.source({ table })).toMatch(/memor|1911/);
	});
});

describe('what a table lacks', () => {
	it('is the mean of the women who have its girths: a linear algebra library finds the same from the covariances', () => {
		const column = (name: string): number => statistics.columns.indexOf(name);
		const given = ['bust', 'waist_natural', 'hip'].map(column);
		const part = (rows: readonly number[], columns: readonly number[]): Matrix =>
			new Matrix(rows.map((i) => columns.map((j) => statistics.covariance[i]?.[j] ?? NaN)));
		const off = Matrix.columnVector(
			[96, 80, 104].map((value, i) => value - (statistics.mean[given[i] ?? -1] ?? NaN))
		);
		const conditional = (name: string): number =>
			(statistics.mean[column(name)] ?? NaN) +
			part([column(name)], given)
				.mmul(solve(part(given, given), off))
				.get(0, 0);
		const { measurements, estimated } = sizeBody({ table: 'women', name: '42' });
		// To the millimetre that a size is rounded to; 2 cm more of the back and the shoulder as shared/survey/README.md says.
		expect(measurements.bustHeight).toBeCloseTo(Math.round(10 * conditional('neck_to_bustpoint')), 6);
		expect(measurements.waistToHip).toBeCloseTo(Math.round(10 * conditional('natural_waist_to_hip')), 6);
		expect(measurements.backLength).toBeCloseTo(Math.round(10 * conditional('back_waist_natural') + 20), 6);
		expect(measurements.shoulderWidth).toBeCloseTo(Math.round(10 * conditional('biacromial') + 20), 6);
		expect(estimated.neck?.sd).toBeGreaterThan(5);
		expect([measurements.bust, measurements.waist, measurements.hip]).toEqual([960, 800, 1040]);
	});

	it('is marked as estimated in the body, and makes what hangs on it less sure', () => {
		const body = bodyOfSize({ table: 'women', name: '42' }, 'Size 42');
		expect(body.supposed?.backLength).toBe('estimated');
		expect(body.supposed?.bust).toBeUndefined();
		expect(bodyErrors(body)('backLength')).toBeGreaterThan(20);
		expect(bodyErrors(body)('bust')).toBe(9);
	});
});

describe('every size of women and of 1911', () => {
	it.each(['women', 'old'] as const)('of %s can be drafted by the body block', (table) => {
		const method = lessonCourse().method('front-block');
		for (const size of sizesOf(table)) {
			const made = method && evaluate(method, bodyOfSize(size, size.name));
			expect({ size: size.name, kind: made?.kind }).toEqual({ size: size.name, kind: 'drafted' });
		}
	});
});

describe('a size that is asked for', () => {
	it('is one of the women’s table, or of another by its name', () => {
		expect(readSize('42', '--size')).toEqual({ table: 'women', name: '42' });
		expect(readSize('men: 50', '--size')).toEqual({ table: 'men', name: '50' });
	});

	it('is told with what there is', () => {
		expect(slipOf(() => readSize('43', '--size'))).toMatch(
			/^--size: the table "women" has no size "43".*it has 32, 34/
		);
		expect(slipOf(() => readSize('mn:50', '--size'))).toBe(
			'--size: there is no table of sizes "mn"; there are women, men and old'
		);
		expect(slipOf(() => readSize('a:b:c', '--size'))).toMatch(/a size is 42/);
	});
});

describe('the nearest size', () => {
	it('counts in measuring errors: a body whose girths are a size’s own is it, without any', () => {
		const body = bodyOfSize({ table: 'women', name: '38' }, 'Dunlin');
		expect(nearestSize('women', body)).toMatchObject({ size: { name: '38' }, errors: 0 });
	});

	it('works it for Heron by hand: 0, 2 and 2 cm off size 42, at 9 mm an error', () => {
		const heron = DEMO_BODIES[0]?.body;
		const near = heron && nearestSize('women', heron);
		expect(near?.size.name).toBe('42');
		expect(near?.errors).toBeCloseTo(Math.sqrt((0 + (20 / 9) ** 2 * 2) / 3), 9);
		expect(near?.apart.find(({ key }) => key === 'waist')?.errors).toBeCloseTo(-20 / 9, 9);
	});

	it('is not told of a body that lacks a girth of the table', () => {
		const body = { name: 'Knot', unit: 'cm', measurements: { bust: mm(960) }, allowances: {} } as const;
		expect(nearestSize('women', body)).toBeUndefined();
	});
});
