import type { Noun } from './noun.ts';

/** The words, and the keys, by which people write what a rule is worked from; little words between them are none. */
export const wordsOf = (named: Readonly<Record<string, Noun>>): ReadonlySet<string> =>
	new Set(
		Object.entries(named).flatMap(([key, { name }]) => [
			key.toLowerCase(),
			...name.split(' ').filter((word) => word.length > 2)
		])
	);
