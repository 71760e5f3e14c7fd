import { BadInput } from '#shared/bad-input.ts';
import { shapeSlip } from '#shared/reading.ts';
import { z } from '#shared/shape.ts';
import { message, type Message } from '#shared/speech/message.ts';
import { alike } from './merge.ts';
import { Shelf } from './shelf.ts';

/**
 * What the browser keeps for the learner. Everything is checked when it is read back: what cannot be
 * read is set aside under a name of its own, never thrown away and never a blank page. Two tabs may
 * keep the same thing: what each of them changed is put together.
 */

/** What could not be used in something that was saved: the parts by name (none where it is the whole), and why. */
export interface Damage {
	readonly parts: readonly (string | Message)[];
	readonly reason: Message;
	/** The damaged parts as they were saved. */
	readonly rest: unknown;
}

/** What was read back, and what of it could not be used. */
export interface Reading<T> {
	readonly value: T;
	readonly damage: Damage | undefined;
}

/** How one kind of thing is read back, written, and put together from two tabs. */
export interface Kind<T> {
	/** Throws where nothing of it can be used. */
	readonly read: (json: unknown) => Reading<T>;
	/** Only what `read` will take again. */
	readonly write: (value: T) => unknown;
	/** `base` is what both began from, where that is known. */
	readonly merge: (base: T | undefined, ours: T, theirs: T) => T;
}

/** One thing that is kept: where, how the learner is told of it, and of which kind it is. */
export interface Slot<T> {
	readonly key: string;
	readonly what: Message;
	readonly kind: Kind<T>;
}

/** Damaged data that was set aside: under which name, and what was wrong with it. */
export interface SetAside {
	readonly what: Message;
	readonly savedAs: string;
	readonly reason: Message;
	readonly raw: string;
	/** Whether there was no room for a copy, so that it stands where it stood and nothing is kept there. */
	readonly inPlace: boolean;
	/** Whether the rest of the same thing could be read. */
	readonly partly: boolean;
}

/** A saved value, or none; and what had to be set aside. */
export interface Loaded<T> {
	readonly value: T | undefined;
	readonly setAside: SetAside | undefined;
}

/** What is kept now: the value given, with what another tab did to it; and whether the browser keeps it. */
export interface Kept<T> {
	readonly value: T;
	readonly kept: boolean;
	readonly setAside: SetAside | undefined;
}

/** The rule that a thrown slip breaks; what was thrown by others is told as it is. */
const ruleOf = (error: unknown): Message => {
	if (error instanceof BadInput) return error.slip;
	return message('keeping', 'unreadable', { told: error instanceof Error ? error.message : String(error) });
};

/** Why a saved value could not be read: where, and what was expected there. */
export const reasonOf = (error: unknown, json: unknown): Message => {
	if (!(error instanceof z.core.$ZodError)) return ruleOf(error);
	const issue = error.issues[0];
	if (!issue) return message('shapes', 'invalid');
	const place = issue.path.join('.');
	if (issue.code !== 'custom' || !(issue.params?.['slip'] instanceof BadInput))
		return message('keeping', 'breaksRule', { place, rule: shapeSlip(issue, json) });
	const { slip } = issue.params as { readonly slip: BadInput };
	const inside = [place, slip.place].filter(Boolean).join('.');
	return message('keeping', 'breaksRule', { place: inside, rule: ruleOf(slip) });
};

/** A record as it was read: with no value where nothing of it could be used. */
interface Read<T> {
	readonly value: T | undefined;
	readonly damage: (Omit<Damage, 'rest'> & { readonly raw: string }) | undefined;
}

const readRaw = <T>(kind: Kind<T>, raw: string): Read<T> => {
	let json: unknown;
	try {
		json = JSON.parse(raw);
		const { value, damage } = kind.read(json);
		return { value, damage: damage && { ...damage, raw: JSON.stringify(damage.rest) } };
	} catch (error) {
		return { value: undefined, damage: { parts: [], reason: reasonOf(error, json), raw } };
	}
};

/** A thing that is read and kept as a whole: of two tabs, the one that keeps it last has it. */
export const whole = <T>(key: string, what: Message, schema: z.core.$ZodType<T>): Slot<T> => ({
	key,
	what,
	kind: {
		read: (json) => ({ value: z.parse(schema, json), damage: undefined }),
		write: (value) => value,
		merge: (_, ours) => ours
	}
});

