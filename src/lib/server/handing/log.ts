import type { Transaction } from 'kysely';
import type { Answered } from '#shared/hand-in.ts';
import { hashOf } from '../people/ids.ts';
import { isTaken, type Store } from '../store/store.ts';
import type { Tables } from '../store/tables.ts';
import type { World } from '../world.ts';

/** The most events that one commit takes. */
const MOST_TOGETHER = 500;
/** The most events of one attempt: a learner who drafts every lesson of the course many times over needs fewer. */
const MOST_EVENTS = 50_000;

/** An event on its way into the log. */
export interface Arriving {
	/** The event's key, as the row's id. */
	readonly id: string;
	readonly attempt: string;
	readonly done: string;
}

interface Waiting {
	readonly event: Arriving;
	readonly land: (answered: Answered) => void;
	readonly fail: (problem: unknown) => void;
}

type Whole = Transaction<Tables>;
type Received = Map<string, { received: number; readonly before: number }>;
const attemptsOf = (events: readonly Arriving[]): string[] =>
	[...new Set(events.map(({ attempt }) => attempt))].sort();

/** The events of each attempt so far. In PostgreSQL nobody else may add to one until this is done; in a folder nobody else writes at all. */
const held = async (whole: Whole, kind: Store['kind'], attempts: readonly string[]): Promise<Received> => {
	const asked = whole
		.selectFrom('attempts')
		.select(['id', 'received'])
		.where('id', 'in', attempts)
		.orderBy('id');
	const rows = await (kind === 'postgres' ? asked.forUpdate() : asked).execute();
	return new Map(rows.map(({ id, received }) => [id, { received, before: received }]));
};

/** Writes events that came together, in the order in which they came, and says of each what became of it. */
const written = async (
	whole: Whole,
	kind: Store['kind'],
	events: readonly Arriving[],
	at: number
): Promise<readonly Answered[]> => {
	const received = await held(whole, kind, attemptsOf(events));
	const ids = events.map(({ id }) => id);
	const rows = await whole.selectFrom('events').selectAll().where('id', 'in', ids).execute();
	const known = new Map(rows.map((row) => [row.id, row]));
	const fresh: (typeof rows)[number][] = [];
	const aside: (Arriving & { readonly at: number })[] = [];
	const answers = events.map((event): Answered => {
		const { id, attempt, done } = event;
		const [same, count] = [known.get(id), received.get(attempt)];
		if (same?.done === done && same.attempt === attempt) return { number: same.number, at: same.at };
		// A learner who was removed meanwhile.
		if (!count) return { refused: 'notThere' };
		if (same) {
			aside.push({ ...event, id: id + hashOf(done), at });
			return { refused: 'conflict' };
		}
		if (count.received >= MOST_EVENTS) return { refused: 'full' };
		count.received += 1;
		const row = { id, attempt, number: count.received, at, done };
		known.set(id, row);
		fresh.push(row);
		return { number: row.number, at };
	});
	if (fresh.length > 0) await whole.insertInto('events').values(fresh).execute();
	if (aside.length > 0)
		await whole
			.insertInto('conflicts')
			.values(aside)
			.onConflict((conflict) => conflict.column('id').doNothing())
			.execute();
	for (const [id, { received: now, before }] of received)
		if (now > before)
			await whole.updateTable('attempts').set({ received: now }).where('id', '=', id).execute();
	return answers;
};

/**
 * The way into the log. What comes while the disk is busy is written together with the next commit, so that a class that hands
 * in at once waits for a few commits and not for one each. An event is answered only when the commit that holds it is done.
 */
class Log {
	#waiting: Waiting[] = [];
	#writing = false;

	constructor(
		readonly store: Store,
		readonly now: () => number
	) {}

	/** Adds an event. Throws what the store throws where nothing was kept. */
	add(event: Arriving): Promise<Answered> {
		return new Promise((land, fail) => {
			this.#waiting.push({ event, land, fail });
			if (!this.#writing) void this.#write();
		});
	}

	async #write(): Promise<void> {
		this.#writing = true;
		while (this.#waiting.length > 0) {
			const together = this.#waiting.splice(0, MOST_TOGETHER);
			try {
				const answers = await this.#commit(together.map(({ event }) => event));
				for (const [index, { land }] of together.entries()) land(answers[index] as Answered);
			} catch (problem) {
				for (const { fail } of together) fail(problem);
			}
		}
		this.#writing = false;
	}

	async #commit(events: readonly Arriving[], again = true): Promise<readonly Answered[]> {
		try {
			return await this.store.db
				.transaction()
				.execute((whole) => written(whole, this.store.kind, events, this.now()));
		} catch (problem) {
			// Another process wrote the same key between our look and our writing: the second look sees it.
			if (again && isTaken(problem)) return this.#commit(events, false);
			throw problem;
		}
	}
}

const logs = new WeakMap<Store, Log>();

/** The log of a store: one for all requests of this process. */
export const logOf = ({ store, now }: World): Pick<Log, 'add'> => {
	const log = logs.get(store) ?? new Log(store, now);
	logs.set(store, log);
	return log;
};
