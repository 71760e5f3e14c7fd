import type { z } from 'zod';

/**
 * What the browser keeps for the learner. Everything is checked when it is read back: data that
 * cannot be read is set aside under a name of its own, never thrown away and never a blank page.
 */

/** Every key begins so, and no other program's does. */
const PREFIX = 'square-across.';

/** Damaged data that was set aside: under which name, and what was wrong with it. */
export interface SetAside {
	readonly what: string;
	readonly savedAs: string;
	readonly reason: string;
	readonly raw: string;
}

/** A saved value, or none; and what had to be set aside. */
export interface Loaded<T> {
	readonly value: T | undefined;
	readonly setAside: SetAside | undefined;
}

const storage = (): Storage | undefined => {
	try {
		// A browser may have none, and some that have it switched off say null.
		return (globalThis as { readonly localStorage?: Storage | null }).localStorage ?? undefined;
	} catch {
		// A browser may forbid storage altogether (private windows, embedded pages).
		return undefined;
	}
};

const readRaw = (store: Storage, key: string): string | null => {
	try {
		return store.getItem(key);
	} catch {
		// A browser whose own file is damaged fails here; there is nothing to set aside.
		return null;
	}
};

/** The key under which something is saved. */
export const savedKey = (...parts: readonly string[]): string => PREFIX + parts.join('.');

const setAside = (store: Storage, key: string, what: string, raw: string, reason: string): SetAside => {
	const savedAs = `${PREFIX}set-aside.${Date.now()}.${key.slice(PREFIX.length)}`;
	// Taken away first: a store that is nearly full has no room for it twice.
	store.removeItem(key);
	try {
		store.setItem(savedAs, raw);
		return { what, savedAs, reason, raw };
	} catch {
		store.setItem(key, raw);
		return { what, savedAs: key, reason, raw };
	}
};

const reasonOf = (error: z.ZodError): string => {
	const issue = error.issues[0];
	return `${issue?.path.join('.') || 'the whole'}: ${issue?.message ?? 'not what was expected'}`;
};

/** Reads a saved value and checks it. `what` names it for the learner, should it have to be set aside. */
export const load = <T>(key: string, what: string, schema: z.ZodType<T>): Loaded<T> => {
	const store = storage();
	const raw = store ? readRaw(store, key) : null;
	if (!store || raw === null) return { value: undefined, setAside: undefined };
	try {
		const parsed = schema.safeParse(JSON.parse(raw));
		if (parsed.success) return { value: parsed.data, setAside: undefined };
		return { value: undefined, setAside: setAside(store, key, what, raw, reasonOf(parsed.error)) };
	} catch (error) {
		const reason = error instanceof Error ? error.message : String(error);
		return { value: undefined, setAside: setAside(store, key, what, raw, reason) };
	}
};

/** Saves a value. Gives false where the browser does not keep it (no storage, or it is full). */
export const save = (key: string, value: unknown): boolean => {
	try {
		const store = storage();
		store?.setItem(key, JSON.stringify(value));
		return store !== undefined;
	} catch {
		return false;
	}
};
