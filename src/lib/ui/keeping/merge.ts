const definedIn = (value: object): readonly (readonly [string, unknown])[] =>
	Object.entries(value).filter(([, each]) => each !== undefined);

/** Whether two values would be the same JSON, whatever the order of their keys. */
export const alike = (a: unknown, b: unknown): boolean => {
	if (a === b) return true;
	if (typeof a !== 'object' || typeof b !== 'object' || !a || !b) return false;
	const [left, right] = [definedIn(a), new Map(definedIn(b))];
	return (
		Array.isArray(a) === Array.isArray(b) &&
		left.length === right.size &&
		left.every(([key, value]) => right.has(key) && alike(value, right.get(key)))
	);
};

type Named<T> = Readonly<Record<string, T>>;
const named = <T>(all: Named<T>, name: string): T | undefined =>
	Object.hasOwn(all, name) ? all[name] : undefined;

/**
 * What two tabs did to the same named things, put together: `base` is what both began from. What only
 * one of them changed is as that one has it. What both changed is settled by `settle`; what one changed
 * and the other took away is kept.
 */
export const mergedByName = <T>(
	base: Named<T>,
	ours: Named<T>,
	theirs: Named<T>,
	settle: (base: T | undefined, ours: T, theirs: T) => T = (_, mine) => mine
): Record<string, T> => {
	const names = new Set([...Object.keys(theirs), ...Object.keys(ours)]);
	const merged = [...names].flatMap((name): [string, T][] => {
		const [was, mine, other] = [named(base, name), named(ours, name), named(theirs, name)];
		const both = (): T | undefined =>
			mine === undefined || other === undefined ? (mine ?? other) : settle(was, mine, other);
		const value = alike(mine, was) ? other : alike(other, was) || alike(other, mine) ? mine : both();
		return value === undefined ? [] : [[name, value]];
	});
	return Object.fromEntries(merged);
};
