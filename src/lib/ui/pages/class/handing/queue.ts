import { openDB, type DBSchema, type IDBPDatabase } from 'idb';
import type { Done, EventKey, HandedEvent } from '#shared/hand-in.ts';

/**
 * What was done and has no receipt yet, in the browser's own database: it outlives the page, the browser and an update of the site.
 * Each learner of this browser has a part of their own. What the database will not keep is held in the page's memory.
 */

/** An event that waits, and whose it is. */
export interface Waiting extends HandedEvent {
	readonly learner: string;
	/** The place in the queue; undefined where only this page's memory has it. */
	readonly order?: number;
}

/** An event that the server did not take, and why: it is shown to nobody but kept, since nothing is thrown away. */
interface Aside extends HandedEvent {
	readonly learner: string;
	readonly because: string;
}

interface Kept extends DBSchema {
	waiting: { key: number; value: Waiting };
	aside: { key: number; value: Aside };
	/** One value: what this browser is called. */
	device: { key: string; value: string };
}

const NAME = 'square-across-hand-in';
const DEVICE_BYTES = 8;

/** Eight random bytes in hexadecimal letters; also where a page came over plain http. */
export const random = (): string =>
	[...crypto.getRandomValues(new Uint8Array(DEVICE_BYTES))]
		.map((byte) => byte.toString(16).padStart(2, '0'))
		.join('');

/** Which event two are: the same key is the same event. */
const same = (a: EventKey, b: EventKey): boolean =>
	a.device === b.device && a.tab === b.tab && a.sequence === b.sequence;

export class Queue {
	#opened: Promise<IDBPDatabase<Kept>> | undefined;
	#device: string | undefined;
	/** What the browser would not keep. */
	#held: readonly Waiting[] = [];

	constructor(readonly learner: string) {}

	/** Whether the browser keeps all that waits. */
	get keeps(): boolean {
		return this.#held.length === 0;
	}

	#open(): Promise<IDBPDatabase<Kept>> {
		const forget = (): void => (this.#opened = undefined);
		this.#opened ??= openDB<Kept>(NAME, 1, {
			upgrade: (db) => {
				for (const name of ['waiting', 'aside'] as const)
					db.createObjectStore(name, {
						autoIncrement: true,
						...(name === 'waiting' && { keyPath: 'order' })
					});
				db.createObjectStore('device');
			},
			// Closed by the browser, or asked to make way for a newer page: opened again with the next thing to keep.
			terminated: forget,
			blocking: (_, __, event) => {
				forget();
				(event.target as IDBDatabase).close();
			}
		});
		this.#opened.catch(forget);
		return this.#opened;
	}

	/** What this browser is called for ever; another at each page where it keeps nothing. */
	async device(): Promise<string> {
		if (this.#device !== undefined) return this.#device;
		this.#device = random();
		try {
			const db = await this.#open();
			const change = db.transaction('device', 'readwrite');
			const known = await change.store.get('id');
			if (known === undefined) await change.store.put(this.#device, 'id');
			else this.#device = known;
			await change.done;
		} catch {
			// A private window may have no database.
		}
		return this.#device;
	}

	/** Puts an event at the end. */
	async put(key: EventKey, done: Done): Promise<void> {
		const event = { key, done, learner: this.learner };
		try {
			const db = await this.#open();
			await db.add('waiting', event);
		} catch {
			this.#held = [...this.#held, event];
		}
	}

	/** All that waits, the eldest first, whichever page of this browser put it there. */
	async waiting(): Promise<readonly Waiting[]> {
		try {
			const db = await this.#open();
			const all = await db.getAll('waiting');
			return [...all.filter(({ learner }) => learner === this.learner), ...this.#held];
		} catch {
			return this.#held;
		}
	}

	/** Takes events out that have a receipt. */
	async remove(events: readonly Waiting[]): Promise<void> {
		this.#held = this.#held.filter(({ key }) => !events.some((each) => same(each.key, key)));
		const orders = events.flatMap(({ order }) => order ?? []);
		if (orders.length === 0) return;
		const db = await this.#open();
		const change = db.transaction('waiting', 'readwrite');
		await Promise.all([...orders.map((order) => change.store.delete(order)), change.done]);
	}

	/** Puts an event by that the server will never take: it is in the way of no other then. */
	async setAside(event: Waiting, because: string): Promise<void> {
		const { key, done, learner } = event;
		if (event.order !== undefined) await (await this.#open()).add('aside', { key, done, learner, because });
		await this.remove([event]);
	}
}
