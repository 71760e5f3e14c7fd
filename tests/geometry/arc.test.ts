import { describe, expect, it } from 'vitest';
import { arcPath } from '#geometry/arc.ts';
import { endDirection, pathEnd, pathLength, pathStart, startDirection } from '#geometry/path.ts';
import { angleBetween, at, directionTo, distance, type SheetPoint } from '#geometry/point.ts';
import { segmentPoint } from '#geometry/segment.ts';
import { radians } from '#shared/units.ts';
import { expectDirection, expectPlace } from './close.ts';

const CENTRE = at(40, -70);
const degrees = (value: number) => radians((value * Math.PI) / 180);

/** How far a place lies from a circle about CENTRE. */
const stray = (place: SheetPoint, radius: number): number => Math.abs(distance(CENTRE, place) - radius);

describe('arcPath', () => {
	it('of a positive quarter goes from x to y', () => {
		const arc = arcPath(CENTRE, at(140, -70), degrees(90));
		expectPlace(pathStart(arc), 140, -70);
		expectPlace(pathEnd(arc), 40, 30);
		expectDirection(startDirection(arc), 0, 1);
		expectDirection(endDirection(arc), -1, 0);
	});

	it('of a negative third goes the other way', () => {
		const arc = arcPath(CENTRE, at(40, -60), degrees(-120));
		expectPlace(pathEnd(arc), 40 + 10 * Math.cos(Math.PI / 6), -70 - 5);
		expectDirection(startDirection(arc), 1, 0);
	});

	it('stays within 0.0001 mm of a circle of a metre, at any angle', () => {
		for (const angle of [1, 17, 29, 44, 45, 46, 90, 133, 180, 271, 360, -75, -359]) {
			const arc = arcPath(CENTRE, at(40 + 600, -70 + 800), degrees(angle));
			const strays = arc.flatMap((segment) =>
				Array.from({ length: 401 }, (_, i) => stray(segmentPoint(segment, i / 400), 1000))
			);
			expect(Math.max(...strays), `${angle} degrees`).toBeLessThan(1e-4);
		}
	});

	it('is made of equal cubics of no more than 30 degrees, and of no more of them than it takes', () => {
		const arc = arcPath(CENTRE, at(140, -70), degrees(90));
		expect(arc).toHaveLength(4);
		for (const { from, to } of arc) {
			const [a, b] = [directionTo(CENTRE, from), directionTo(CENTRE, to)];
			expect(a && b && angleBetween(a, b)).toBeCloseTo(Math.PI / 8, 12);
		}
		expect(arcPath(CENTRE, at(140, -70), degrees(22))).toHaveLength(1);
		expect(arcPath(CENTRE, at(140, -70), degrees(23))).toHaveLength(2);
	});

	it('is as long as its radius times its angle', () => {
		for (const angle of [10, 80, 222, 360, 400]) {
			const length = pathLength(arcPath(CENTRE, at(40, 230), degrees(angle)));
			expect(Math.abs(length - (300 * angle * Math.PI) / 180)).toBeLessThan(1e-4);
		}
	});

	it('comes back to its start after a whole turn', () => {
		expectPlace(pathEnd(arcPath(CENTRE, at(47, -11), degrees(360))), 47, -11);
	});

	it('of no radius or no angle is a straight piece of no length', () => {
		expect(pathLength(arcPath(CENTRE, CENTRE, degrees(50)))).toBe(0);
		const still = arcPath(CENTRE, at(50, -70), degrees(0));
		expectPlace(pathEnd(still), 50, -70);
		expect(pathLength(still)).toBe(0);
	});
});
