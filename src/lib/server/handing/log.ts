import type { Transaction } from 'kysely';
import type { Answered } from '#shared/hand-in.ts';
import { hashOf } from '../people/ids.ts';
import { isTaken, type Store } from '../store/store.ts';
import type { Tables } from '../store/tables.ts';
import { togetherIn } from '../together.ts';
import type { World } from '../world.ts';

/** The most events of one attempt: a learner who drafts every lesson of the course many times over needs fewer. */
const MOST_EVENTS = 50_000;

/** An event on its way into the log. */
export interface Arriving {
	/** The event's key, as the row's id. */
	readonly id: string;
	readonly attempt: string;
	readonly done: string;
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

/** Counts what came in of each attempt, of all in one go: a class hands in together. */
const count = async (whole: Whole, received: Received): Promise<void> => {
	const [first, ...others] = [...received].filter(([, { received: now, before }]) => now > before);
	if (!first) return;
	await whole
		.updateTable('attempts')
		.set(({ eb }) => {
			const [id, { received: now }] = first;
			const begun = eb.case().when('id', '=', id).then(now);
			return {
				received: others
					.reduce((so, [each, { received: then }]) => so.when('id', '=', each).then(then), begun)
					.else(eb.ref('received'))
					.end()
			};
		})
		.where(
			'id',
			'in',
			[first, ...others].map(([id]) => id)
		)
		.execute();
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
	await count(whole, received);
	return answers;
};

/** Commits events that came together. */
const commit = async (
	{ store, now }: Pick<World, 'store' | 'now'>,
	events: readonly Arriving[],
	again = true
): Promise<readonly Answered[]> => {
	try {
		return await store.db.transaction().execute((whole) => written(whole, store.kind, events, now()));
	} catch (problem) {
		// Another process wrote the same key between our look and our writing: the second look sees it.
		if (again && isTaken(problem)) return commit({ store, now }, events, false);
		throw problem;
	}
};

/**
 * Adds an event to the log. What comes while the disk is busy is written together with the next commit; an event is answered only
 * when the commit that holds it is done. Throws what the store throws where nothing was kept.
 */
export const addToLog = togetherIn(commit);
