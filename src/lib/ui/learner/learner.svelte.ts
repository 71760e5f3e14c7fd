import { DEMO_BODIES } from '#shared/bodies/index.ts';
import { readBody, type Body } from '#shared/body.ts';
import { load, save, savedKey, type SetAside } from '../saved/saved.ts';
import { ownBodiesSchema, settingsSchema, type OwnBodyFile, type Settings } from '../saved/schemas.ts';

const SETTINGS = savedKey('settings');
const BODIES = savedKey('bodies');

/** A body that can be drafted for: an invented one of the course, or the learner's own. */
export interface ChoosableBody {
	readonly id: string;
	readonly own: boolean;
	readonly body: Body;
}

/** The units that the screens offer. */
export type ScreenUnit = Settings['unit'];

/**
 * The learner at this browser: units, the chosen body, own bodies. Before the browser's store is
 * read (and on the server) it is a visitor who drafts for the first demo body in centimetres.
 */
export class Learner {
	settings: Settings = $state(settingsSchema.parse({}));
	own: { id: string; file: OwnBodyFile }[] = $state([]);
	/** What could not be read back, told once until dismissed. */
	setAside: SetAside[] = $state([]);
	/** False once the browser has refused to keep something. */
	keeps = $state(true);
	/** Whether the store has been read. */
	loaded = $state(false);

	readonly bodies: readonly ChoosableBody[] = $derived([
		...DEMO_BODIES.map(({ id, body }) => ({ id, own: false, body })),
		...this.own.map(({ id, file }) => ({ id, own: true, body: readBody(file, '', 'My body') }))
	]);
	readonly current: ChoosableBody = $derived(
		this.bodies.find(({ id }) => id === this.settings.body) ?? this.#firstBody()
	);
	readonly unit: ScreenUnit = $derived(this.settings.unit);

	/** Reads the browser's store; called once, when the page has come alive. */
	load(): void {
		if (this.loaded) return;
		this.settings = this.take(load(SETTINGS, 'Your settings', settingsSchema)) ?? this.settings;
		this.own = this.take(load(BODIES, 'Your own measurements', ownBodiesSchema))?.bodies ?? [];
		this.loaded = true;
	}

	/** Takes what was loaded, and keeps note of what had to be set aside. */
	take<T>({ value, setAside }: { value: T | undefined; setAside: SetAside | undefined }): T | undefined {
		if (setAside) this.setAside.push(setAside);
		return value;
	}

	/** Changes settings and saves them. */
	change(settings: Partial<Settings>): void {
		this.settings = { ...this.settings, ...settings };
		this.keep(SETTINGS, this.settings);
	}

	/** Saves a value, and notes when the browser will not. */
	keep(key: string, value: unknown): void {
		if (!save(key, value)) this.keeps = false;
	}

	/** Saves an own body under its id, new or known. */
	saveBody(id: string, file: OwnBodyFile): void {
		const known = this.own.some((each) => each.id === id);
		this.own = known
			? this.own.map((each) => (each.id === id ? { id, file } : each))
			: [...this.own, { id, file }];
		this.keep(BODIES, { version: 1, bodies: this.own });
	}

	/** A new own body with nothing measured yet; gives its id. */
	newBody(name = 'My measurements'): string {
		const id = `own-${Date.now().toString(36)}`;
		this.saveBody(id, { name, unit: this.unit, allowances: {} });
		return id;
	}

	/** The own body that a measuring lesson writes to: the chosen one, or the first, made where there is none. */
	ownBody(): { readonly id: string; readonly file: OwnBodyFile } | undefined {
		return this.own.find(({ id }) => id === this.settings.body) ?? this.own[0];
	}

	/** Forgets an own body. Its drafts stay until the browser's store is cleared. */
	removeBody(id: string): void {
		this.own = this.own.filter((each) => each.id !== id);
		this.keep(BODIES, { version: 1, bodies: this.own });
		if (this.settings.body === id) this.change({ body: 'heron' });
	}

	#firstBody(): ChoosableBody {
		const [first] = this.bodies;
		if (!first) throw new Error('there is no demo body');
		return first;
	}
}
