import { describe, expect, it } from 'vitest';
import { arcPath } from '#geometry/arc.ts';
import { enclosedArea, isClockwise } from '#geometry/area.ts';
import { followedBy, pathMovedBy, shifting, turning } from '#geometry/motion.ts';
import { pathReversed, polyline, type Path } from '#geometry/path.ts';
import { at } from '#geometry/point.ts';
import { cubic, segmentPoint, straight } from '#geometry/segment.ts';
import { radians } from '#shared/units.ts';

/** 7 across and 5 down, run across, down and back: clockwise as seen. */
const SHEET = polyline(at(2, 3), at(9, 3), at(9, 8), at(2, 8), at(2, 3));
/** An arch 10 wide over its chord: y = 30 t (1 - t), x = 30 t² - 20 t³, so its area is 1800 times the integral of t² (1 - t)², 60. */
const ARCH: Path = [cubic(at(0, 0), at(0, 10), at(10, 10), at(10, 0))];
/** An outline with a straight piece and two curves, one of them an S. */
const LEAF: Path = [
	straight(at(120, 40), at(180, 90)),
	cubic(at(180, 90), at(300, 160), at(60, 210), at(150, 260)),
	cubic(at(150, 260), at(90, 190), at(20, 130), at(120, 40))
];

describe('enclosedArea', () => {
	it('of a rectangle is its sides multiplied, positive when it runs clockwise as seen', () => {
		expect(enclosedArea(SHEET)).toBe(35);
		expect(enclosedArea(pathReversed(SHEET))).toBe(-35);
	});

	it('of a triangle is half of base times height, closed or not', () => {
		expect(enclosedArea(polyline(at(0, 0), at(12, 0), at(5, 9)))).toBe(54);
		expect(enclosedArea(polyline(at(0, 0), at(12, 0), at(5, 9), at(0, 0)))).toBe(54);
	});

	it('under an arch, by hand', () => {
		expect(enclosedArea(ARCH)).toBeCloseTo(-60, 12);
	});

	it('under the parabola y = 4 x (10 - x) / 25 is two thirds of the box around it', () => {
		const parabola: Path = [cubic(at(0, 0), at(10 / 3, 16 / 3), at(20 / 3, 16 / 3), at(10, 0))];
		expect(enclosedArea(parabola)).toBeCloseTo(-80 / 3, 11);
	});

	it('of a quarter of a circle, and of a whole one', () => {
		const quarter = arcPath(at(5, 6), at(205, 6), radians(Math.PI / 2));
		const slice: Path = [straight(at(5, 6), at(205, 6)), ...quarter];
		const exact = (Math.PI * 200 ** 2) / 4;
		expect(Math.abs(enclosedArea(slice) / exact - 1)).toBeLessThan(1e-7);
		const whole = arcPath(at(5, 6), at(205, 6), radians(-2 * Math.PI));
		expect(Math.abs(enclosedArea(whole) / (-4 * exact) - 1)).toBeLessThan(1e-7);
	});

	it('agrees with the polygon of 30,000 places on the outline', () => {
		const places = LEAF.flatMap((segment) =>
			Array.from({ length: 10_000 }, (_, i) => segmentPoint(segment, i / 10_000))
		);
		const twice = places.reduce((sum, p, i) => {
			const q = places[(i + 1) % places.length] ?? p;
			return sum + p.x * q.y - p.y * q.x;
		}, 0);
		expect(Math.abs(enclosedArea(LEAF) / (twice / 2) - 1)).toBeLessThan(1e-7);
	});

	it('is kept by a rigid motion to a billionth, even far off', () => {
		const area = enclosedArea(LEAF);
		for (const angle of [0.3, 1.9, -2.7]) {
			const motion = followedBy(turning(at(-400, 900), radians(angle)), shifting(at(0, 0), at(3000, -7000)));
			expect(Math.abs(enclosedArea(pathMovedBy(motion, LEAF)) / area - 1)).toBeLessThan(1e-9);
		}
	});

	it('of two halves of a crossed outline is their difference', () => {
		expect(enclosedArea(polyline(at(0, 0), at(10, 10), at(10, 0), at(0, 10), at(0, 0)))).toBe(0);
	});
});

describe('isClockwise', () => {
	it('says which way an outline runs as the sheet is seen, y down', () => {
		expect(isClockwise(SHEET)).toBe(true);
		expect(isClockwise(pathReversed(SHEET))).toBe(false);
		expect(isClockwise(ARCH)).toBe(false);
	});
});
