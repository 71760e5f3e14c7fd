import { Refused } from '../refused.ts';
import type { World } from '../world.ts';
import { hashOf, newId } from './ids.ts';

/** How long a wrong try counts, in milliseconds. */
const WINDOW = 10 * 60_000;

/** How many wrong tries there may be in that time. A class sits behind one address, so one address may err often. */
export const LIMITS = {
	/** From one address, at anything: 32^8 codes at this rate take longer than there are years. */
	address: 60,
	/** At one name of one class, or one teacher's. */
	name: 15,
	/** New learners of one class: a code that went round is not to fill a class with strangers. */
	joining: 100
} as const;

/** What is limited, and for whom. */
export interface Limit {
	readonly of: keyof typeof LIMITS;
	readonly whom: string;
}

/** The network that an address belongs to: a household has 2^64 addresses of version 6. */
const networkOf = (address: string): string =>
	address.includes(':') && !address.includes('.') ? address.split(':').slice(0, 4).join(':') : address;

export const fromAddress = (address: string): Limit => ({ of: 'address', whom: networkOf(address) });

/**
 * Counts a try against limits before it is made, so that many at once are no way round; whoever was right gives it back.
 * Throws Refused where there were too many.
 *
 * @returns gives the try back
 */
export const countTry = async (
	{ store: { db }, now }: World,
	limits: readonly Limit[]
): Promise<() => Promise<void>> => {
	const at = now();
	const rows = limits.map(({ of, whom }) => ({ id: newId(at), of: hashOf(`${of} ${whom}`), at }));
	await db
		.deleteFrom('tries')
		.where('at', '<=', at - WINDOW)
		.execute();
	await db.insertInto('tries').values(rows).execute();
	for (const [index, { of }] of rows.entries()) {
		const { count } = await db
			.selectFrom('tries')
			.select(({ fn }) => fn.countAll<number>().as('count'))
			.where('of', '=', of)
			.executeTakeFirstOrThrow();
		const limit = limits[index];
		if (limit && count > LIMITS[limit.of]) throw new Refused('tooMany');
	}
	return async () => {
		await db
			.deleteFrom('tries')
			.where(
				'id',
				'in',
				rows.map(({ id }) => id)
			)
			.execute();
	};
};
