import { afterEach, beforeEach, vi } from 'vitest';

/** A browser's store that lives in memory; it holds `room` characters of keys and values at most. */
export class MemoryStore implements Storage {
	readonly #items = new Map<string, string>();
	room: number;

	constructor(room = Infinity) {
		this.room = room;
	}

	get length(): number {
		return this.#items.size;
	}

	key(index: number): string | null {
		return [...this.#items.keys()][index] ?? null;
	}

	getItem(key: string): string | null {
		return this.#items.get(key) ?? null;
	}

	setItem(key: string, value: string): void {
		const before = this.#items.get(key);
		const used = [...this.#items].reduce((sum, [name, text]) => sum + name.length + text.length, 0);
		const freed = before === undefined ? 0 : key.length + before.length;
		if (used - freed + key.length + value.length > this.room)
			throw new DOMException('the store is full', 'QuotaExceededError');
		this.#items.set(key, value);
	}

	removeItem(key: string): void {
		this.#items.delete(key);
	}

	clear(): void {
		this.#items.clear();
	}

	/** Everything in it, by key. */
	get all(): Readonly<Record<string, string>> {
		return Object.fromEntries(this.#items);
	}
}

/** Puts something in the place of the browser's store. */
export const useStore = <T>(store: T): T => {
	vi.stubGlobal('localStorage', store);
	return store;
};

/** A browser that will not let its store even be asked for. */
export const forbidStore = (): void => {
	Object.defineProperty(globalThis, 'localStorage', {
		configurable: true,
		get: () => {
			throw new DOMException('not allowed', 'SecurityError');
		}
	});
};

/** An empty store before each test of a file, and the browser as it was after it. */
export const freshStores = (): void => {
	beforeEach(() => {
		useStore(new MemoryStore());
	});
	afterEach(() => {
		vi.unstubAllGlobals();
	});
};
