import { expect } from 'vitest';
import type { Direction, SheetPoint } from '#geometry/point.ts';

/** Decimals to which head arithmetic must agree: floating-point noise at a metre is far below. */
const DIGITS = 9;

/** Expects a place at x, y. */
export const expectPlace = (place: SheetPoint | undefined, x: number, y: number, digits = DIGITS): void => {
	expect(place?.x, 'across').toBeCloseTo(x, digits);
	expect(place?.y, 'down').toBeCloseTo(y, digits);
};

/** Expects a direction along dx, dy, which need not have length one. */
export const expectDirection = (direction: Direction | undefined, dx: number, dy: number): void => {
	const size = Math.hypot(dx, dy);
	expect(direction?.dx, 'along x').toBeCloseTo(dx / size, DIGITS);
	expect(direction?.dy, 'along y').toBeCloseTo(dy / size, DIGITS);
};
