import type { World } from '../world.ts';
import { hashOf, newSecret } from './ids.ts';

/** How long a link that makes a teacher is good, in milliseconds: a week. */
const GOOD_FOR = 7 * 24 * 60 * 60_000;

/** A new link's secret; `by` is the teacher who invites, null for the first teacher of all. */
export const newInvitation = async (
	{ store: { db }, now }: Pick<World, 'store' | 'now'>,
	by: string | null
): Promise<string> => {
	const secret = newSecret();
	await db.deleteFrom('invitations').where('until', '<=', now()).execute();
	await db
		.insertInto('invitations')
		.values({ id: hashOf(secret), by, until: now() + GOOD_FOR })
		.execute();
	return secret;
};

/** Where a link leads to. */
export const invitationPath = (secret: string): string => `/class?link=${secret}`;

/** The path that makes the first teacher, for whoever starts the server; undefined where there is one. An earlier one is no good any more. */
export const firstTeacherPath = async (world: Pick<World, 'store' | 'now'>): Promise<string | undefined> => {
	const { db } = world.store;
	const teacher = await db.selectFrom('people').select('id').where('role', '=', 'teacher').executeTakeFirst();
	if (teacher) return undefined;
	await db.deleteFrom('invitations').where('by', 'is', null).execute();
	return invitationPath(await newInvitation(world, null));
};
