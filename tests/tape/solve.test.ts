import { Matrix, inverse } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { at, distance } from '#geometry/point.ts';
import { begunWith } from '#tape/begin.ts';
import { greatestOf, inverted, solved } from '#tape/normal.ts';
import { circlesOf, settled, type Reading } from '#tape/solve.ts';
import { drawnBy } from './taped.ts';

describe('equations', () => {
	const size = 12;
	const draw = drawnBy(5);
	const rows = Array.from({ length: 30 }, () => Array.from({ length: size }, () => draw() - 0.5));
	const all = new Matrix(rows);
	const square = all.transpose().mmul(all);
	const flat = Float64Array.from(square.to1DArray());

	it('are solved as a library of matrices solves them (ml-matrix)', () => {
		const own = inverted(flat, size);
		const theirs = inverse(square).to1DArray();
		expect(own).toHaveLength(size * size);
		for (const [i, value] of theirs.entries()) expect(own?.[i]).toBeCloseTo(value, 9);
		const right = Float64Array.from({ length: size }, draw);
		const x = solved(flat, right, size) ?? [];
		const back = square.mmul(Matrix.columnVector([...x])).to1DArray();
		for (const [i, value] of back.entries()) expect(value).toBeCloseTo(right[i] ?? NaN, 9);
	});

	it('are refused where they leave something open', () => {
		expect(inverted(Float64Array.from([1, 2, 2, 4]), 2)).toBeUndefined();
	});

	it('have their greatest eigenvalue: of [[2, 1], [1, 2]] it is 3', () => {
		expect(greatestOf(2, 1, 2)).toBe(3);
	});
});

describe('points between which distances were read', () => {
	/** Heron of Alexandria's triangle of sides 13, 14 and 15: its height on 14 is 12, and parts it into 5 and 9 (Metrica I, 5). */
	const triangle = [at(0, 0), at(0, 14), at(12, 5)];
	const sides: readonly Reading[] = [
		{ from: 0, to: 1, length: 14 },
		{ from: 0, to: 2, length: 13 },
		{ from: 1, to: 2, length: 15 }
	];

	it('lie where a triangle of whole numbers has them', () => {
		const begun = begunWith(sides, [at(0, 0), at(0, 10), at(8, 8)], 0);
		const found = settled(begun.places, sides, { origin: 0, axis: 1 }, 1);
		for (const [i, place] of triangle.entries())
			expect(distance(place, found?.places[i] ?? at(NaN, NaN))).toBeLessThan(1e-6);
		expect(found?.spare).toBe(0);
	});

	it('agree as least squares says: a square of 300 whose diagonals are read 1 mm too long', () => {
		// By symmetry all four sides grow by s and both diagonals by d: with sides read 300 and diagonals 300√2 + 1, the
		// sum 4 s² + 2 (√2 s - 1)² is least at s = √2 / 4.
		const places = [at(0, 0), at(300, 0), at(300, 300), at(0, 300)];
		const side = (from: number, to: number): Reading => ({ from, to, length: 300 });
		const long = (from: number, to: number): Reading => ({ from, to, length: 300 * Math.SQRT2 + 1 });
		const readings = [side(0, 1), side(1, 2), side(2, 3), side(3, 0), long(0, 2), long(1, 3)];
		const found = settled(places, readings, { origin: 0, axis: 1 }, 1);
		const [a, b] = found?.places ?? [];
		expect(a && b && distance(a, b)).toBeCloseTo(300 + Math.SQRT2 / 4, 6);
		expect(found?.misses).toBeCloseTo(4 / 8 + 2 * (0.5 - 1) ** 2, 4);
		expect(found?.spare).toBe(1);
	});

	it('have circles that hold 95 of 100 places, however the spread is shaped', () => {
		// The share that lies within the circle, by adding up the bell curve: 95 % to a tenth.
		const held = (across: number, down: number, radius: number): number => {
			let sum = 0;
			const step = 0.01;
			for (let x = -radius; x <= radius; x += step) {
				const y = Math.sqrt(Math.max(0, radius * radius - x * x));
				const inner = erf(y / down / Math.SQRT2);
				sum += (Math.exp(-((x / across) ** 2) / 2) / across / Math.sqrt(2 * Math.PI)) * inner * step;
			}
			return sum;
		};
		for (const down of [1, 0.75, 0.5, 0.25]) {
			const inverse = Float64Array.from([1, 0, 0, 0, down * down, 0, 0, 0, 1]);
			const places = [at(0, 0), at(10, 10), at(0, 20)];
			const [, circle = 0] = circlesOf({
				places,
				held: { origin: 0, axis: 2 },
				misses: 0,
				spare: 0,
				inverse
			});
			expect(held(1, down, circle)).toBeCloseTo(0.95, 2);
		}
	});
});

/** The error function (Abramowitz and Stegun 7.1.26: right to 1.5e-7). */
function erf(x: number): number {
	const t = 1 / (1 + 0.3275911 * x);
	const sum = ((((1.061405429 * t - 1.453152027) * t + 1.421413741) * t - 0.284496736) * t + 0.254829592) * t;
	return 1 - sum * Math.exp(-x * x);
}
