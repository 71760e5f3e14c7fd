import { describe, expect, it } from 'vitest';
import { at } from '#geometry/point.ts';
import {
	cubic,
	parameterAtLength,
	segmentDirection,
	segmentExtremes,
	segmentLength,
	segmentPoint,
	segmentReversed,
	straight
} from '#geometry/segment.ts';
import { mm } from '#shared/units.ts';
import { expectDirection, expectPlace } from './close.ts';

/** From (1, 2) to (7, 10): 6 across, 8 down, 10 long. */
const RULER = straight(at(1, 2), at(7, 10));
/** An arch 10 wide and 7.5 high. */
const ARCH = cubic(at(0, 0), at(0, 10), at(10, 10), at(10, 0));
/** Comes to a stop at its middle (50, 75); half a length of 100 (2 sqrt 2 - 1) by hand. */
const CUSP = cubic(at(0, 0), at(100, 100), at(0, 100), at(100, 0));
const SPOT = straight(at(4, 5), at(4, 5));

describe('segmentPoint', () => {
	it('runs from end to end', () => {
		expectPlace(segmentPoint(RULER, 0.25), 2.5, 4);
		expectPlace(segmentPoint(ARCH, 0), 0, 0);
		expectPlace(segmentPoint(ARCH, 1), 10, 0);
		expectPlace(segmentPoint(ARCH, 0.5), 5, 7.5);
		expectPlace(segmentPoint(ARCH, 0.25), 1.5625, 5.625);
	});
});

describe('segmentLength', () => {
	it('of a straight piece, and of a share of it', () => {
		expect(segmentLength(RULER)).toBe(10);
		expect(segmentLength(RULER, 0.3)).toBeCloseTo(3, 12);
		expect(segmentLength(SPOT)).toBe(0);
	});

	it('of a cubic that lies on a straight line', () => {
		expect(segmentLength(cubic(at(1, 2), at(3, 2), at(6, 2), at(13, 2)))).toBeCloseTo(12, 6);
	});

	it('of a cubic that runs out and back: 0 to 8 and back to 0 turns at 6', () => {
		expect(segmentLength(cubic(at(0, 0), at(8, 0), at(8, 0), at(0, 0)))).toBeCloseTo(12, 6);
	});

	it('of a cubic with a cusp', () => {
		const whole = 100 * (2 * Math.SQRT2 - 1);
		expect(Math.abs(segmentLength(CUSP) - whole)).toBeLessThan(1e-6);
		expect(Math.abs(segmentLength(CUSP, 0.5) - whole / 2)).toBeLessThan(1e-6);
	});

	it('of a cubic of no size', () => {
		expect(segmentLength(cubic(at(3, 3), at(3, 3), at(3, 3), at(3, 3)))).toBe(0);
	});
});

describe('parameterAtLength', () => {
	it('undoes segmentLength', () => {
		expect(parameterAtLength(RULER, mm(4))).toBeCloseTo(0.4, 12);
		for (const t of [0.05, 0.31, 0.5, 0.93]) {
			expect(parameterAtLength(ARCH, segmentLength(ARCH, t))).toBeCloseTo(t, 8);
		}
	});

	it('is the middle for half of an even curve, and the start where there is no length', () => {
		expect(parameterAtLength(ARCH, mm(segmentLength(ARCH) / 2))).toBeCloseTo(0.5, 9);
		expect(parameterAtLength(SPOT, mm(0))).toBe(0);
	});
});

describe('segmentDirection', () => {
	it('follows the handles at the ends and the run between', () => {
		expectDirection(segmentDirection(RULER, 0.7), 3, 4);
		expectDirection(segmentDirection(ARCH, 0), 0, 1);
		expectDirection(segmentDirection(ARCH, 0.5), 1, 0);
		expectDirection(segmentDirection(ARCH, 1), 0, -1);
	});

	it('takes the next handle where one lies on its own end', () => {
		const leavesLate = cubic(at(1, 1), at(1, 1), at(4, 5), at(9, 5));
		expectDirection(segmentDirection(leavesLate, 0), 3, 4);
		const arrivesEarly = cubic(at(1, 1), at(4, 5), at(9, 17), at(9, 17));
		expectDirection(segmentDirection(arrivesEarly, 1), 5, 12);
		const bare = cubic(at(1, 1), at(1, 1), at(4, 5), at(4, 5));
		expectDirection(segmentDirection(bare, 0), 3, 4);
		expectDirection(segmentDirection(bare, 1), 3, 4);
	});

	it('there is none on the spot, nor at the tip of a cusp', () => {
		expect(segmentDirection(SPOT, 0.5)).toBeUndefined();
		expect(segmentDirection(CUSP, 0.5)).toBeUndefined();
	});
});

describe('segmentReversed', () => {
	it('runs the same way backward, and twice is as before', () => {
		expect(segmentReversed(RULER)).toEqual(straight(at(7, 10), at(1, 2)));
		const lopsided = cubic(at(1, 2), at(3, 4), at(5, 6), at(7, 8));
		expect(segmentReversed(lopsided)).toEqual(cubic(at(7, 8), at(5, 6), at(3, 4), at(1, 2)));
		expect(segmentReversed(segmentReversed(lopsided))).toEqual(lopsided);
	});
});

describe('segmentExtremes', () => {
	it('of a straight piece are its ends', () => {
		expect(segmentExtremes(RULER)).toEqual([at(1, 2), at(7, 10)]);
	});

	it('of an arch (whose turn is that of a parabola) hold its top', () => {
		expect(Math.max(...segmentExtremes(ARCH).map(({ y }) => y))).toBeCloseTo(7.5, 12);
	});

	it('of a double bend hold both turns: x = 90 t (1 - t) (1 - 2t) turns at 5 sqrt 3 either way', () => {
		const places = segmentExtremes(cubic(at(0, 0), at(30, 1), at(-30, 2), at(0, 3))).map(({ x }) => x);
		expect(Math.max(...places)).toBeCloseTo(5 * Math.sqrt(3), 9);
		expect(Math.min(...places)).toBeCloseTo(-5 * Math.sqrt(3), 9);
	});
});
