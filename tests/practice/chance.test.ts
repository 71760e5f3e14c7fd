import { describe, expect, it } from 'vitest';
import { chanceOf, seedFrom } from '#practice/chance.ts';
import { seeds } from './methods.ts';

const COUNT = 4000;

describe('chances', () => {
	it('are the same for the same seed and purpose, and other for any other', () => {
		const run = (seed: number, ...purpose: (string | number)[]): readonly number[] => {
			const chance = chanceOf(seed, ...purpose);
			return seeds(5).map(() => chance.fraction());
		};
		expect(run(7, 'body', 1)).toEqual(run(7, 'body', 1));
		for (const other of [run(8, 'body', 1), run(7, 'body', 2), run(7, 'bird', 1), run(7)]) {
			for (const value of other) expect(run(7, 'body', 1)).not.toContain(value);
		}
	});

	it('begin unalike for neighbouring seeds: first numbers fill 0 to 1 evenly', () => {
		const tenths = seeds(10).map(() => 0);
		for (const seed of seeds(COUNT)) {
			const tenth = Math.floor(chanceOf(seed).fraction() * 10);
			tenths[tenth] = (tenths[tenth] ?? 0) + 1;
		}
		// Binomial with p = 0.1: standard deviation sqrt(4000 * 0.1 * 0.9) = 19; ten of them within four.
		for (const count of tenths) expect(Math.abs(count - COUNT / 10)).toBeLessThan(4 * 19);
	});

	it('are normal where they are asked to be: mean 0, deviation 1, two in three within one', () => {
		const chance = chanceOf(3, 'normal');
		const drawn = seeds(COUNT).map(() => chance.normal());
		const mean = drawn.reduce((sum, each) => sum + each, 0) / COUNT;
		const square = drawn.reduce((sum, each) => sum + each * each, 0) / COUNT;
		expect(Math.abs(mean)).toBeLessThan(4 / Math.sqrt(COUNT));
		expect(Math.abs(square - 1)).toBeLessThan(4 * Math.sqrt(2 / COUNT));
		const near = drawn.filter((each) => Math.abs(each) < 1).length / COUNT;
		expect(Math.abs(near - 0.6827)).toBeLessThan(4 * Math.sqrt((0.6827 * 0.3173) / COUNT));
	});

	it('follow weights, and take nothing of no weight', () => {
		const chance = chanceOf(4);
		const taken = seeds(COUNT).map(() =>
			chance.weighted(['one', 'three', 'none'], (name) => ({ one: 1, three: 3 })[name] ?? 0)
		);
		const threes = taken.filter((name) => name === 'three').length / COUNT;
		expect(Math.abs(threes - 0.75)).toBeLessThan(4 * Math.sqrt((0.75 * 0.25) / COUNT));
		expect(taken).not.toContain('none');
		const nothing: readonly string[] = [];
		expect(chance.weighted(nothing, () => 1)).toBeUndefined();
		expect(chance.weighted(['none'], () => 0)).toBeUndefined();
	});

	it('shuffle without losing anything, the heavier first in proportion', () => {
		const chance = chanceOf(5);
		const firsts = seeds(COUNT).map(() => {
			const shuffled = chance.shuffled([1, 3], (weight) => weight);
			expect([...shuffled].sort()).toEqual([1, 3]);
			return shuffled[0];
		});
		const heavy = firsts.filter((first) => first === 3).length / COUNT;
		expect(Math.abs(heavy - 0.75)).toBeLessThan(4 * Math.sqrt((0.75 * 0.25) / COUNT));
	});

	it('make seeds that JSON keeps', () => {
		for (const seed of seeds(50)) {
			const made = seedFrom(seed, 'set');
			expect(Number.isSafeInteger(made)).toBe(true);
			expect(JSON.parse(JSON.stringify(made))).toBe(made);
		}
		expect(new Set(seeds(1000).map((seed) => seedFrom(seed))).size).toBe(1000);
	});
});
