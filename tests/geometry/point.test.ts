import { describe, expect, it } from 'vitest';
import {
	alongness,
	angleBetween,
	at,
	between,
	directionOf,
	directionTo,
	distance,
	moved,
	opposite,
	squareTo,
	type Direction
} from '#geometry/point.ts';
import { mm } from '#shared/units.ts';
import { expectDirection, expectPlace } from './close.ts';

const direction = (dx: number, dy: number): Direction => {
	const found = directionOf(dx, dy);
	if (!found) throw new Error('no direction');
	return found;
};

describe('places', () => {
	it('at keeps across and down apart', () => {
		expect(at(3, 7)).toEqual({ x: 3, y: 7 });
	});

	it('distance is that of the right triangle, whichever way it is measured', () => {
		expect(distance(at(1, 2), at(4, 6))).toBe(5);
		expect(distance(at(4, 6), at(1, 2))).toBe(5);
		expect(distance(at(2, -9), at(2, -9))).toBe(0);
	});

	it('between takes a share of the way, and more than all of it', () => {
		expectPlace(between(at(2, 10), at(6, 2), 0.25), 3, 8);
		expectPlace(between(at(2, 10), at(6, 2), 1.5), 8, -2);
		expect(between(at(2, 10), at(6, 2), 0)).toEqual(at(2, 10));
	});

	it('moved goes along a direction, and back for a negative length', () => {
		expectPlace(moved(at(1, 1), direction(3, 4), mm(10)), 7, 9);
		expectPlace(moved(at(1, 1), direction(3, 4), mm(-5)), -2, -3);
	});
});

describe('directions', () => {
	it('have length one, whatever they came from', () => {
		expectDirection(directionOf(5, -12), 5, -12);
		expect(Math.hypot(direction(5, -12).dx, direction(5, -12).dy)).toBeCloseTo(1, 12);
		expectDirection(directionTo(at(2, 3), at(10, 9)), 4, 3);
	});

	it('there is none from a place to itself', () => {
		expect(directionOf(0, 0)).toBeUndefined();
		expect(directionTo(at(7, 2), at(7, 2))).toBeUndefined();
	});

	it('squareTo turns from across to down, and four turns come round', () => {
		expectDirection(squareTo(direction(1, 0)), 0, 1);
		expectDirection(squareTo(direction(3, 4)), -4, 3);
		expectDirection(squareTo(squareTo(squareTo(squareTo(direction(3, 4))))), 3, 4);
	});

	it('opposite undoes itself', () => {
		expectDirection(opposite(direction(3, -4)), -3, 4);
		expectDirection(opposite(opposite(direction(3, -4))), 3, -4);
	});

	it('alongness is 1 for the same, 0 for square, -1 for opposite', () => {
		expect(alongness(direction(3, 4), direction(6, 8))).toBeCloseTo(1, 12);
		expect(alongness(direction(3, 4), direction(-4, 3))).toBeCloseTo(0, 12);
		expect(alongness(direction(3, 4), direction(-3, -4))).toBeCloseTo(-1, 12);
		expect(alongness(direction(3, 4), direction(1, 0))).toBeCloseTo(0.6, 12);
	});

	it('angleBetween is never negative and never more than a half turn', () => {
		expect(angleBetween(direction(1, 0), direction(1, 1))).toBeCloseTo(Math.PI / 4, 12);
		expect(angleBetween(direction(1, 1), direction(1, 0))).toBeCloseTo(Math.PI / 4, 12);
		expect(angleBetween(direction(2, 1), direction(-2, -1))).toBeCloseTo(Math.PI, 12);
		expect(angleBetween(direction(5, 3), direction(5, 3))).toBe(0);
	});
});
