import { z } from 'zod';
import { hashOf, newId, readCode } from '../people/ids.ts';
import { hashPassphrase, isPassphrase } from '../people/passphrases.ts';
import { orTaken } from '../people/one-name.ts';
import { newSession } from '../people/sessions.ts';
import { code, knownAs, name, passphrase, tried } from '../people/shapes.ts';
import { countTry, fromAddress } from '../people/tries.ts';
import { Refused } from '../refused.ts';
import { useCase } from '../use-case.ts';
import type { World } from '../world.ts';

/** Whoever came in: the secret that their browser is to keep. */
interface CameIn {
	readonly secret: string;
}

/** The most learners of a class. */
const MOST_LEARNERS = 300;

/** Makes a teacher of whoever has a link that was not used: the first by the link that the server prints, others by a teacher's. */
export const becomeTeacher = useCase({
	who: 'anybody',
	input: z.strictObject({ link: z.string().max(100), name, passphrase }),
	run: async (typed, { world, address }): Promise<CameIn> => {
		const { store, now } = world;
		const giveBack = await countTry(world, [fromAddress(address)]);
		const hash = await hashPassphrase(typed.passphrase, world.cost);
		const id = newId(now());
		const made = store.db.transaction().execute(async (whole) => {
			const link = await whole
				.deleteFrom('invitations')
				.where('id', '=', hashOf(typed.link))
				.where('person', 'is', null)
				.where('until', '>', now())
				.returning('id')
				.executeTakeFirst();
			if (!link) throw new Refused('linkUsed');
			const person = {
				id,
				role: 'teacher',
				name: typed.name,
				known_as: knownAs(typed.name),
				class: null
			} as const;
			await whole
				.insertInto('people')
				.values({ ...person, passphrase: hash, since: now() })
				.execute();
		});
		await orTaken(made);
		await giveBack();
		return { secret: await newSession(world, id) };
	}
});

/** The person whose passphrase this is. Throws Refused, without saying what is wrong. */
const mustBe = async (
	{ store: { db }, cost }: World,
	known: { readonly class: string | null; readonly name: string },
	typed: string
): Promise<string> => {
	const person = await db
		.selectFrom('people')
		.select(['id', 'passphrase'])
		.where('class', known.class === null ? 'is' : '=', known.class)
		.where('known_as', '=', knownAs(known.name))
		.executeTakeFirst();
	if (!(await isPassphrase(typed, person?.passphrase, cost)) || !person) throw new Refused('notTogether');
	return person.id;
};

/** A teacher comes back, by name and passphrase. */
export const signIn = useCase({
	who: 'anybody',
	input: z.strictObject({ name, passphrase: tried }),
	run: async (typed, { world, address }): Promise<CameIn> => {
		const limits = [fromAddress(address), { of: 'name', whom: `teacher ${knownAs(typed.name)}` }] as const;
		const giveBack = await countTry(world, limits);
		const person = await mustBe(world, { class: null, name: typed.name }, typed.passphrase);
		await giveBack();
		return { secret: await newSession(world, person) };
	}
});

const classByCode = ({ store: { db } }: World, typed: string) =>
	db
		.selectFrom('classes')
		.select(['id', 'open_until'])
		.where('code', '=', readCode(typed))
		.executeTakeFirst();

/** A learner comes back to their class, by its code, their name and their passphrase; also where the class is closed to new ones. */
export const comeBack = useCase({
	who: 'anybody',
	input: z.strictObject({ code, name, passphrase: tried }),
	run: async (typed, { world, address }): Promise<CameIn> => {
		const found = await classByCode(world, typed.code);
		const whom = `${found?.id ?? readCode(typed.code)} ${knownAs(typed.name)}`;
		const giveBack = await countTry(world, [fromAddress(address), { of: 'name', whom }]);
		// No learner is of no class: teachers are, so they are not looked for.
		const known = { class: found?.id ?? 'none', name: typed.name };
		const person = await mustBe(world, known, typed.passphrase);
		await giveBack();
		return { secret: await newSession(world, person) };
	}
});

/** A learner joins a class by its code, under a name that nobody in it has. */
export const join = useCase({
	who: 'anybody',
	input: z.strictObject({ code, name, passphrase }),
	run: async (typed, { world, address }): Promise<CameIn> => {
		const { store, now } = world;
		const giveBack = await countTry(world, [fromAddress(address)]);
		const found = await classByCode(world, typed.code);
		if (!found || found.open_until <= now()) throw new Refused('noOpenClass');
		const { learners } = await store.db
			.selectFrom('people')
			.select(({ fn }) => fn.countAll<number>().as('learners'))
			.where('class', '=', found.id)
			.executeTakeFirstOrThrow();
		if (learners >= MOST_LEARNERS) throw new Refused('classFull');
		// Not given back: whoever joins counts.
		await countTry(world, [{ of: 'joining', whom: found.id }]);
		const person = {
			id: newId(now()),
			role: 'learner',
			name: typed.name,
			known_as: knownAs(typed.name),
			class: found.id,
			passphrase: await hashPassphrase(typed.passphrase, world.cost),
			since: now()
		} as const;
		await orTaken(store.db.insertInto('people').values(person).execute());
		await giveBack();
		return { secret: await newSession(world, person.id) };
	}
});

/** Ends the session that the caller is signed in by. */
export const signOut = useCase({
	who: 'member',
	input: z.strictObject({}),
	run: async (_, { world, caller }): Promise<void> => {
		await world.store.db.deleteFrom('sessions').where('id', '=', caller.session).execute();
	}
});
