import { untrack } from 'svelte';
import type { Entries } from '#shared/entry.ts';
import type { Kept, Saved, SetAside, Slot } from './saved.ts';

/** A draft that this page has opened. */
interface Opened {
	readonly slot: Slot<Entries>;
	readonly entries: Entries;
}

/** The learner's drafts, as far as this page has opened them. Every change is kept at once. */
export class SavedWork {
	readonly #saved: Saved;
	/** Called after anything was read or kept, with what had to be set aside. */
	readonly #told: (setAside: SetAside | undefined) => void;
	#opened: Readonly<Record<string, Opened>> = $state.raw({});

	constructor(saved: Saved, told: (setAside: SetAside | undefined) => void) {
		this.#saved = saved;
		this.#told = told;
	}

	/** The steps of a draft; none before it is opened. */
	entries(key: string): Entries {
		return this.#opened[key]?.entries ?? {};
	}

	/** Reads a draft. `former` is where an earlier program kept the same: what is only there is taken from there. */
	open(slot: Slot<Entries>, former?: Slot<Entries>): void {
		untrack(() => {
			const [old, own] = [former && this.#saved.load(former), this.#saved.load(slot)];
			this.#put(slot, { ...old?.value, ...own.value });
			this.#told(old?.setAside);
			this.#told(own.setAside);
		});
	}

	/** Keeps a draft. Gives whether the browser does. */
	keep(slot: Slot<Entries>, entries: Entries): boolean {
		return this.#take(slot, this.#saved.keep(slot, entries));
	}

	/** Takes up what another tab has changed; `old` is what that tab found. */
	takeUp(key: string, old: string | null): void {
		const opened = this.#opened[key];
		if (opened) this.#take(opened.slot, this.#saved.takeUp(opened.slot, opened.entries, old));
	}

	#take(slot: Slot<Entries>, { value, kept, setAside }: Kept<Entries>): boolean {
		this.#put(slot, value);
		this.#told(setAside);
		return kept;
	}

	#put(slot: Slot<Entries>, entries: Entries): void {
		this.#opened = { ...this.#opened, [slot.key]: { slot, entries } };
	}
}
