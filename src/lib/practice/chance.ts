import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plusFromState } from 'pure-rand/generator/xoroshiro128plus';

/** A repeatable run of chances: the same seed and purpose always give the same run. */
export interface Chance {
	/** A number from 0 up to, but never, 1. */
	fraction(): number;
	/** A number of the standard normal distribution: mean 0, standard deviation 1. */
	normal(): number;
	/** One of these, each as likely as its weight says; undefined where nothing has any weight. */
	weighted<T>(items: readonly T[], weight: (item: T) => number): T | undefined;
	/** These in another sequence; where weights are given, the heavier are likelier to come early. */
	shuffled<T>(items: readonly T[], weight?: (item: T) => number): readonly T[];
}

/** FNV-1a over the text, then the finishing rounds of MurmurHash3: texts that differ by one digit give unlike words. */
const hash = (text: string, salt: number): number => {
	let word = 0x811c9dc5 ^ salt;
	for (let i = 0; i < text.length; i++) word = Math.imul(word ^ text.charCodeAt(i), 0x01000193);
	word = Math.imul(word ^ (word >>> 16), 0x85ebca6b);
	word = Math.imul(word ^ (word >>> 13), 0xc2b2ae35);
	return word ^ (word >>> 16);
};

/** Four words fill the generator. Any four different salts do. */
const SALTS = [0x9e3779b9, 0x7f4a7c15, 0xf39cc060, 0x5cedc834] as const;

/**
 * The chances for a seed and a purpose (`'body', 3`). The generator starts from hashes of both, and
 * not from the seed itself: started from two neighbouring seeds its first numbers would be alike.
 */
export const chanceOf = (seed: number, ...purpose: readonly (string | number)[]): Chance => {
	const name = [seed, ...purpose].join('/');
	const generator = xoroshiro128plusFromState(SALTS.map((salt) => hash(name, salt)));
	const fraction = (): number => uniformFloat64(generator);
	return {
		fraction,
		// Box and Muller's way; 1 - u is never 0, so its logarithm is finite.
		normal: () => Math.sqrt(-2 * Math.log(1 - fraction())) * Math.cos(2 * Math.PI * fraction()),
		weighted: (items, weight) => {
			const whole = items.reduce((sum, item) => sum + weight(item), 0);
			let left = fraction() * whole;
			return items.find((item) => {
				left -= weight(item);
				return left < 0;
			});
		},
		// Each draws a number and the greatest comes first; with the root of its weight the heavier draw greater ones.
		shuffled: (items, weight = () => 1) =>
			items
				.map((item) => ({ item, drawn: fraction() ** (1 / weight(item)) }))
				.sort((a, b) => b.drawn - a.drawn)
				.map(({ item }) => item)
	};
};

/** A new seed for one of several things made from a seed: a whole number that JSON keeps exactly. */
export const seedFrom = (seed: number, ...purpose: readonly (string | number)[]): number =>
	Math.floor(chanceOf(seed, ...purpose).fraction() * 2 ** 32);
