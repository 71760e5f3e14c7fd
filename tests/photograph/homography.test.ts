import { inverse, Matrix, SingularValueDecomposition } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { chanceOf } from '#practice/chance.ts';
import { at } from '#geometry/point.ts';
import {
	backward,
	equations,
	homographyOf,
	normalising,
	seenAt,
	sheetAt,
	type Homography,
	type Sighting
} from '#photograph/homography.ts';

type Four = readonly (readonly [number, number])[];

const sightings = (from: Four, to: Four): readonly Sighting[] =>
	from.map(([x, y], i) => ({ sheet: at(x, y), picture: { u: to[i]?.[0] ?? NaN, v: to[i]?.[1] ?? NaN } }));

const found = (from: Four, to: Four): Homography => {
	const h = homographyOf(sightings(from, to));
	if (!h) throw new Error('no homography');
	return h;
};

/** Only their ratios matter: the last is made one. */
const scaled = (h: Homography): readonly number[] => h.map((each) => each / h[8]);

const nine = ([a, b, c, d, e, f, g, h, i]: readonly number[]): Homography => {
	const numbers = [a, b, c, d, e, f, g, h, i].map((each) => each ?? NaN);
	return numbers as [number, number, number, number, number, number, number, number, number];
};

/** A general library's parts of the equations; a row of nothing makes them as many as there are numbers. */
const partsOf = (all: readonly Sighting[]): SingularValueDecomposition =>
	new SingularValueDecomposition(
		new Matrix([...equations(all).map((row) => [...row]), new Array<number>(9).fill(0)])
	);

/** The homography that a general library's singular value decomposition finds in the equations as they are. */
const byLibrary = (all: readonly Sighting[]): Homography =>
	nine(partsOf(all).rightSingularVectors.getColumn(8));

