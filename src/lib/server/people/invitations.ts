import type { World } from '../world.ts';
import { hashOf, newSecret } from './ids.ts';
import { knownAs } from './shapes.ts';

/** How long a link that makes a teacher is good, in milliseconds: a week. */
const GOOD_FOR = 7 * 24 * 60 * 60_000;

/**
 * A new link's secret.
 *
 * @param by the teacher who invites; null for a link of the server's own
 * @param person the teacher who is let in again by it; null where it makes a new one
 */
const newLink = async (
	{ store: { db }, now }: Pick<World, 'store' | 'now'>,
	by: string | null,
	person: string | null = null
): Promise<string> => {
	const secret = newSecret();
	await db.deleteFrom('invitations').where('until', '<=', now()).execute();
	await db
		.insertInto('invitations')
		.values({ id: hashOf(secret), by, person, until: now() + GOOD_FOR })
		.execute();
	return secret;
};

/** Where a link leads to. */
const pathOf = (secret: string): string => `/class?link=${secret}`;

/** The path by which a colleague becomes a teacher; `by` is who invites. */
export const invitationPath = async (world: Pick<World, 'store' | 'now'>, by: string): Promise<string> =>
	pathOf(await newLink(world, by));

/** The path by which a teacher chooses a new passphrase; undefined where there is no teacher of the name. An earlier one is no good any more. */
export const returnPath = async (
	world: Pick<World, 'store' | 'now'>,
	name: string
): Promise<string | undefined> => {
	const { db } = world.store;
	const teacher = await db
		.selectFrom('people')
		.select(['id', 'name'])
		.where('class', 'is', null)
		.where('known_as', '=', knownAs(name))
		.executeTakeFirst();
	if (!teacher) return undefined;
	await db.deleteFrom('invitations').where('person', '=', teacher.id).execute();
	const secret = await newLink(world, null, teacher.id);
	return `${pathOf(secret)}&again=${encodeURIComponent(teacher.name)}`;
};

/** The path that makes the first teacher, for whoever starts the server; undefined where there is one. An earlier one is no good any more. */
export const firstTeacherPath = async (world: Pick<World, 'store' | 'now'>): Promise<string | undefined> => {
	const { db } = world.store;
	const teacher = await db.selectFrom('people').select('id').where('role', '=', 'teacher').executeTakeFirst();
	if (teacher) return undefined;
	await db.deleteFrom('invitations').where('by', 'is', null).execute();
	return pathOf(await newLink(world, null));
};
