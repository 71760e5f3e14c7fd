import type { Numbers } from './back-block.ts';

/** Least and greatest of each number of a random body, in centimetres: from what grown people have to beyond it, so that every refusal is met. */
const MEASURED: Readonly<Record<string, readonly [number, number]>> = {
	bust: [70, 150],
	waist: [50, 140],
	hip: [75, 160],
	neck: [28, 74],
	shoulderWidth: [30, 52],
	backLength: [32, 52],
	waistToHip: [14, 28]
};
/** The whole range of every allowance that the back uses. */
const CHOSEN: Readonly<Record<string, readonly [number, number]>> = {
	bustEase: [-4, 30],
	waistEase: [-4, 30],
	hipEase: [-4, 30],
	sideMost: [0, 6],
	waistDartTop: [0, 8],
	armholeDrop: [1, 6],
	neckAllow: [0, 2],
	backNeckDepth: [1.5, 4],
	shoulderDropBack: [1, 8],
	hollowBack: [0, 3]
};

/** A repeatable row of numbers from 0 to 1 (a 32-bit generator of the xorshift kind). */
export const chances = (seed: number): (() => number) => {
	let state = seed | 0;
	return () => {
		state ^= state << 13;
		state ^= state >>> 17;
		state ^= state << 5;
		return (state >>> 0) / 2 ** 32;
	};
};

const tenth = (value: number): number => Math.round(value * 10) / 10;

/**
 * Random bodies with allowances, in centimetres, the same for the same seed. One allowance in three lies at an end of
 * its range, so that every end is met many times, alone and with others.
 */
export const randomBodies = (count: number, seed: number): readonly Numbers[] => {
	const chance = chances(seed);
	const measured = ([least, most]: readonly [number, number]): number =>
		tenth(least + chance() * (most - least));
	const chosen = (range: readonly [number, number]): number => {
		const pick = chance();
		if (pick < 1 / 6) return range[0];
		return pick < 1 / 3 ? range[1] : measured(range);
	};
	const drawn = (ranges: typeof MEASURED, draw: (range: readonly [number, number]) => number): Numbers =>
		Object.fromEntries(Object.entries(ranges).map(([key, range]) => [key, draw(range)]));
	return Array.from({ length: count }, () => ({ ...drawn(MEASURED, measured), ...drawn(CHOSEN, chosen) }));
};

/** The usual body with one allowance at a time at an end of its range. */
export const endsOfRanges = (body: Numbers): readonly Numbers[] =>
	Object.entries(CHOSEN).flatMap(([key, range]) => range.map((end) => ({ ...body, [key]: end })));