describe('the homography of', () => {
	it('the unit square, exactly', () => {
		// Exact by hand: see that (0,0) goes to (2/1, ...) of rows (0 2 1), (2 0 2), (0 0 1).
		const h = found(
			[
				[0, 0],
				[1, 0],
				[1, 1],
				[0, 1]
			],
			[
				[1, 2],
				[1, 4],
				[3, 4],
				[3, 2]
			]
		);
		for (const [i, each] of [0, 2, 1, 2, 0, 2, 0, 0, 1].entries()) expect(scaled(h)[i]).toBeCloseTo(each, 12);
	});

	// H = [[4, 1/5, 300], [1/10, 19/5, 250], [1/10000, 1/5000, 1]], from millimetres to pixels, worked in fractions.
	const RATIONAL: Homography = [4, 1 / 5, 300, 1 / 10, 19 / 5, 250, 1 / 10000, 1 / 5000, 1];
	const corners: Four = [
		[0, 0],
		[600, 0],
		[600, 900],
		[0, 900]
	];
	const seen: Four = [
		[300, 250],
		[135000 / 53, 15500 / 53],
		[72000 / 31, 93250 / 31],
		[24000 / 59, 183500 / 59]
	];

	it('a sheet of 600 by 900 mm, in fractions', () => {
		const h = found(corners, seen);
		for (const [i, each] of RATIONAL.entries()) expect((scaled(h)[i] ?? 0) / each).toBeCloseTo(1, 10);
		const checks = [
			[300, 450, 19875 / 14, 24875 / 14],
			[150, 600, 204000 / 227, 509000 / 227]
		] as const;
		for (const [x, y, u, v] of checks) {
			const place = seenAt(h, at(x, y));
			expect(place.u).toBeCloseTo(u, 8);
			expect(place.v).toBeCloseTo(v, 8);
			const back = sheetAt(backward(h), place);
			expect(back.x).toBeCloseTo(x, 8);
			expect(back.y).toBeCloseTo(y, 8);
		}
	});

	it('the published example of the package perspective-transform', () => {
		// Its README; it rounds its coefficients, so that its own numbers hold to 1e-4.
		const h = found(
			[
				[158, 64],
				[494, 69],
				[495, 404],
				[158, 404]
			],
			[
				[100, 500],
				[152, 564],
				[148, 604],
				[100, 560]
			]
		);
		const there = seenAt(h, at(250, 120));
		expect(there.u).toBeCloseTo(117.27521125839255, 3);
		expect(there.v).toBeCloseTo(530.9202410878403, 3);
		const back = sheetAt(backward(h), { u: 130, v: 570 });
		expect(back.x).toBeCloseTo(338.99465637447327, 3);
		expect(back.y).toBeCloseTo(278.6450957956236, 3);
	});

	it('many places with noise, as a general library finds it', () => {
		const chance = chanceOf(1, 'homography');
		for (let n = 0; n < 20; n++) {
			const all = Array.from({ length: 4 + n }, () => {
				const sheet = at(chance.fraction() * 600, chance.fraction() * 900);
				const { u, v } = seenAt(RATIONAL, sheet);
				return { sheet, picture: { u: u + chance.normal(), v: v + chance.normal() } };
			});
			const h = homographyOf(all);
			if (!h) throw new Error('no homography');
			// The library's is of the same equations in normalised numbers; it is brought back by its own matrices.
			const s = normalising(all.map(({ sheet }) => [sheet.x, sheet.y]));
			const p = normalising(all.map(({ picture }) => [picture.u, picture.v]));
			const near = all.map(({ sheet, picture }) => {
				const { u: x, v: y } = seenAt(s, sheet);
				return { sheet: at(x, y), picture: seenAt(p, at(picture.u, picture.v)) };
			});
			const rows = (each: readonly number[]): Matrix =>
				new Matrix([each.slice(0, 3), each.slice(3, 6), each.slice(6, 9)]);
			const theirs = nine(
				inverse(rows(p))
					.mmul(rows(byLibrary(near)))
					.mmul(rows(s))
					.to1DArray()
			);
			for (const { sheet } of all) {
				const [ours, other] = [seenAt(h, sheet), seenAt(theirs, sheet)];
				expect(Math.hypot(ours.u - other.u, ours.v - other.v)).toBeLessThan(1e-6);
			}
		}
	});

	it('places whose numbers are large, better than without the normalisation', () => {
		// How unlike the equations' directions are stretched, published for this sheet: 3.5 with it and 4.9e6 without.
		const plain = sightings(corners, seen);
		const s = normalising(corners);
		const p = normalising(seen);
		const near = plain.map(({ sheet, picture }) => {
			const { u, v } = seenAt(s, sheet);
			return { sheet: at(u, v), picture: seenAt(p, at(picture.u, picture.v)) };
		});
		const ratio = (all: readonly Sighting[]): number => {
			const { diagonal } = partsOf(all);
			return (diagonal[0] ?? NaN) / (diagonal[7] ?? NaN);
		};
		expect(ratio(near)).toBeCloseTo(3.5, 0);
		expect(ratio(plain)).toBeGreaterThan(4e6);
		const error = (h: Homography): number => {
			const { u, v } = seenAt(h, at(300, 450));
			return Math.hypot(u - 19875 / 14, v - 24875 / 14);
		};
		const without = byLibrary(plain);
		expect(error(found(corners, seen))).toBeLessThan(1e-10);
		expect(error(without)).toBeGreaterThan(20 * error(found(corners, seen)));
	});

	it('too little is none: three places, four in a row, four of which three are in a row', () => {
		expect(homographyOf(sightings(corners.slice(0, 3), seen.slice(0, 3)))).toBeUndefined();
		const row: Four = [
			[0, 0],
			[100, 0],
			[200, 0],
			[300, 0]
		];
		expect(homographyOf(sightings(row, row))).toBeUndefined();
		const three: Four = [...row.slice(0, 3), [150, 400]];
		expect(homographyOf(sightings(three, three))).toBeUndefined();
	});
});
