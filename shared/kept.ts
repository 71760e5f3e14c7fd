/** Work that is asked for again and again, and done once. */

/** What is worked from a thing that never changes, kept as long as the thing is. */
export const keptFor = <K extends object, V>(work: (of: K) => V): ((of: K) => V) => {
	const kept = new WeakMap<K, { readonly value: V }>();
	return (of) => {
		const found = kept.get(of);
		if (found) return found.value;
		const value = work(of);
		kept.set(of, { value });
		return value;
	};
};

/** The last that was worked for each thing: the very same comes out while all that it was worked from, `from`, is the same. */
export const lastFor = <V>(): ((of: object, from: readonly unknown[], work: () => V) => V) => {
	const last = new WeakMap<object, { readonly from: readonly unknown[]; readonly value: V }>();
	return (of, from, work) => {
		const before = last.get(of);
		if (before?.from.length === from.length && before.from.every((each, i) => each === from[i]))
			return before.value;
		const value = work();
		last.set(of, { from, value });
		return value;
	};
};
