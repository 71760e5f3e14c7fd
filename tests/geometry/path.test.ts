import { describe, expect, it } from 'vitest';
import {
	boundsOf,
	endDirection,
	chained,
	pathData,
	pathEnd,
	pathLength,
	pathReversed,
	pathSamples,
	pathStart,
	pointAtLength,
	polyline,
	startDirection,
	type Path
} from '#geometry/path.ts';
import { at, distance } from '#geometry/point.ts';
import { cubic, straight } from '#geometry/segment.ts';
import { mm } from '#shared/units.ts';
import { expectDirection, expectPlace } from './close.ts';

/** (0, 0) across 3 down 4, then across 12 down 5: 5 + 13 = 18 long. */
const BENT = polyline(at(0, 0), at(3, 4), at(15, 9));
/** The same, then an arch from (15, 9) to (25, 9) that reaches down to 16.5. */
const LONG: Path = [...BENT, cubic(at(15, 9), at(15, 19), at(25, 19), at(25, 9))];
const LOPSIDED: Path = [cubic(at(0, 0), at(1, 0), at(60, 40), at(61, 0))];

describe('ends', () => {
	it('start, end and the directions there', () => {
		expect(pathStart(LONG)).toEqual(at(0, 0));
		expect(pathEnd(LONG)).toEqual(at(25, 9));
		expectDirection(startDirection(LONG), 3, 4);
		expectDirection(endDirection(LONG), 0, -1);
		expectDirection(endDirection(BENT), 12, 5);
	});

	it('a path of no length has no direction', () => {
		const spot = polyline(at(2, 2), at(2, 2));
		expect(startDirection(spot)).toBeUndefined();
		expect(endDirection(spot)).toBeUndefined();
	});
});

describe('length', () => {
	it('adds up the pieces', () => {
		expect(pathLength(BENT)).toBe(18);
		expect(pathLength(polyline(at(1, 1), at(1, 1)))).toBe(0);
	});

	it('is the same backward, and backward twice is as before', () => {
		expect(pathLength(pathReversed(LONG))).toBeCloseTo(pathLength(LONG), 9);
		expect(pathReversed(BENT)).toEqual(polyline(at(15, 9), at(3, 4), at(0, 0)));
		expect(pathReversed(pathReversed(LONG))).toEqual(LONG);
	});
});

describe('pointAtLength', () => {
	it('goes along each piece in turn', () => {
		expectPlace(pointAtLength(BENT, mm(0)), 0, 0);
		expectPlace(pointAtLength(BENT, mm(2.5)), 1.5, 2);
		expectPlace(pointAtLength(BENT, mm(5)), 3, 4);
		expectPlace(pointAtLength(BENT, mm(11.5)), 9, 6.5);
		expectPlace(pointAtLength(BENT, mm(18)), 15, 9);
	});

	it('there is nothing before the start or beyond the end', () => {
		expect(pointAtLength(BENT, mm(-0.01))).toBeUndefined();
		expect(pointAtLength(BENT, mm(18.01))).toBeUndefined();
	});

	it('reaches the end of a curve at its own whole length, whatever the last digit', () => {
		for (let width = 10; width < 60; width++) {
			const path: Path = [
				cubic(at(0, 0), at(width, 3), at(7, 11), at(13, 29)),
				cubic(at(13, 29), at(17, width), at(31, 5), at(37, 2))
			];
			expectPlace(pointAtLength(path, pathLength(path)), 37, 2);
		}
	});

	it('half of an even curve is its top', () => {
		expectPlace(pointAtLength(LONG, mm(18 + (pathLength(LONG) - 18) / 2)), 20, 16.5, 6);
	});
});

describe('pathSamples', () => {
	it('gives only the ends of straight pieces', () => {
		expect(pathSamples(BENT, mm(1))).toEqual([at(0, 0), at(3, 4), at(15, 9)]);
	});

	it('lie on curves no further apart than the step, however uneven the handles', () => {
		const samples = pathSamples(LOPSIDED, mm(2));
		const steps = samples.slice(1).map((place, i) => distance(place, samples[i] ?? place));
		expect(Math.max(...steps)).toBeLessThanOrEqual(2);
		expect(Math.max(...steps)).toBeGreaterThan(1);
		expect(samples.at(-1)).toEqual(at(61, 0));
	});

	it('a curve of no size still gives its ends', () => {
		const dot = at(3, 3);
		expect(pathSamples([cubic(dot, dot, dot, dot)], mm(1))).toEqual([dot, dot]);
	});
});

describe('boundsOf', () => {
	it('holds paths, their bends, and lone places', () => {
		expect(boundsOf([LONG], [at(-2, 7)])).toEqual({ left: -2, top: 0, right: 25, bottom: 16.5 });
		expect(boundsOf([], [at(4, 6)])).toEqual({ left: 4, top: 6, right: 4, bottom: 6 });
	});

	it('nothing has none', () => {
		expect(() => boundsOf([])).toThrow('nothing has no bounds');
	});
});

describe('chained', () => {
	const onward = polyline(at(15, 9), at(15, 20));

	it('sets one path after the other, each turned round where it must be', () => {
		const whole = polyline(at(0, 0), at(3, 4), at(15, 9), at(15, 20));
		expect(chained([BENT, onward])).toEqual(whole);
		expect(chained([BENT, pathReversed(onward)])).toEqual(whole);
		expect(chained([pathReversed(BENT), onward])).toEqual(whole);
	});

	it('gives nothing for a gap, and for no line at all', () => {
		expect(chained([BENT, polyline(at(18, 13), at(20, 20))])).toBeUndefined();
		expect(chained([])).toBeUndefined();
	});
});

describe('pathData', () => {
	it('writes straight and curved pieces', () => {
		expect(pathData(LONG)).toBe('M0 0L3 4L15 9C15 19 25 19 25 9');
		expect(pathData(BENT, 3, true)).toBe('M0 0L3 4L15 9Z');
	});

	it('rounds to its digits, and never writes a negative nought', () => {
		const path: Path = [straight(at(1 / 3, -0.0004), at(-2 / 3, 0.12345678))];
		expect(pathData(path)).toBe('M0.333 0L-0.667 0.123');
		expect(pathData(path, 6)).toBe('M0.333333 -0.0004L-0.666667 0.123457');
	});
});

describe('samples of a very long curve', () => {
	const long: Path = [cubic(at(0, 0), at(5000, 0), at(-5000, 4000), at(100, 100))];

	it('are no more than was asked for, and still end where it ends', () => {
		const samples = pathSamples(long, mm(1), 500);
		expect(samples.length).toBeGreaterThan(400);
		expect(samples.length).toBeLessThanOrEqual(501);
		expect(samples.at(-1)).toEqual(at(100, 100));
	});

	it('are as fine as the step where there are not so many', () => {
		expect(pathSamples(long, mm(1))).toHaveLength(pathSamples(long, mm(1), 1e9).length);
		expect(pathSamples(long, mm(1)).length).toBeGreaterThan(10_000);
	});
});
