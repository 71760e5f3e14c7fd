import { untrack } from 'svelte';
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import { readBody, type Body } from '#shared/body.ts';
import type { Tolerances } from '#shared/tolerances.ts';
import type { Judged, LearnersWork } from '#checker/work.ts';
import { isFormer, underNewNames } from './own-body.ts';
import { BODIES, SETTINGS } from './kinds.ts';
import { SavedWork } from './saved-work.svelte.ts';
import { Saved, type SetAside, type Slot } from './saved.ts';
import { ownBodySchema, settingsSchema, type OwnBody, type OwnBodyFile, type Settings } from './schemas.ts';

/** A body that can be drafted for: an invented one of the course, or the learner's own. */
export interface ChoosableBody {
	readonly id: string;
	readonly own: boolean;
	readonly body: Body;
}

/** How drafts are judged that somebody else has set. */
export interface Judging {
	readonly allowed: Tolerances;
	/** Whether help may be asked for. */
	readonly hints: boolean;
	readonly judge: (work: LearnersWork) => Judged;
}

/** The units that the screens offer. */
export type ScreenUnit = Settings['unit'];

/**
 * The learner at this browser: units, the chosen body, own bodies, drafts. Before the browser's store
 * is read (and on the server) it is a visitor who drafts for the first demo body in centimetres.
 */
export class Learner {
	settings: Settings = $state(settingsSchema.parse({}));
	own: readonly OwnBody[] = $state.raw([]);
	/** What could not be read back, told once until dismissed. */
	setAside: SetAside[] = $state([]);
	/** Whether a saved measurement was found under the name that it had; told until dismissed. */
	renamed = $state(false);
	/** False while the browser refuses to keep something. */
	keeps = $state(true);
	/** Whether the store has been read. */
	loaded = $state(false);
	/** Where somebody else has set what is drafted. */
	readonly judging: Judging | undefined;

	readonly #saved = new Saved();
	/** What was drafted, for every body. */
	readonly work = new SavedWork(this.#saved, (setAside) => this.#note(setAside));

	readonly bodies: readonly ChoosableBody[] = $derived([
		...DEMO_BODIES.map(({ id, body }) => ({ id, own: false, body })),
		...this.own.map(({ id, file }) => ({ id, own: true, body: readBody(file, '', this.unnamed()) }))
	]);
	readonly current: ChoosableBody = $derived(
		this.bodies.find(({ id }) => id === this.settings.body) ?? this.#firstBody()
	);
	readonly unit: ScreenUnit = $derived(this.settings.unit);

	/** `unnamed` says what an own body is called that has no name, in the language of the page. */
	constructor(readonly unnamed: () => string) {}

	/** Reads the browser's store; called once, when the page has come alive. */
	load(): void {
		if (this.loaded) return;
		const [settings, own] = [this.#saved.load(SETTINGS), this.#saved.load(BODIES)];
		Object.assign(this.settings, settings.value);
		this.#take(own.value ?? []);
		this.#note(settings.setAside);
		this.#note(own.setAside);
		this.loaded = true;
	}

	/** Takes up what another tab of this browser has kept under a key, where it found `old` before. */
	takeUp(key: string, old: string | null): void {
		if (!this.loaded) return;
		if (key === SETTINGS.key) {
			const { value, setAside } = this.#saved.takeUp(SETTINGS, this.settings, old);
			Object.assign(this.settings, value);
			this.#note(setAside);
		} else if (key === BODIES.key) {
			const { value, setAside } = this.#saved.takeUp(BODIES, this.own, old);
			this.#take(value);
			this.#note(setAside);
		} else this.work.takeUp(key, old);
	}

	/** Reads something that is kept as a whole; notes what of it has to be set aside. */
	take<T>(slot: Slot<T>): T | undefined {
		const { value, setAside } = this.#saved.load(slot);
		this.#note(setAside);
		return value;
	}

	/** Keeps something as a whole. Gives whether the browser does. */
	keep(key: string, value: unknown): boolean {
		const kept = this.#saved.keepWhole(key, value);
		this.#note(undefined);
		return kept;
	}

	/** Keeps something that another tab may have changed too. Gives it with what that tab did. */
	settle<T>(slot: Slot<T>, ours: T): T {
		const { value, setAside } = this.#saved.keep(slot, ours);
		this.#note(setAside);
		return value;
	}

	/** Changes settings. Gives whether the browser keeps them. */
	change(settings: Partial<Settings>): boolean {
		const { value, kept, setAside } = this.#saved.keep(SETTINGS, { ...this.settings, ...settings });
		// One by one, so that only what depends on a changed setting is worked again.
		Object.assign(this.settings, value);
		this.#note(setAside);
		return kept;
	}

	/**
	 * Saves an own body under its id, new or known. Gives whether the browser keeps it; one that could not
	 * be read back is not taken at all.
	 */
	saveBody(id: string, file: OwnBodyFile): boolean {
		if (!ownBodySchema.safeParse({ id, file }).success) return false;
		const known = this.own.some((each) => each.id === id);
		return this.#keepOwn(
			known ? this.own.map((each) => (each.id === id ? { id, file } : each)) : [...this.own, { id, file }]
		);
	}

	/** A new own body with nothing measured yet; gives its id. One that has no name is called so in every language. */
	newBody(name = this.unnamed()): string {
		let id = `own-${Date.now().toString(36)}`;
		while (this.own.some((each) => each.id === id)) id += 'x';
		this.saveBody(id, { ...(name !== this.unnamed() && { name }), unit: this.unit, allowances: {} });
		return id;
	}

	/** The own body that a measuring lesson writes to: the chosen one, or the first, made where there is none. */
	ownBody(): { readonly id: string; readonly file: OwnBodyFile } | undefined {
		return this.own.find(({ id }) => id === this.settings.body) ?? this.own[0];
	}

	/** Forgets an own body. Its drafts stay until the browser's store is cleared. */
	removeBody(id: string): void {
		this.#keepOwn(this.own.filter((each) => each.id !== id));
		if (this.settings.body === id) this.change({ body: 'heron' });
	}

	/** Closes a message of something set aside. */
	dismiss(savedAs: string): void {
		this.setAside = this.setAside.filter((each) => each.savedAs !== savedAs);
	}

	/** Throws away what had to be left in its place, so that new work can be kept there. */
	discard(savedAs: string): void {
		this.#saved.remove(savedAs);
		this.dismiss(savedAs);
		this.#note(undefined);
	}

	/** Takes own bodies up as they were saved; measurements under the names that they had are kept under those that they have. */
	#take(own: readonly OwnBody[]): void {
		this.own = own;
		if (!own.some(({ file }) => isFormer(file))) return;
		this.renamed = true;
		this.#keepOwn(own.map(({ id, file }) => ({ id, file: underNewNames(file) })));
	}

	#keepOwn(own: readonly OwnBody[]): boolean {
		const { value, kept, setAside } = this.#saved.keep(BODIES, own);
		this.own = value;
		this.#note(setAside);
		return kept;
	}

	#note(setAside: SetAside | undefined): void {
		untrack(() => {
			if (setAside) this.setAside.push(setAside);
			this.keeps = this.#saved.keepsAll;
		});
	}

	#firstBody(): ChoosableBody {
		const [first] = this.bodies;
		if (!first) throw new Error('there is no demo body');
		return first;
	}
}
