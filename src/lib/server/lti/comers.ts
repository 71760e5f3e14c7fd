import type { Transaction } from 'kysely';
import { hashOf, newCode, newId, newSecret } from '../people/ids.ts';
import { hashPassphrase } from '../people/passphrases.ts';
import { name as nameShape } from '../people/shapes.ts';
import type { PlatformRow, Tables } from '../store/tables.ts';
import type { World } from '../world.ts';
import type { Launch } from './message.ts';

const LONGEST_NAME = 60;

/** The class of a course of a platform, which is begun, closed to others, with the first who come from it. */
const classOf = async (
	whole: Transaction<Tables>,
	platform: PlatformRow,
	{ context }: Launch,
	at: number
): Promise<string> => {
	const key = hashOf(`${platform.id} course ${context?.id ?? ''}`);
	const known = await whole.selectFrom('courses').select('class').where('id', '=', key).executeTakeFirst();
	if (known) return known.class;
	const own = newId(at);
	const title = nameShape.safeParse((context?.title ?? platform.issuer).slice(0, LONGEST_NAME));
	const row = { id: own, name: title.data ?? platform.client.slice(0, LONGEST_NAME), code: newCode() };
	await whole
		.insertInto('classes')
		.values({ ...row, open_until: at, since: at })
		.execute();
	await whole.insertInto('courses').values({ id: key, class: own }).execute();
	return own;
};

/** Somebody who has come from a platform, and the class of their course. */
export interface Comer {
	readonly person: string;
	readonly class: string;
}

/** Whoever comes, who is made with the first time: a learner of one class, or a teacher, who teaches it. */
export const personOf = async (world: World, platform: PlatformRow, launch: Launch): Promise<Comer> => {
	// Nobody knows it: whoever came from a platform comes back by it.
	const passphrase = await hashPassphrase(newSecret(), world.cost);
	const at = world.now();
	return world.store.db.transaction().execute(async (whole) => {
		const inClass = await classOf(whole, platform, launch, at);
		const place = launch.isTeacher ? 'teacher' : inClass;
		const key = hashOf(`${platform.id} person ${launch.subject} ${place}`);
		const known = await whole.selectFrom('comers').select('person').where('id', '=', key).executeTakeFirst();
		const person = known?.person ?? newId(at);
		if (!known) {
			const shown = nameShape.safeParse((launch.name ?? '').slice(0, LONGEST_NAME));
			const row = {
				role: launch.isTeacher ? 'teacher' : 'learner',
				name: shown.data ?? `#${key.slice(0, 4)}`,
				// No name that is typed is this one: people of one name may come from a platform.
				known_as: `\t${key}`,
				class: launch.isTeacher ? null : inClass
			} as const;
			await whole
				.insertInto('people')
				.values({ id: person, ...row, passphrase, since: at })
				.execute();
			await whole.insertInto('comers').values({ id: key, person }).execute();
		}
		if (launch.isTeacher)
			await whole
				.insertInto('teaching')
				.values({ id: newId(at), class: inClass, teacher: person })
				.onConflict((conflict) => conflict.columns(['class', 'teacher']).doNothing())
				.execute();
		return { person, class: inClass };
	});
};
