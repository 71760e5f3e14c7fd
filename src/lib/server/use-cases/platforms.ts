import { z } from 'zod';
import { safeAddress } from '../lti/message.ts';
import { newId } from '../people/ids.ts';
import { id } from '../people/shapes.ts';
import { Refused } from '../refused.ts';
import { isTaken } from '../store/store.ts';
import { useCase } from '../use-case.ts';

const LONGEST = 255;
const given = z.string().trim().min(1).max(LONGEST);
/** Lets whoever comes from a learning platform in: what its keeper says of it. Its teachers become teachers here. */
export const addPlatform = useCase({
	who: 'teacher',
	input: z.strictObject({
		issuer: given,
		client: given,
		deployment: given,
		authorize: given.pipe(safeAddress),
		keys: given.pipe(safeAddress),
		/** Left empty where no marks are to be sent. */
		token: z.union([z.literal(''), given.pipe(safeAddress)]).default('')
	}),
	run: async (typed, { world: { store, now }, caller }): Promise<void> => {
		const row = { ...typed, token: typed.token || null, id: newId(now()), by: caller.id, since: now() };
		try {
			await store.db.insertInto('platforms').values(row).execute();
		} catch (problem) {
			if (isTaken(problem)) throw new Refused('platformKnown');
			throw problem;
		}
	}
});

/** The learning platforms that people come from. */
export const allPlatforms = useCase({
	who: 'teacher',
	input: z.strictObject({}),
	run: async (_, { world: { store } }) =>
		store.db.selectFrom('platforms').select(['id', 'issuer', 'client', 'deployment']).orderBy('id').execute()
});

/** Lets nobody in any more from a platform, but for whoever is signed in. Who came from it stays in their class. */
export const removePlatform = useCase({
	who: 'teacher',
	input: z.strictObject({ platform: id }),
	run: async (asked, { world: { store } }): Promise<void> => {
		const gone = await store.db
			.deleteFrom('platforms')
			.where('id', '=', asked.platform)
			.returning('id')
			.executeTakeFirst();
		if (!gone) throw new Refused('notThere');
	}
});
