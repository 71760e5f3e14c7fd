import { sql, type Kysely, type Transaction } from 'kysely';
import { BadInput } from '#shared/bad-input.ts';
import { message } from '#shared/speech/message.ts';
import { MIGRATIONS } from './migrations.ts';
import type { StorePlace } from '../settings.ts';
import type { Tables } from './tables.ts';

/** Any number, the same in every process: whoever migrates holds it. */
const LOCK = 418_019;

/** The step of the schema that a database stands at; 0 where it is new. */
export const versionOf = async (db: Kysely<Tables>): Promise<number> => {
	const found = await db
		.selectFrom('migrations')
		.select(({ fn }) => fn.max<number | null>('number').as('number'))
		.executeTakeFirst();
	return found?.number ?? 0;
};

/** Takes the steps that a database has not taken yet. */
const forward = async (whole: Transaction<Tables>, kind: StorePlace['kind'], to: number): Promise<number> => {
	// In the folder the transaction itself is the lock: src/lib/server/store/sqlite.ts begins each with it.
	if (kind === 'postgres') await sql`select pg_advisory_xact_lock(${LOCK})`.execute(whole);
	await whole.schema
		.createTable('migrations')
		.ifNotExists()
		.addColumn('number', 'integer', (column) => column.primaryKey())
		.addColumn('brings', 'text', (column) => column.notNull())
		.addColumn('at', 'bigint', (column) => column.notNull())
		.execute();
	const from = await versionOf(whole);
	if (from > MIGRATIONS.length)
		throw new BadInput('', message('server', 'newerStore', { has: from, knows: MIGRATIONS.length }));
	for (const [index, { brings, up }] of MIGRATIONS.slice(from, to).entries()) {
		await up(whole as unknown as Kysely<unknown>, kind);
		await whole
			.insertInto('migrations')
			.values({ number: from + index + 1, brings, at: Date.now() })
			.execute();
	}
	if (kind === 'folder') {
		const { rows } = await sql`pragma foreign_key_check`.execute(whole);
		if (rows.length > 0) throw new Error(`${rows.length} rows refer to rows that there are not`);
	}
	return Math.max(from, to);
};

/**
 * Brings the schema forward, in one transaction that nobody else can be in: of processes that start at once, one migrates and the
 * others find it done. Gives the step that it stands at. Throws BadInput where a newer program has been at it.
 *
 * @param to the step to go to, for a backup that an older program made
 */
export const migrate = async (
	db: Kysely<Tables>,
	kind: StorePlace['kind'],
	to = MIGRATIONS.length
): Promise<number> => {
	const take = (): Promise<number> => db.transaction().execute((whole) => forward(whole, kind, to));
	if (kind === 'postgres') return take();
	// A table that is made anew must not take with it what refers to it. SQLite leaves this as it is inside of a transaction.
	await sql`pragma foreign_keys = off`.execute(db);
	try {
		return await take();
	} finally {
		await sql`pragma foreign_keys = on`.execute(db);
	}
};