/** Reads and keeps things for one page; a page makes one of these. */
export class Saved {
	readonly #shelf = new Shelf();
	/** What the browser's store held for each key when this page last took notice of it. */
	readonly #seen = new Map<string, string | null>();

	/** Whether the browser keeps everything that it was given. */
	get keepsAll(): boolean {
		return this.#shelf.keepsAll;
	}

	/** Reads a thing back. */
	load<T>(slot: Slot<T>): Loaded<T> {
		const raw = this.#shelf.read(slot.key);
		this.#notice(slot.key);
		return raw === null ? { value: undefined, setAside: undefined } : this.#taken(slot, raw);
	}

	/** Keeps a thing, with what another tab has changed in it since it was last read here. */
	keep<T>(slot: Slot<T>, ours: T): Kept<T> {
		const before = this.#seen.get(slot.key) ?? null;
		const theirs = this.#fromElsewhere(slot);
		const value =
			theirs?.value === undefined ? ours : slot.kind.merge(this.#base(slot.kind, before), ours, theirs.value);
		return { value, kept: this.#write(slot, value), setAside: theirs?.setAside };
	}

	/** Keeps a thing as a whole, whatever another tab has put there. Gives whether the browser keeps it. */
	keepWhole(key: string, value: unknown): boolean {
		const kept = this.#shelf.write(key, JSON.stringify(value));
		this.#notice(key);
		return kept;
	}

	/** What becomes of a thing when another tab has changed it; `old` is what that tab found there. */
	takeUp<T>(slot: Slot<T>, ours: T, old: string | null): Kept<T> {
		const { key, kind } = slot;
		const theirs = this.#fromElsewhere(slot);
		if (!theirs) return { value: ours, kept: true, setAside: undefined };
		const { value: known, setAside } = theirs;
		const value = known === undefined ? ours : kind.merge(this.#base(kind, old), ours, known);
		// Written only where the other tab lacks something: two tabs would otherwise answer each other for ever.
		if (known === undefined || !alike(kind.write(value), kind.write(known)))
			return { value, kept: this.#write(slot, value), setAside };
		this.#shelf.letGo(key);
		this.#notice(key);
		return { value, kept: true, setAside };
	}

	/** Throws away a damaged record that had to stay in its place, so that new work can be kept there. */
	remove(key: string): void {
		this.#shelf.remove(key);
		this.#notice(key);
	}

	#notice(key: string): void {
		this.#seen.set(key, this.#shelf.stored(key));
	}

	/** What another tab has put in the store since this page last looked. */
	#fromElsewhere<T>(slot: Slot<T>): Loaded<T> | undefined {
		const stored = this.#shelf.stored(slot.key);
		const news = stored !== null && stored !== (this.#seen.get(slot.key) ?? null);
		return news ? this.#taken(slot, stored) : undefined;
	}

	/** What this page and another tab both began from. */
	#base<T>(kind: Kind<T>, raw: string | null): T | undefined {
		return raw === null ? undefined : readRaw(kind, raw).value;
	}

	#write<T>({ key, kind }: Slot<T>, value: T): boolean {
		return this.keepWhole(key, kind.write(value));
	}

	/** Reads a record, and sets aside what of it cannot be used. */
	#taken<T>(slot: Slot<T>, raw: string): Loaded<T> {
		const { key, what, kind } = slot;
		const { value, damage } = readRaw(kind, raw);
		// One that had to stay in its place was told of when it was found.
		if (!damage || this.#shelf.isGuarded(key)) return { value, setAside: undefined };
		const savedAs = this.#shelf.copyAside(key, damage.raw);
		if (savedAs === undefined) this.#shelf.guard(key);
		else if (value === undefined) this.#shelf.remove(key);
		if (value !== undefined) this.#write(slot, value);
		this.#notice(key);
		const setAside: SetAside = {
			what: damage.parts.length > 0 ? message('keeping', 'partsOf', { what, parts: damage.parts }) : what,
			savedAs: savedAs ?? key,
			reason: damage.reason,
			raw: damage.raw,
			inPlace: savedAs === undefined,
			partly: value !== undefined
		};
		return { value, setAside };
	}
}
