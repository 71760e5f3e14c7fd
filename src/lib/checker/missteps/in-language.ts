import type { Method } from '#drafting/method.ts';
import type { Slip } from './misstep.ts';

/** All that a method calls by words of its own, and those that it leans on: in one order, whatever the language. */
const namesIn = (method: Method): readonly unknown[] => [
	...[method.name, method.called],
	...method.steps.map(({ label }) => label),
	...method.allowances.map(({ noun }) => noun),
	...Object.values(method.uses).flatMap(namesIn)
];

/**
 * Slips as they are told in another language than that in which they were found: their nouns are those of the same method there.
 *
 * @param from the method as it was when they were found
 * @param to the same method in the other language
 */
export const slipsIn = (slips: readonly Slip[], from: Method, to: Method): readonly Slip[] => {
	const there = namesIn(to);
	const named = new Map(namesIn(from).map((name, i) => [JSON.stringify(name), there[i]]));
	const said = (value: unknown): unknown => {
		const name = named.get(JSON.stringify(value));
		if (name !== undefined) return name;
		if (Array.isArray(value)) return value.map(said);
		if (typeof value !== 'object' || value === null) return value;
		return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, said(each)]));
	};
	return slips.map(({ key, values }) => ({ key, values: values.map(said) }));
};
