import type { Caller, World } from '../world.ts';
import type { Store } from '../store/store.ts';
import { togetherIn } from '../together.ts';
import { hashOf, newSecret } from './ids.ts';

/** How long somebody stays signed in who does not come back, in milliseconds: two weeks, from lesson to lesson. */
export const STAYS = 14 * 24 * 60 * 60_000;

/** Signs somebody in. Gives the secret that their browser is to keep. */
export const newSession = async ({ store: { db }, now }: World, person: string): Promise<string> => {
	const secret = newSecret();
	await db.deleteFrom('sessions').where('until', '<=', now()).execute();
	await db
		.insertInto('sessions')
		.values({ id: hashOf(secret), person, until: now() + STAYS })
		.execute();
	return secret;
};

/** Who is signed in by some sessions, each with its end. Many requests ask at once when a class hands in. */
const signedIn = togetherIn(async ({ db }: Store, sessions: readonly string[]) => {
	const rows = await db
		.selectFrom('sessions')
		.innerJoin('people', 'people.id', 'sessions.person')
		.select(['people.id', 'people.name', 'people.role', 'people.class'])
		.select(['sessions.id as session', 'sessions.until'])
		.where('sessions.id', 'in', [...new Set(sessions)])
		.execute();
	const found = new Map(rows.map((row) => [row.session, row]));
	return sessions.map((each) => found.get(each));
});

/** Whoever a browser's secret belongs to; undefined where it is none, or none any more. Whoever comes back stays signed in. */
export const callerOf = async ({ store, now }: World, secret: string): Promise<Caller | undefined> => {
	const session = hashOf(secret);
	const found = await signedIn(store, session);
	if (!found || found.until <= now()) return undefined;
	const { until, ...person } = found;
	// Not at every request: a write waits for the disk.
	if (until - now() < STAYS / 2)
		await store.db
			.updateTable('sessions')
			.set({ until: now() + STAYS })
			.where('id', '=', session)
			.execute();
	return person;
};
