import { describe, expect, it } from 'vitest';
import { mm } from '#shared/units.ts';
import { greatestDistance } from '#geometry/apart.ts';
import { flattened, flattenedParts } from '#geometry/flatten.ts';
import { polyline, type Path } from '#geometry/path.ts';
import { at, distance, type SheetPoint } from '#geometry/point.ts';
import { cubic, segmentPoint, straight } from '#geometry/segment.ts';

const CURVE = cubic(at(0, 0), at(10, 80), at(60, 120), at(200, 110));
const asPath = ([first, second, ...rest]: readonly SheetPoint[]): Path => {
	if (!first || !second) throw new Error('no chords');
	return polyline(first, second, ...rest);
};

/** How many points an even division of the parameter needs for the same error. */
const evenly = (within: number): number => {
	for (let parts = 1; ; parts++) {
		const places = Array.from({ length: parts + 1 }, (_, i) => segmentPoint(CURVE, i / parts));
		if (greatestDistance([CURVE], asPath(places)).away <= within) return places.length;
	}
};

describe('flattened', () => {
	it.each([0.5, 0.05, 0.01])('stays within %d mm of the curve', (within) => {
		const places = flattened([CURVE], mm(within));
		// Sampled each millimetre, a path is known within 0.0025 mm.
		expect(greatestDistance([CURVE], asPath(places)).away).toBeLessThanOrEqual(within + 0.0025);
	});

	it('has no more points than an even division with the same error', () => {
		expect(flattened([CURVE], mm(0.05)).length).toBeLessThanOrEqual(evenly(0.05));
	});

	it('a quarter circle of 100 mm: a chord may span 2 acos(1 - 0.05 / 100), closed form', () => {
		const share = 0.5522847498;
		const quarter = cubic(at(100, 0), at(100, 100 * share), at(100 * share, 100), at(0, 100));
		const chords = Math.PI / 2 / (2 * Math.acos(1 - 0.05 / 100));
		expect(flattened([quarter], mm(0.05)).length - 1).toBe(Math.ceil(chords));
	});

	it('keeps corners and the ends of straight parts exactly', () => {
		const path: Path = [
			straight(at(0, 0), at(30, 0)),
			straight(at(30, 0), at(30, 40)),
			cubic(at(30, 40), at(30, 50), at(20, 60), at(0, 60))
		];
		const places = flattened(path, mm(0.05));
		expect(places.slice(0, 3)).toEqual([at(0, 0), at(30, 0), at(30, 40)]);
		expect(places.at(-1)).toEqual(at(0, 60));
	});

	it('a smooth join needs no point of its own: a half circle takes as many chords as if it were one curve', () => {
		const share = 0.5522847498;
		const half: Path = [
			cubic(at(100, 0), at(100, 100 * share), at(100 * share, 100), at(0, 100)),
			cubic(at(0, 100), at(-100 * share, 100), at(-100, 100 * share), at(-100, 0))
		];
		const chords = Math.PI / (2 * Math.acos(1 - 0.04 / 100));
		expect(flattened(half, mm(0.04)).length - 1).toBe(Math.ceil(chords));
		expect(flattenedParts(half, mm(0.04))).toHaveLength(1);
	});

	it('a corner between two curves is kept', () => {
		const lens: Path = [
			cubic(at(0, 0), at(40, 60), at(160, 60), at(200, 0)),
			cubic(at(200, 0), at(160, -60), at(40, -60), at(0, 0))
		];
		expect(flattened(lens, mm(0.5))).toContainEqual(at(200, 0));
		expect(flattenedParts(lens, mm(0.5))).toHaveLength(2);
	});

	it('a curve that begins and ends at one place is still followed', () => {
		const loop = cubic(at(0, 0), at(80, 60), at(-80, 60), at(0, 0));
		const places = flattened([loop], mm(0.05));
		expect(Math.max(...places.map((place) => distance(place, at(0, 0))))).toBeGreaterThan(40);
	});
});
