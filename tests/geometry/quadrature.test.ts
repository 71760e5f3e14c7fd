import { describe, expect, it } from 'vitest';
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

describe('what does not settle', () => {
	/** How often a function is asked for a value while it is summed. */
	const asked = (f: (t: number) => number): { readonly value: number; readonly times: number } => {
		let times = 0;
		const counted = (t: number): number => {
			times += 1;
			return f(t);
		};
		return { value: integral(counted, 0, 1, 1e-6), times };
	};

	it('is given back as it comes where it is no finite number, without halving', () => {
		expect(asked(() => NaN)).toEqual({ value: NaN, times: 48 });
		expect(asked(() => Infinity)).toEqual({ value: Infinity, times: 48 });
		expect(asked((t) => t * 1e300).value / 5e299).toBeCloseTo(1, 12);
	});

	it('is cut into a thousand parts at the most', () => {
		let seed = 1;
		const noise = (): number => (seed = (seed * 16807) % 2147483647) * 1e6;
		expect(asked(noise).times).toBeLessThan(65_000);
		expect(asked((t) => 1e200 / (t - 0.3)).times).toBeLessThan(65_000);
	});
});
