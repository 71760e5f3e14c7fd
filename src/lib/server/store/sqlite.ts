import { mkdirSync } from 'node:fs';
import path from 'node:path';
import { DatabaseSync, type DatabaseSyncInstance } from '@photostructure/sqlite';
import {
	CompiledQuery,
	SqliteDialect,
	SqliteDriver,
	type DatabaseConnection,
	type SqliteDatabase,
	type TransactionSettings
} from 'kysely';

/** The file of the store in its folder. */
const FILE = 'classes.sqlite';
/** Only its owner may read what people have handed in. */
const OWNER_ONLY = 0o700;
/** How long one process waits for another that is writing, in milliseconds. */
const WAIT = 5_000;

/** What the query builder asks of a database, from Node's own interface. */
const asAsked = (db: DatabaseSyncInstance): SqliteDatabase => ({
	close: () => db.close(),
	prepare: (sql: string) => {
		const statement = db.prepare(sql);
		return {
			reader: statement.columns().length > 0,
			all: (values: readonly unknown[]): unknown[] => statement.all(...values),
			run: (values: readonly unknown[]) => statement.run(...values),
			iterate: (values: readonly unknown[]): IterableIterator<unknown> => statement.iterate(...values)
		};
	}
});

/** Begins whatever writes with the right to write: one that asks for it later may find that another process was faster. */
class Driver extends SqliteDriver {
	readonly #db: DatabaseSyncInstance;

	constructor(db: DatabaseSyncInstance) {
		super({ database: asAsked(db) });
		this.#db = db;
	}

	override async beginTransaction(
		connection: DatabaseConnection,
		{ accessMode }: TransactionSettings = {}
	): Promise<void> {
		await connection.executeQuery(
			CompiledQuery.raw(accessMode === 'read only' ? 'begin' : 'begin immediate')
		);
	}

	/** Where the disk is full the database has gone back by itself, and to do so again would hide why. */
	override async rollbackTransaction(connection: DatabaseConnection): Promise<void> {
		if (this.#db.isTransaction) await super.rollbackTransaction(connection);
	}
}

/** The database in a folder, which is made where it is missing. What was committed is on the disk: a loss of power takes nothing. */
export const sqliteIn = (folder: string): SqliteDialect => {
	mkdirSync(folder, { recursive: true, mode: OWNER_ONLY });
	const db = new DatabaseSync(path.join(folder, FILE));
	db.exec(`PRAGMA busy_timeout = ${WAIT}`);
	db.exec('PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; PRAGMA foreign_keys = ON');
	const dialect = new SqliteDialect({ database: asAsked(db) });
	dialect.createDriver = () => new Driver(db);
	return dialect;
};
