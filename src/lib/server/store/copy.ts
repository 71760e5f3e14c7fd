import { createHash, type Hash } from 'node:crypto';
import { type Kysely, type Transaction } from 'kysely';
import { z } from 'zod';
import { BadInput } from '#shared/bad-input.ts';
import { message } from '#shared/speech/message.ts';
import { migrate, versionOf } from './migrate.ts';
import type { Store } from './store.ts';
import { COPIED, type Tables } from './tables.ts';

/** Rows that are read, or written, at once. A database takes some 32,000 values with one question. */
const AT_ONCE = 500;
/** First line of every backup. */
const KIND = 'square-across-backup';

type Copied = (typeof COPIED)[number];
type Row = Readonly<Record<string, string | number | null>>;
/** One table's rows, some at a time. */
interface Part {
	readonly table: Copied;
	readonly rows: readonly Row[];
}

/** How many rows of each table, and one hash over all that they hold: equal where the same is in two stores. */
export interface Contents {
	readonly counts: Readonly<Record<Copied, number>>;
	readonly hash: string;
}

/** Only what is alike for all tables: reading and writing rows by their id. */
type AnyTable = Kysely<Readonly<Record<Copied, { readonly id: string }>>>;

/** All rows of a store, table by table, in order of their ids. */
async function* partsOf(db: Kysely<Tables>): AsyncGenerator<Part> {
	const any = db as unknown as AnyTable;
	for (const table of COPIED) {
		let last = '';
		for (;;) {
			const rows = await any
				.selectFrom(table)
				.selectAll()
				.where('id', '>', last)
				.orderBy('id')
				.limit(AT_ONCE)
				.execute();
			if (rows.length > 0) yield { table, rows };
			if (rows.length < AT_ONCE) break;
			last = rows.at(-1)?.id ?? '';
		}
	}
}

/** Counts and hashes rows as they go by. */
class Tally {
	readonly #hash: Hash = createHash('sha256');
	readonly #counts = Object.fromEntries(COPIED.map((table) => [table, 0])) as Record<Copied, number>;

	/** @returns the line that a row is written as: its values by name, in the order of the names, alike from every database */
	take(table: Copied, row: Row): string {
		const sorted = Object.fromEntries(Object.entries(row).sort(([a], [b]) => (a < b ? -1 : 1)));
		const line = JSON.stringify({ table, row: sorted });
		this.#counts[table] += 1;
		this.#hash.update(`${line}\n`);
		return line;
	}

