import type { Chance } from '#practice/chance.ts';

/** A whole number from 0 up to, but never, `count`. */
export const upTo = (chance: Chance, count: number): number => Math.floor(chance.fraction() * count);

/** One of some things. */
export const oneFrom = <T>(chance: Chance, items: readonly [T, ...T[]]): T =>
	items[upTo(chance, items.length)] ?? items[0];

/** Signs and words that texts are put together from: what is meant to stand there, and what nobody means. */
const SCRAPS = [
	...['1', '0', '38.4', '9,5', '1e308', '1e3080', '0.0000001', '-5000', '37 3/4', '½', '.', ','],
	...['+', '-', '*', '/', '(', ')', '×', '÷', ':', '−', '%', '**', '?', '[', '{', '"', "''", '\\'],
	...[' ', '   ', '\t', '\n', '\u0000', '\u202e', '🪡', 'é', 'cm', 'mm', 'in', 'inches', '″', 'x', 'pi'],
	...['bust', 'waist', 'shoulderWidth', 'bustEase', 'Bust', 'zzz', '__proto__', 'constructor', 'toString'],
	...['distance(', 'length(', 'greater(', 'lesser(', 'choice(', 'A', 'B', 'edge', 'back.shoulder', 'null']
] as const;

/** A text of scraps, now and then far too long, or one scrap again and again. */
export const writtenBy = (chance: Chance): string => {
	const scrap = (): string => oneFrom(chance, SCRAPS as unknown as readonly [string, ...string[]]);
	const pick = chance.fraction();
	if (pick < 0.01) return scrap().repeat(upTo(chance, 20_000));
	const count = pick < 0.02 ? upTo(chance, 3000) : 1 + upTo(chance, 9);
	return Array.from({ length: count }, scrap).join(chance.fraction() < 0.5 ? '' : ' ');
};

/** A value as JSON can hold it, of any shape. */
export const anyValue = (chance: Chance, depth = 3): unknown => {
	const pick = upTo(chance, depth > 0 ? 10 : 7);
	if (pick < 2) return writtenBy(chance);
	if (pick < 4) return (chance.fraction() - 0.5) * oneFrom(chance, [2, 200, 20_000, 1e300]);
	if (pick < 7) return oneFrom<unknown>(chance, [null, true, 0, '', [], {}, -1]);
	const inner = Array.from({ length: upTo(chance, 5) }, () => anyValue(chance, depth - 1));
	if (pick < 9) return inner;
	return Object.fromEntries(inner.map((value) => [writtenBy(chance).slice(0, 60), value]));
};

/** The same data with one value somewhere in it replaced, left out or written twice. */
export const spoilt = (value: unknown, chance: Chance): unknown => {
	const isList = Array.isArray(value);
	if (typeof value !== 'object' || value === null || chance.fraction() < 0.06) {
		if (typeof value === 'string' && chance.fraction() < 0.5) {
			const at = upTo(chance, value.length + 1);
			return value.slice(0, at) + writtenBy(chance).slice(0, 40) + value.slice(at + upTo(chance, 3));
		}
		return anyValue(chance);
	}
	const entries = Object.entries(value);
	const at = upTo(chance, entries.length);
	const next = entries.flatMap(([key, item], i): [string, unknown][] => {
		if (i !== at) return [[key, item]];
		if (chance.fraction() < 0.05) return [];
		const changed = spoilt(item, chance);
		return isList && chance.fraction() < 0.05
			? [
					[key, item],
					[key, changed]
				]
			: [[key, changed]];
	});
	return isList ? next.map(([, item]) => item) : Object.fromEntries(next);
};
