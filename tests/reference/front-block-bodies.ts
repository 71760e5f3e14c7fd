import type { Numbers } from './back-block.ts';
import { chances, randomBodies } from './random-bodies.ts';

/** A body that drafts, in centimetres: the method's own demo body. */
export const HERON: Numbers = {
	...{ bust: 96, waist: 78, hip: 102, neck: 37, shoulderWidth: 38.4, backLength: 42.5, waistToHip: 20.5 },
	...{ frontLength: 45.5, bustHeight: 26.5, bustSpan: 19.5 }
};

/** The whole range of every allowance of the block, in centimetres. */
export const RANGES: Readonly<Record<string, readonly [number, number]>> = {
	...{ bustEase: [-4, 30], waistEase: [-4, 30], hipEase: [-4, 30], sideMost: [0, 6], waistDartTop: [0, 8] },
	...{ armholeDrop: [1, 6], neckAllow: [0, 2] },
	...{ frontNeckDrop: [0, 4], backNeckDepth: [1.5, 4], shoulderDropBack: [1, 8], shoulderDropFront: [1, 9] },
	...{ hollowBack: [0, 3], hollowFront: [0, 3], dartBelow: [3, 12], dartShort: [0, 5] }
};

const tenth = (value: number): number => Math.round(value * 10) / 10;

/**
 * Random bodies with all ten measurements and all allowances, the same for the same seed. What the front adds is drawn
 * about what the back has, from what people have to beyond it; one body in eight has front and back of one length.
 */
export const randomFronts = (count: number, seed: number): readonly Numbers[] => {
	const chance = chances(seed + 1);
	const from = (least: number, most: number): number => tenth(least + chance() * (most - least));
	const chosen = (key: string): number => {
		const [least, most] = RANGES[key] ?? [NaN, NaN];
		const pick = chance();
		if (pick < 1 / 6) return least;
		return pick < 1 / 3 ? most : from(least, most);
	};
	return randomBodies(count, seed).map((back) => {
		const depth = (back['shoulderWidth'] ?? NaN) / 2 + (back['armholeDrop'] ?? NaN);
		const more = chance() < 1 / 8 ? 0 : from(-2, 12);
		return {
			...back,
			frontLength: tenth((back['backLength'] ?? NaN) + more),
			bustHeight: tenth(depth + from(-4, 12)),
			bustSpan: tenth(((back['bust'] ?? NaN) / 2) * (0.25 + 0.75 * chance())),
			...Object.fromEntries(
				['frontNeckDrop', 'shoulderDropFront', 'hollowFront', 'dartBelow', 'dartShort'].map((key) => [
					key,
					chosen(key)
				])
			)
		};
	});
};

/** The demo body with one allowance at a time at an end of its range. */
export const endsOfRanges: readonly Numbers[] = Object.entries(RANGES).flatMap(([key, range]) =>
	range.map((end) => ({ ...HERON, [key]: end }))
);

/** One limit of the method: a body that stands on it, the number that crosses it, and which way is over it. */
export interface Limit {
	readonly what: string;
	readonly on: Numbers;
	readonly key: string;
	/** A hair this way breaks the rule. */
	readonly over: 1 | -1;
	/** Whether standing on the limit is refused too, and for what where that is another reason. */
	readonly refusedOn: boolean | string;
	readonly odds: string;
}

/** Every refusal, reached by one number of a body that breaks nothing else. Worked by hand from the demo body. */
export const LIMITS: readonly Limit[] = [
	// (bust + 8) / 4 = 19.2 + 1.5.
	{
		what: 'U 1.5 outside Q',
		on: { ...HERON, bust: 74.8 },
		key: 'bust',
		over: -1,
		refusedOn: false,
		odds: 'bust shoulderWidth'
	},
	// 38.4 / 2 + 3 + 5, and a front that keeps its intake of 3.
	{
		what: 'the armhole level 5 above the waist',
		on: { ...HERON, backLength: 27.2, frontLength: 30.2, dartBelow: 4 },
		key: 'backLength',
		over: -1,
		refusedOn: false,
		odds: 'shoulderWidth backLength'
	},
	// neck / 6 + 1 = 19.2 - 4.
	{
		what: 'N 4 inside S',
		on: { ...HERON, neck: 85.2 },
		key: 'neck',
		over: 1,
		refusedOn: false,
		odds: 'neck shoulderWidth'
	},
	// The same neck: 4 across and, with a back drop of 3, 3 down make a shoulder of 5.
	{
		what: 'the shoulder as long as the front drop',
		on: { ...HERON, neck: 85.2, shoulderDropBack: 3, shoulderDropFront: 5 },
		key: 'shoulderDropFront',
		over: 1,
		refusedOn: true,
		odds: 'neck shoulderWidth'
	},
	{
		what: 'an intake of 10',
		on: { ...HERON, frontLength: 52.5 },
		key: 'frontLength',
		over: 1,
		refusedOn: false,
		odds: 'frontLength backLength'
	},
	{
		what: 'the upper leg at U',
		on: { ...HERON, frontLength: 48.5, dartBelow: 3 },
		key: 'frontLength',
		over: 1,
		refusedOn: false,
		odds: 'frontLength backLength'
	},
	// U (26, 22.2) to V (23.9, 29.4) is 2.1 in, a third of 6.3, and 7.2 down: 7.5. The intake is 2.
	{
		what: 'the lower leg at V',
		on: { ...HERON, waist: 74.8, backLength: 27.4, frontLength: 29.4, dartBelow: 6.5 },
		key: 'dartBelow',
		over: 1,
		// No side is left below the dart, that could be folded over.
		refusedOn: 'bustSpan bust',
		odds: 'frontLength backLength'
	},
	// Nine tenths of 26, twice, of a body whose waist needs no dart.
	{
		what: 'the bust point at 0.9 of A-U',
		on: { ...HERON, waist: 100, bustSpan: 46.8, dartShort: 0.5 },
		key: 'bustSpan',
		over: 1,
		refusedOn: false,
		odds: 'bustSpan bust'
	},
	// A quarter of 38.4 less half of 17.2, which is 26 less 3 at the side and less 5.8 that are needed.
	{
		what: 'the back waist 1 inside its dart',
		on: { ...HERON, waist: 19.2 },
		key: 'waist',
		over: -1,
		refusedOn: false,
		odds: 'bust waist'
	},
	// 26 less 19.7 is 6.3: 2.1 at the side and a dart of 4.2.
	{
		what: 'the front waist 1 inside its dart',
		on: { ...HERON, waist: 74.8, bustSpan: 6.2 },
		key: 'bustSpan',
		over: -1,
		refusedOn: false,
		odds: 'bustSpan waist'
	},
	{
		what: 'the front waist 1 outside its dart',
		on: { ...HERON, waist: 74.8, bustSpan: 41.6 },
		key: 'bustSpan',
		over: 1,
		refusedOn: false,
		odds: 'bustSpan waist'
	},
	{
		what: 'the bust point 3 above the armhole level',
		on: { ...HERON, bustHeight: 19.2 },
		key: 'bustHeight',
		over: -1,
		refusedOn: false,
		odds: 'bustHeight frontLength'
	},
	{
		what: 'the bust point at the waist',
		on: { ...HERON, bustHeight: 45.5 },
		key: 'bustHeight',
		over: 1,
		refusedOn: true,
		odds: 'bustHeight frontLength'
	}
];

/** The same body with one number so many centimetres more. */
export const moved = (body: Numbers, key: string, by: number): Numbers => ({
	...body,
	[key]: Math.round(((body[key] ?? NaN) + by) * 1e6) / 1e6
});
