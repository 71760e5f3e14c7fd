import { describe, expect, it } from 'vitest';
import { enclosedArea } from '#geometry/area.ts';
import { followedBy, mirroring, movedBy, pathMovedBy, REST, shifting, turning } from '#geometry/motion.ts';
import { pathLength, polyline, type Path } from '#geometry/path.ts';
import { at, distance } from '#geometry/point.ts';
import { cubic, straight } from '#geometry/segment.ts';
import { radians } from '#shared/units.ts';
import { expectPlace } from './close.ts';

const QUARTER = radians(Math.PI / 2);
/** A corner with a curve. */
const LINE: Path = [straight(at(1, 2), at(4, 6)), cubic(at(4, 6), at(7, 10), at(11, 9), at(12, 3))];

describe('turning', () => {
	it('by a positive quarter takes x to y about a place, which stays', () => {
		expectPlace(movedBy(turning(at(3, 4), QUARTER), at(8, 4)), 3, 9);
		expectPlace(movedBy(turning(at(3, 4), QUARTER), at(3, 6)), 1, 4);
		expectPlace(movedBy(turning(at(3, 4), QUARTER), at(3, 4)), 3, 4);
	});

	it('by the angle of a 3-4-5 triangle', () => {
		const turn = turning(at(0, 0), radians(Math.atan2(3, 4)));
		expectPlace(movedBy(turn, at(10, 0)), 8, 6);
		expectPlace(movedBy(turn, at(0, 10)), -6, 8);
	});

	it('there and back is rest', () => {
		const turn = turning(at(70, -20), radians(0.7));
		const back = turning(at(70, -20), radians(-0.7));
		expectPlace(movedBy(followedBy(turn, back), at(11, 13)), 11, 13);
	});
});

describe('shifting and mirroring', () => {
	it('a shift takes one place to the other, and all else along', () => {
		const shift = shifting(at(1, 2), at(4, 9));
		expectPlace(movedBy(shift, at(1, 2)), 4, 9);
		expectPlace(movedBy(shift, at(10, 20)), 13, 27);
	});

	it('a mirroring on a level, on a slope of one, and on a slope of 3 to 4', () => {
		expectPlace(movedBy(mirroring(at(-3, 5), at(8, 5)), at(2, 1)), 2, 9);
		expectPlace(movedBy(mirroring(at(1, 1), at(4, 4)), at(3, 7)), 7, 3);
		expectPlace(movedBy(mirroring(at(0, 0), at(4, 3)), at(25, 0)), 7, 24);
		expectPlace(movedBy(mirroring(at(10, 2), at(18, 8)), at(35, 2)), 17, 26);
	});

	it('twice is rest, and turns an outline the other way round', () => {
		const mirror = mirroring(at(5, 1), at(2, 8));
		expectPlace(movedBy(followedBy(mirror, mirror), at(9, 4)), 9, 4);
		const triangle = polyline(at(0, 0), at(6, 0), at(6, 4), at(0, 0));
		expect(enclosedArea(triangle)).toBeCloseTo(12, 12);
		expect(enclosedArea(pathMovedBy(mirror, triangle))).toBeCloseTo(-12, 9);
	});
});

describe('followedBy', () => {
	it('goes in order: a quarter about (0, 0) and 10 across is not 10 across and a quarter', () => {
		const [turn, shift] = [turning(at(0, 0), QUARTER), shifting(at(0, 0), at(10, 0))];
		expectPlace(movedBy(followedBy(turn, shift), at(3, 0)), 10, 3);
		expectPlace(movedBy(followedBy(shift, turn), at(3, 0)), 0, 13);
	});

	it('is what both do one after the other', () => {
		const [first, second] = [turning(at(4, 9), radians(1.1)), mirroring(at(0, 3), at(5, 4))];
		const { x, y } = movedBy(second, movedBy(first, at(17, -6)));
		expectPlace(movedBy(followedBy(first, second), at(17, -6)), x, y);
		expect(followedBy(REST, first)).toEqual(first);
		expect(followedBy(first, REST)).toEqual(first);
	});
});

describe('pathMovedBy', () => {
	it('keeps lengths and kinds', () => {
		const moved = pathMovedBy(
			followedBy(turning(at(9, 9), radians(2)), shifting(at(0, 0), at(-30, 5))),
			LINE
		);
		expect(moved.map(({ kind }) => kind)).toEqual(['straight', 'cubic']);
		expect(distance(moved[0].from, moved[0].to)).toBeCloseTo(5, 12);
		expect(pathLength(moved)).toBeCloseTo(pathLength(LINE), 6);
	});

	it('takes every handle along', () => {
		const moved = pathMovedBy(shifting(at(0, 0), at(100, 200)), LINE);
		expect(moved[1]).toEqual(cubic(at(104, 206), at(107, 210), at(111, 209), at(112, 203)));
		expect(pathMovedBy(REST, LINE)).toEqual(LINE);
	});
});
