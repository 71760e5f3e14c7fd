import { describe, expect, it } from 'vitest';
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import { errorOfMean, readingError } from '#shared/reading-errors.ts';
import { mm, radians } from '#shared/units.ts';
import { howSure, type DraftSureness } from '#drafting/sureness/how-sure.ts';
import { evenNormals } from '#drafting/sureness/draws.ts';
import { axesOf, normalReach } from '#drafting/sureness/spread.ts';
import { lessonCourse } from '../../src/cli/lesson-course.ts';
import { comparedWithTries, draftFor, errorOf } from './against-tries.ts';

const course = lessonCourse();
const method = (id: string) => {
	const found = course.method(id);
	if (!found) throw new Error(id);
	return found;
};
const bodyOf = (id: string) => {
	const found = DEMO_BODIES.find((each) => each.id === id);
	if (!found) throw new Error(id);
	return found.body;
};
const sureOf = (id: string, body: string): DraftSureness =>
	howSure(method(id), bodyOf(body), draftFor(method(id), bodyOf(body)), (key) => readingError(key));

describe('how far a normal spread reaches in nineteen cases of twenty', () => {
	// Quantiles as tables of statistics print them: 1.959964 of the normal distribution, 5.991465 of chi-squared with two degrees.
	it('is 1.96 deviations along a line and the root of 5.99 round a circle', () => {
		expect(normalReach({ greater: 4, lesser: 0, turn: radians(0) })).toBeCloseTo(2 * 1.959964, 3);
		expect(normalReach({ greater: 4, lesser: 4, turn: radians(0) })).toBeCloseTo(2 * Math.sqrt(5.991465), 4);
	});

	it('finds the axes of a spread that lies aslant', () => {
		const { greater, lesser, turn } = axesOf({ xx: 5, xy: 3, yy: 5 });
		expect([greater, lesser, turn]).toEqual([8, 2, Math.PI / 4]);
	});
});

describe('even draws', () => {
	it('have the moments of normal numbers that are not connected', () => {
		const draws = evenNormals(7, 2048);
		const mean = (value: (draw: readonly number[]) => number): number =>
			draws.reduce((sum, draw) => sum + value(draw), 0) / draws.length;
		for (let i = 0; i < 7; i++) {
			expect(Math.abs(mean((draw) => draw[i] ?? NaN))).toBeLessThan(0.01);
			expect(Math.abs(mean((draw) => (draw[i] ?? NaN) ** 2) - 1)).toBeLessThan(0.02);
			for (let j = 0; j < i; j++)
				expect(Math.abs(mean((draw) => (draw[i] ?? NaN) * (draw[j] ?? NaN)))).toBeLessThan(0.03);
		}
	});
});

describe('a reading error', () => {
	it('is what ISO 20685 allows: 9 mm for large girths, 4 for small ones, 5 for lengths', () => {
		expect(
			['bust', 'hip', 'neck', 'upperArm', 'backLength'].map((key) => readingError(key as 'bust'))
		).toEqual([9, 9, 4, 4, 5]);
		expect(readingError('bust', { kinds: { largeGirth: mm(12) } })).toBe(12);
		expect(readingError('bust', { kinds: { largeGirth: mm(12) }, single: { bust: mm(6) } })).toBe(6);
	});

	it('of two readings is less where they agree, and more where they do not', () => {
		// Four parts of the usual square, one of half the square of the difference, and a root of two for the mean of two.
		expect(errorOfMean(mm(9), [mm(960), mm(960)])).toBeCloseTo(Math.sqrt((4 * 81) / 5 / 2), 9);
		expect(errorOfMean(mm(9), [mm(950), mm(980)])).toBeCloseTo(Math.sqrt((4 * 81 + 450) / 5 / 2), 9);
		expect(readingError('bust', { readings: { bust: [mm(950), mm(980)] } })).toBeGreaterThan(8.7);
	});
});

describe('how sure the points of a draft are', () => {
	it('follows the rules that can be worked by head: half a shoulder width, a quarter of a bust', () => {
		const { points, lines } = sureOf('back-block', 'heron');
		expect(points['O']).toMatchObject({ reach: 0, by: [] });
		expect(points['A']?.reach).toBeCloseTo(1.959964 * 2.5, 3);
		expect(points['A']?.by).toEqual([{ key: 'shoulderWidth', share: 1 }]);
		// U strays 2.5 down with half the shoulder width and 2.25 out with a quarter of the bust.
		expect(points['U']?.oval.width).toBeCloseTo(((points['U']?.oval.length ?? NaN) * 2.25) / 2.5, 6);
		expect(points['U']?.by.map(({ key }) => key)).toEqual(['shoulderWidth', 'bust']);
		expect(points['U']?.by[0]?.share).toBeCloseTo(2.5 ** 2 / (2.5 ** 2 + 2.25 ** 2), 9);
		expect(lines['armholeLevel']?.length.reach).toBeCloseTo(1.959964 * 2.25, 3);
		expect(lines['armhole']?.along).toHaveLength(5);
	});

	it('says of a point that only some readings have in how many it is, and that it was tried', () => {
		const { points, drafted } = sureOf('front-block', 'gannet');
		expect(drafted).toBe(1);
		expect(points['D']?.bends).toBe(true);
		// The front is 6 mm longer than the back, and each strays by 5: the longer it is by a root of 50.
		expect(points['D']?.there).toBeGreaterThan(0.75);
		expect(points['D']?.there).toBeLessThan(0.85);
	});

	it('is told where a rule gives way to another: the most that a side takes in', () => {
		const bent = Object.values(sureOf('dress-front', 'siskin').points).filter(({ bends }) => bends);
		expect(bent.length).toBeGreaterThan(0);
	});
});

describe('what is told lies within 5 % of what 4,000 drafts of readings drawn by chance show', () => {
	it.each([
		['back-block', 'heron'],
		['front-block', 'gannet'],
		['dress-front', 'lark'],
		['set-in-sleeve', 'siskin']
	])('%s for %s, every point', (id, body) => {
		const compared = comparedWithTries(method(id), bodyOf(body), 4000);
		expect(compared.length).toBeGreaterThan(5);
		expect(compared.filter((each) => errorOf(each) > 0.05)).toEqual([]);
	});
});
