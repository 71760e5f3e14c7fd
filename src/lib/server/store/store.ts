import { Kysely } from 'kysely';
import { BadInput } from '#shared/bad-input.ts';
import { message } from '#shared/speech/message.ts';
import type { StorePlace } from '../settings.ts';
import { migrate } from './migrate.ts';
import { postgresAt } from './postgres.ts';
import { sqliteIn } from './sqlite.ts';
import type { Tables } from './tables.ts';

/** The database of a school's classes. */
export interface Store {
	readonly kind: StorePlace['kind'];
	readonly db: Kysely<Tables>;
	close(): Promise<void>;
}

/** The code of what a database or the system says; SQLite's own name where it has one. */
const codeOf = (problem: unknown): string => {
	if (!(problem instanceof Error)) return String(problem);
	const { code, sqliteCodeName } = problem as { code?: string; sqliteCodeName?: string };
	return sqliteCodeName ?? code ?? problem.name;
};

/** Connects to a store, as it stands. Throws BadInput where its folder cannot be used. */
export const connect = (place: StorePlace): Store => {
	try {
		const db = new Kysely<Tables>({
			dialect: place.kind === 'folder' ? sqliteIn(place.folder) : postgresAt(place.url)
		});
		return { kind: place.kind, db, close: () => db.destroy() };
	} catch (problem) {
		throw new BadInput(placeWords(place), message('server', 'cannotOpen', { code: codeOf(problem) }));
	}
};

/** A store's place in words: a database without its password. */
export const placeWords = (place: StorePlace): string => {
	if (place.kind === 'folder') return place.folder;
	const { host, pathname } = new URL(place.url);
	return `postgres://${host}${pathname}`;
};

/** Opens a store and brings its schema forward. Throws BadInput, naming the place, where it cannot be reached. */
export const openStore = async (place: StorePlace): Promise<Store> => {
	const store = connect(place);
	try {
		await migrate(store.db, store.kind);
		return store;
	} catch (problem) {
		await store.close();
		if (problem instanceof BadInput) throw new BadInput(placeWords(place), problem.slip);
		throw new BadInput(placeWords(place), message('server', 'cannotOpen', { code: codeOf(problem) }));
	}
};

/** SQLite's own numbers for a second row of what may be there once: by a unique index, by the primary key. */
const TAKEN = [2067, 1555];

/** Whether a database says that something is there already which may be there once. */
export const isTaken = (problem: unknown): boolean =>
	codeOf(problem) === '23505' ||
	TAKEN.includes((problem as { readonly sqliteExtendedCode?: number }).sqliteExtendedCode ?? 0);

/** What databases and the system say where a store cannot be reached, or cannot keep anything more just now. */
const OUT_OF_REACH =
	/^(E(CONN|TIMEDOUT|PIPE|NOTFOUND|NOSPC)|08|53|57P|SQLITE_(FULL|BUSY|IOERR|CANTOPEN|READONLY))/;
/** What the client of PostgreSQL says of a connection without any code. */
const CUT_OFF = /connection (terminated|timeout)|timeout exceeded/i;

/** Whether a store was not to be reached: what was asked may go well another time. */
export const isOutOfReach = (problem: unknown): boolean =>
	OUT_OF_REACH.test(codeOf(problem)) || (problem instanceof Error && CUT_OFF.test(problem.message));
