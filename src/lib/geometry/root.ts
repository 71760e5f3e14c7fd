/** Equal parts of the range in which a change of sign is looked for when its two ends have the same. */
const PARTS = 48;
/** More rounds than regula falsi with halved ends ever needs for 15 digits. */
const MOST_ROUNDS = 100;

/** A place and the value found there. */
interface Tried {
	readonly at: number;
	readonly value: number;
}

/** Narrows two places of opposite sign down to the root between them (regula falsi, Illinois variant). */
const narrowed = (of: (at: number) => number, a: Tried, b: Tried, enough: number): number => {
	let [low, high] = [a, b];
	for (let round = 0; round < MOST_ROUNDS; round++) {
		const at = (low.at * high.value - high.at * low.value) / (high.value - low.value);
		const value = of(at);
		if (Math.abs(value) <= enough || Math.abs(high.at - low.at) <= enough * Number.EPSILON) return at;
		if (value * high.value < 0) low = high;
		else low = { at: low.at, value: low.value / 2 };
		high = { at, value };
	}
	return high.at;
};

/**
 * Where a continuous function is nothing between two places, within `enough` of its value; of several
 * roots the one nearest to `from`. Undefined where no change of sign is found.
 */
export const rootBetween = (
	of: (at: number) => number,
	from: number,
	to: number,
	enough: number
): number | undefined => {
	let before: Tried = { at: from, value: of(from) };
	if (Math.abs(before.value) <= enough) return from;
	const last: Tried = { at: to, value: of(to) };
	if (before.value * last.value < 0) return narrowed(of, before, last, enough);
	for (let part = 1; part <= PARTS; part++) {
		const at = from + ((to - from) * part) / PARTS;
		const next: Tried = part === PARTS ? last : { at, value: of(at) };
		if (Math.abs(next.value) <= enough) return next.at;
		if (before.value * next.value < 0) return narrowed(of, before, next, enough);
		before = next;
	}
	return undefined;
};