	done(): Contents {
		return { counts: this.#counts, hash: this.#hash.digest('hex') };
	}
}

/** What is in a store just now. */
export const contentsOf = async (db: Kysely<Tables>): Promise<Contents> => {
	const tally = new Tally();
	for await (const { table, rows } of partsOf(db)) for (const row of rows) tally.take(table, row);
	return tally.done();
};

/** Reads a store as it stands at one moment, whatever is written meanwhile. */
const atOnce = <T>({ db }: Store, read: (whole: Transaction<Tables>) => Promise<T>): Promise<T> =>
	db.transaction().setIsolationLevel('repeatable read').setAccessMode('read only').execute(read);

/**
 * Everything in a store as lines of JSON: a heading, the rows, and at the end how many there are and their hash.
 *
 * @param write takes a line, and waits until it is taken
 */
export const backUp = (store: Store, write: (line: string) => Promise<void>): Promise<Contents> =>
	atOnce(store, async (whole) => {
		await write(JSON.stringify({ kind: KIND, version: await versionOf(whole) }));
		const tally = new Tally();
		for await (const { table, rows } of partsOf(whole))
			for (const row of rows) await write(tally.take(table, row));
		const contents = tally.done();
		await write(JSON.stringify(contents));
		return contents;
	});

/** Throws BadInput where anything is in a store: what is put back, or moved, is put beside nothing. */
const mustBeEmpty = async (whole: Transaction<Tables>): Promise<void> => {
	const { counts } = await contentsOf(whole);
	const rows = Object.values(counts).reduce((sum, count) => sum + count, 0);
	// The first teacher's link, which every start makes where there is no teacher.
	if (rows > counts.invitations) throw new BadInput('', message('server', 'notEmpty', { rows }));
	await whole.deleteFrom('invitations').execute();
};

/** Writes rows into a store, and throws BadInput where what is in it then is not what was to be in it. */
const fill = async (
	whole: Transaction<Tables>,
	parts: AsyncIterable<Part>,
	wanted: () => Contents
): Promise<Contents> => {
	await mustBeEmpty(whole);
	const any = whole as unknown as AnyTable;
	for await (const { table, rows } of parts)
		await any
			.insertInto(table)
			.values([...rows] as never)
			.execute();
	const found = await contentsOf(whole);
	const { hash, counts } = wanted();
	if (found.hash !== hash || COPIED.some((table) => found.counts[table] !== counts[table]))
		throw new BadInput('', message('server', 'notTheSame', { had: counts, has: found.counts }));
	return found;
};

/** Copies a store into an empty one, all or nothing; what stands there afterwards is read again and compared. Throws BadInput. */
export const moveStore = (from: Store, to: Store): Promise<Contents> =>
	atOnce(from, async (whole) => {
		const wanted = await contentsOf(whole);
		return to.db.transaction().execute((target) => fill(target, partsOf(whole), () => wanted));
	});

const heading = z.object({ kind: z.literal(KIND), version: z.number().int().positive() });
const value = z.union([z.string(), z.number(), z.null()]);
const line = z.object({ table: z.enum(COPIED), row: z.record(z.string(), value) });
const ending = z.object({ counts: z.record(z.enum(COPIED), z.number()), hash: z.string() });

const parsed = (text: string, number: number): unknown => {
	try {
		return JSON.parse(text);
	} catch {
		throw new BadInput('', message('server', 'notBackup', { line: number }));
	}
};

/** The rows of a backup's lines, many at a time, and what its last line says that they are. */
class Backup {
	#wanted: Contents | undefined;
	#number = 1;

	constructor(readonly lines: AsyncIterator<string>) {}

	/** Throws BadInput where the first line is not a backup's. */
	async version(): Promise<number> {
		const { value: first = '' } = (await this.lines.next()) as { value?: string };
		const read = heading.safeParse(parsed(first, 1));
		if (!read.success) throw new BadInput('', message('server', 'notBackup', { line: 1 }));
		return read.data.version;
	}

	async *parts(): AsyncGenerator<Part> {
		let part: { table: Copied; rows: Row[] } | undefined;
		for (let next = await this.lines.next(); !next.done; next = await this.lines.next()) {
			this.#number += 1;
			const json = parsed(next.value, this.#number);
			const read = line.safeParse(json);
			if (!read.success) {
				this.#wanted = ending.safeParse(json).data;
				if (!this.#wanted) throw new BadInput('', message('server', 'notBackup', { line: this.#number }));
				break;
			}
			const { table, row } = read.data;
			if (part && (part.table !== table || part.rows.length === AT_ONCE)) {
				yield part;
				part = undefined;
			}
			part ??= { table, rows: [] };
			part.rows.push(row);
		}
		if (part) yield part;
	}

	/** Throws BadInput where the last line has not come: the file was cut short. */
	wanted(): Contents {
		if (!this.#wanted) throw new BadInput('', message('server', 'cutShort', { line: this.#number }));
		return this.#wanted;
	}
}

/**
 * Puts a backup back into an empty store, all or nothing, and brings its schema forward afterwards where an older program made
 * it. Throws BadInput.
 *
 * @param store as it stands, without its schema brought forward
 */
export const restore = async (store: Store, lines: AsyncIterator<string>): Promise<Contents> => {
	const backup = new Backup(lines);
	const version = await backup.version();
	const stands = await migrate(store.db, store.kind, version);
	if (stands !== version)
		throw new BadInput('', message('server', 'otherVersion', { has: stands, backup: version }));
	const contents = await store.db
		.transaction()
		.execute((whole) => fill(whole, backup.parts(), () => backup.wanted()));
	await migrate(store.db, store.kind);
	return contents;
};
