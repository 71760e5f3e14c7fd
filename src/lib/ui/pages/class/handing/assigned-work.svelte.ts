import { entrySchema, type Entries } from '#shared/entry.ts';
import type { HandedEntry } from '#shared/hand-in.ts';
import type { Slot } from '#ui/keeping/saved.ts';

/** The method of a place where work is kept. */
const methodIn = ({ kind }: Slot<Entries>): string => (kind.write({}) as { readonly method: string }).method;

/** The drafts of an assignment: begun with what was handed in, and kept by handing in each change. It stands where a learner's own drafts do. */
export class AssignedWork {
	/** Whether it is known what was done before. */
	ready = $state(false);
	#before: Readonly<Record<string, Readonly<Record<string, HandedEntry>>>> = {};
	#drafts: Readonly<Record<string, Entries>> = $state.raw({});

	constructor(
		/** Called with a method, its steps as they were and as they are. */
		readonly onchange: (method: string, was: Entries, now: Entries) => void
	) {}

	/** Begins with what was done before: by method, then by step. */
	begin(before: Readonly<Record<string, Readonly<Record<string, HandedEntry>>>>): void {
		this.#before = before;
		this.ready = true;
	}

	entries(key: string): Entries {
		return this.#drafts[key] ?? {};
	}

	/** Takes up what was handed in; a draft that is open already stays as it is. */
	open(slot: Slot<Entries>): void {
		if (this.#drafts[slot.key]) return;
		const read = Object.entries(this.#before[methodIn(slot)] ?? {}).flatMap(([step, entry]) => {
			const { data } = entrySchema.safeParse(entry);
			return data ? [[step, data] as const] : [];
		});
		this.#drafts = { ...this.#drafts, [slot.key]: Object.fromEntries(read) };
	}

	keep(slot: Slot<Entries>, entries: Entries): boolean {
		const was = this.entries(slot.key);
		this.#drafts = { ...this.#drafts, [slot.key]: entries };
		this.onchange(methodIn(slot), was, entries);
		return true;
	}

	/** Another page of this browser has drafts of its own. */
	takeUp(): void {
		// Each page hands in under its own name.
	}
}
