import { DEMO_BODIES } from '#shared/bodies/index.ts';
import type { Numbers } from './back-block.ts';
import { randomFronts, RANGES } from './front-block-bodies.ts';
import { DRESS } from './dress-pattern.ts';
import { chances } from './random-bodies.ts';
import { surveyFigures } from './survey-bodies.ts';

/** A body of the dress, in centimetres, and what it is called where a test fails. */
export interface Wearer {
	readonly name: string;
	readonly numbers: Numbers;
}

/** Every allowance of the dress, those of cutting with them: default and range in centimetres. */
const CHOICES = DRESS.allowances
	.filter((each) => 'range' in each)
	.map(({ key, default: usual, range: [least, most] }) => ({
		key,
		usual: usual / 10,
		ends: [least / 10, most / 10] as const
	}));

/** The invented bodies. */
export const DEMO: readonly Wearer[] = DEMO_BODIES.map(({ id, body: { measurements } }) => ({
	name: id,
	numbers: Object.fromEntries(Object.entries(measurements).map(([key, length]) => [key, length / 10]))
}));

/** The 300 women of the survey sample. */
export const SURVEY: readonly Wearer[] = surveyFigures().map((figure, i) => ({
	name: `row ${i + 1}`,
	numbers: { ...figure }
}));

const tenth = (value: number): number => Math.round(value * 10) / 10;

/** All allowances drawn anew: one in seven at either end of its range, four in ten the usual one, the others between. */
const drawn = (chance: () => number, among: typeof CHOICES): Numbers =>
	Object.fromEntries(
		among.map(({ key, usual, ends: [least, most] }) => {
			const pick = chance();
			if (pick < 1 / 7) return [key, least];
			if (pick < 2 / 7) return [key, most];
			return [key, pick < 5 / 7 ? usual : tenth(least + chance() * (most - least))];
		})
	);

/**
 * Women of the survey, each time with other allowances. A shoulder that drops further than these is left out: its front facing
 * can cross the neckline, which nothing tells yet.
 */
export const surveyWithChoices = (times: number, seed: number): readonly Wearer[] => {
	const chance = chances(seed);
	return Array.from({ length: times }, (_, i) => i + 1).flatMap((time) =>
		SURVEY.map(({ name, numbers }) => ({
			name: `${name}, time ${time}`,
			numbers: { ...numbers, ...drawn(chance, CHOICES) }
		})).filter(
			({ numbers: { shoulderDropBack = 0, shoulderDropFront = 0 } }) =>
				shoulderDropBack <= 6 && shoulderDropFront <= 7
		)
	);
};

/** Random bodies from what people have to beyond it, the dress's allowances drawn as well. */
export const randomWearers = (count: number, seed: number): readonly Wearer[] => {
	const chance = chances(seed);
	const own = CHOICES.filter(({ key }) => !(key in RANGES));
	return randomFronts(count, seed).map((numbers, i) => ({
		name: `random ${i}`,
		numbers: i % 2 === 0 ? numbers : { ...numbers, ...drawn(chance, own) }
	}));
};

/** The invented bodies with one allowance at a time at each end of its range. */
export const atEnds: readonly Wearer[] = DEMO.flatMap(({ name, numbers }) =>
	CHOICES.flatMap(({ key, ends }) =>
		ends.map((end) => ({ name: `${name}, ${key} ${end}`, numbers: { ...numbers, [key]: end } }))
	)
);

/** The first invented body with two allowances at ends of their ranges: every `every`th of all such pairs. */
export const atPairsOfEnds = (every: number): readonly Wearer[] => {
	const [heron] = DEMO;
	if (!heron) throw new Error('there is no body');
	const pairs = CHOICES.flatMap((first, i) =>
		CHOICES.slice(i + 1).flatMap((second) =>
			first.ends.flatMap((a) => second.ends.map((b) => ({ [first.key]: a, [second.key]: b })))
		)
	);
	return pairs
		.filter((_, i) => i % every === 0)
		.map((pair) => ({ name: `heron, ${JSON.stringify(pair)}`, numbers: { ...heron.numbers, ...pair } }));
};

/** The invented bodies with one measurement at a time so much shorter or longer that it is, or nearly is, at odds with the rest. */
export const strained: readonly Wearer[] = DEMO.flatMap(({ name, numbers }) =>
	Object.entries(numbers).flatMap(([key, length]) =>
		[0.6, 0.75, 0.85, 0.92, 1.08, 1.15, 1.3, 1.6].map((times) => ({
			name: `${name}, ${key} times ${times}`,
			numbers: { ...numbers, [key]: length * times }
		}))
	)
);
