import { describe, expect, it } from 'vitest';
import { greatestDistance, nearestOnPath } from '#geometry/apart.ts';
import { cornerCurve } from '#geometry/corner-curve.ts';
import { pathReversed, polyline, type Path } from '#geometry/path.ts';
import { at, distance, type SheetPoint } from '#geometry/point.ts';
import { cubic, segmentPoint } from '#geometry/segment.ts';
import { expectPlace } from './close.ts';

/** Down 10, then across 20. */
const ANGLE = polyline(at(0, 0), at(0, 10), at(20, 10));

/** A quarter of a circle about (0, 0), from across to down. */
const quarter = (radius: number): Path => [
	cornerCurve(
		{ point: at(radius, 0), heading: { dx: 0, dy: 1 } },
		{ point: at(0, radius), heading: { dx: -1, dy: 0 } }
	)
];

describe('nearestOnPath', () => {
	it('is the foot of the square line, or an end', () => {
		expectPlace(nearestOnPath(ANGLE, at(3, 4)), 0, 4);
		expectPlace(nearestOnPath(ANGLE, at(9, 6)), 9, 10);
		expectPlace(nearestOnPath(ANGLE, at(26, 18)), 20, 10);
		expectPlace(nearestOnPath(ANGLE, at(-1, -5)), 0, 0);
	});

	it('of a place on the path is that place', () => {
		expectPlace(nearestOnPath(ANGLE, at(7, 10)), 7, 10);
	});

	it('on a curve is as near as any of 100,000 places on it, within a hundredth', () => {
		const path = quarter(60);
		const place = at(40, 37);
		const places = Array.from({ length: 100_001 }, (_, i) => segmentPoint(path[0], i / 100_000));
		const least = Math.min(...places.map((each) => distance(each, place)));
		const found = distance(nearestOnPath(path, place), place);
		expect(least).toBeGreaterThan(5);
		expect(Math.abs(found - least)).toBeLessThan(0.01);
	});

	it('of a path that is one place is that place', () => {
		expectPlace(nearestOnPath(polyline(at(5, 6), at(5, 6)), at(1, 1)), 5, 6);
	});
});

describe('greatestDistance', () => {
	it('of a path from itself is nothing, run either way', () => {
		expect(greatestDistance(ANGLE, ANGLE).away).toBe(0);
		expect(greatestDistance(quarter(50), pathReversed(quarter(50))).away).toBeCloseTo(0, 6);
	});

	it('sees a path that stops short as well as one that strays', () => {
		const short = polyline(at(0, 0), at(10, 0));
		const long = polyline(at(0, 0), at(17, 0));
		for (const [first, second] of [
			[short, long],
			[long, short]
		] as const) {
			expect(greatestDistance(first, second).away).toBe(7);
		}
	});

	it('says where: the first place on the first path, the second on the second', () => {
		const { away, on, nearest } = greatestDistance(
			polyline(at(0, 0), at(10, 0)),
			polyline(at(0, 0), at(17, 0))
		);
		expect(away).toBe(7);
		expectPlace(on, 10, 0);
		expectPlace(nearest, 17, 0);
	});

	it('between two circles about one middle is the difference of their radii', () => {
		expect(greatestDistance(quarter(53), quarter(50)).away).toBeCloseTo(3, 1);
	});

	it('of bent lines is that of all their places tried against all', () => {
		const bend = (lift: number): Path => [
			cubic(at(0, 0), at(30, lift), at(50, 60), at(80, 10)),
			cubic(at(80, 10), at(90, -lift), at(120, 40), at(140, 5))
		];
		const places = (path: Path): SheetPoint[] =>
			path.flatMap((segment) => Array.from({ length: 301 }, (_, i) => segmentPoint(segment, i / 300)));
		for (const lift of [-70, -10, 35, 90]) {
			const [a, b] = [places(bend(20)), places(bend(lift))];
			const from = (one: SheetPoint[], other: SheetPoint[]): number =>
				Math.max(...one.map((place) => Math.min(...other.map((each) => distance(place, each)))));
			const all = Math.max(from(a, b), from(b, a));
			const { away, on, nearest } = greatestDistance(bend(20), bend(lift));
			expect(Math.abs(away - all)).toBeLessThan(0.1);
			expect(distance(on, nearest)).toBeCloseTo(away, 9);
			expect(Math.min(...a.map((place) => distance(place, on)))).toBeLessThan(0.1);
		}
	});
});
