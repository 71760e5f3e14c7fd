/** Every key begins so, and no other program's does. */
const PREFIX = 'square-across.';

/** The key under which something is saved. */
export const savedKey = (...parts: readonly string[]): string => PREFIX + parts.join('.');

const browserStore = (): Storage | undefined => {
	try {
		// A browser may have none, and some that have it switched off say null.
		return (globalThis as { readonly localStorage?: Storage | null }).localStorage ?? undefined;
	} catch {
		// A browser may forbid storage altogether (private windows, embedded pages).
		return undefined;
	}
};

const written = (key: string, raw: string): boolean => {
	try {
		const store = browserStore();
		store?.setItem(key, raw);
		return store !== undefined;
	} catch {
		// It is full, or forbidden only when it is written to.
		return false;
	}
};

/**
 * The browser's store, and behind it this page's memory. What the browser will not keep is held in
 * memory until the page is closed, so that going on to the next lesson loses nothing.
 */
export class Shelf {
	readonly #held = new Map<string, string>();
	/** Damaged records that had to stay where they are: nothing is written over them. */
	readonly #guarded = new Set<string>();

	/** Whether the browser keeps everything that it was given. */
	get keepsAll(): boolean {
		return this.#held.size === 0;
	}

	/** What the browser has under a key, whichever tab wrote it. */
	stored(key: string): string | null {
		try {
			return browserStore()?.getItem(key) ?? null;
		} catch {
			// A browser whose own file is damaged fails here; there is nothing to set aside.
			return null;
		}
	}

	/** What this page last put under a key, or else what the browser has. */
	read(key: string): string | null {
		return this.#held.get(key) ?? this.stored(key);
	}

	/** Keeps a text, and with it whatever the browser would not keep before. Gives false where it is only held in memory. */
	write(key: string, raw: string): boolean {
		this.#held.set(key, raw);
		for (const [each, text] of this.#held)
			if (!this.#guarded.has(each) && written(each, text)) this.#held.delete(each);
		return !this.#held.has(key);
	}

	/** Forgets what was held in memory: the browser has it from elsewhere. */
	letGo(key: string): void {
		this.#held.delete(key);
	}

	/** Puts a copy of damaged data under a name of its own. Gives that name, or none where there is no room. */
	copyAside(key: string, raw: string): string | undefined {
		const savedAs = `${PREFIX}set-aside.${Date.now()}.${key.slice(PREFIX.length)}`;
		return written(savedAs, raw) ? savedAs : undefined;
	}

	/** Leaves a damaged record where it is, and holds in memory what is to be used in its place. */
	guard(key: string): void {
		this.#guarded.add(key);
	}

	isGuarded(key: string): boolean {
		return this.#guarded.has(key);
	}

	/** Takes a record away. What was held in memory for it is kept in its place. */
	remove(key: string): void {
		this.#guarded.delete(key);
		try {
			browserStore()?.removeItem(key);
		} catch {
			// A store that forbids this keeps it, and says so at the next thing to keep.
		}
		const held = this.#held.get(key);
		if (held !== undefined) this.write(key, held);
	}
}
