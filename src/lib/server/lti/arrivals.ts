import { hashOf, newSecret } from '../people/ids.ts';
import { Refused } from '../refused.ts';
import type { ArrivalRow } from '../store/tables.ts';
import type { World } from '../world.ts';
import type { Choice } from './message.ts';

/** How long somebody may be on their way from a platform, in milliseconds. */
const ON_THE_WAY = 10 * 60_000;

/** A choice of links that a teacher has been asked for. */
export interface OpenChoice extends Choice {
	/** The class whose assignments can be linked to. */
	readonly class: string;
}

/** A secret that is good once, for somebody on their way; what is not said of them is not known yet. */
export const newTicket = async (
	{ store: { db }, now }: World,
	known: Pick<ArrivalRow, 'platform'> & Partial<ArrivalRow>
): Promise<string> => {
	const secret = newSecret();
	await db.deleteFrom('arrivals').where('until', '<=', now()).execute();
	const nothing = { nonce: null, person: null, to: null, choice: null };
	await db
		.insertInto('arrivals')
		.values({ ...nothing, ...known, id: hashOf(secret), until: now() + ON_THE_WAY })
		.execute();
	return secret;
};

/** Takes what was kept of somebody's way, so that it is good once. */
export const taken = async ({ store: { db }, now }: World, secret: string) => {
	const found = await db
		.deleteFrom('arrivals')
		.where('id', '=', hashOf(secret))
		.returningAll()
		.executeTakeFirst();
	if (!found || found.until <= now()) throw new Refused('launchOver');
	return found;
};
