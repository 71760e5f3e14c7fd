import { expect, it } from 'vitest';
import { integral } from '#geometry/quadrature.ts';

it('is exact for powers, over any span', () => {
	expect(integral((x) => 3 * x * x, 1, 4, 1e-9)).toBeCloseTo(63, 10);
	expect(integral((x) => 30 * x ** 29, 0, 1, 1e-9)).toBeCloseTo(1, 12);
	expect(integral(() => 7, -2, 3, 1e-9)).toBeCloseTo(35, 12);
});

it('turns its sign with the span, and is nothing over none', () => {
	expect(integral((x) => x, 5, 1, 1e-9)).toBeCloseTo(-12, 12);
	expect(integral((x) => x, 2, 2, 1e-9)).toBe(0);
});

it('keeps within its error where the function has a corner or a steep start', () => {
	expect(Math.abs(integral((x) => Math.abs(x - 0.3), 0, 1, 1e-9) - 0.29)).toBeLessThan(1e-9);
	expect(Math.abs(integral(Math.sqrt, 0, 1, 1e-8) - 2 / 3)).toBeLessThan(1e-8);
});
