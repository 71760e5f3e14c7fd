import { describe, expect, it } from 'vitest';
import { at } from '#geometry/point.ts';
import { lineMeeting, swungToLevel } from '#geometry/rays.ts';
import { mm } from '#shared/units.ts';
import { expectPlace } from './close.ts';

const ACROSS = { dx: 1, dy: 0 };
const DOWN = { dx: 0, dy: 1 };

describe('lineMeeting', () => {
	it('gives the place and the way to it along each line', () => {
		const meeting = lineMeeting(at(1, 2), ACROSS, at(5, -1), DOWN);
		expectPlace(meeting?.point, 5, 2);
		expect(meeting?.alongFirst).toBe(4);
		expect(meeting?.alongSecond).toBe(3);
	});

	it('counts backward along a line as negative', () => {
		const meeting = lineMeeting(at(1, 2), ACROSS, at(-3, 9), DOWN);
		expectPlace(meeting?.point, -3, 2);
		expect(meeting?.alongFirst).toBe(-4);
		expect(meeting?.alongSecond).toBe(-7);
	});

	it('meets slanted lines: the foot of a square line in a 6-8-10 triangle', () => {
		const meeting = lineMeeting(at(0, 0), { dx: 0.6, dy: 0.8 }, at(10, 0), { dx: -0.8, dy: 0.6 });
		expectPlace(meeting?.point, 3.6, 4.8);
		expect(meeting?.alongFirst).toBeCloseTo(6, 9);
		expect(meeting?.alongSecond).toBeCloseTo(8, 9);
	});

	it('parallel lines do not meet, nor does a line with itself', () => {
		expect(lineMeeting(at(0, 0), ACROSS, at(0, 5), { dx: -1, dy: 0 })).toBeUndefined();
		expect(lineMeeting(at(0, 0), DOWN, at(0, 5), DOWN)).toBeUndefined();
	});
});

describe('swungToLevel', () => {
	it('finds both sides of a 5-12-13 triangle, below and above the centre', () => {
		expectPlace(swungToLevel(at(2, 1), mm(13), mm(6), 'outward'), 14, 6);
		expectPlace(swungToLevel(at(2, 1), mm(13), mm(6), 'inward'), -10, 6);
		expectPlace(swungToLevel(at(2, 1), mm(13), mm(-4), 'outward'), 14, -4);
	});

	it('just reaches a level as deep as it is long, and none beyond', () => {
		expectPlace(swungToLevel(at(2, 1), mm(5), mm(6), 'outward'), 2, 6);
		expect(swungToLevel(at(2, 1), mm(4.9), mm(6), 'outward')).toBeUndefined();
		expect(swungToLevel(at(2, 1), mm(4.9), mm(-4), 'inward')).toBeUndefined();
	});
});
