import { z } from 'zod';
import { eventsOf } from '../handing/attempts.ts';
import { commentsOn, overridesOf } from '../handing/remarks.ts';
import { newCode } from '../people/ids.ts';
import { hashPassphrase } from '../people/passphrases.ts';
import { orTaken } from '../people/one-name.ts';
import { id, knownAs, name } from '../people/shapes.ts';
import { Refused } from '../refused.ts';
import type { PersonRow } from '../store/tables.ts';
import { useCase } from '../use-case.ts';
import type { Caller, World } from '../world.ts';
import { taught } from './classes.ts';

const oneLearner = z.strictObject({ learner: id });

/** A learner of a class that the caller teaches, or the caller's own self. Throws Refused where there is none, or it is another's. */
const within = async (world: World, caller: Caller, wanted: string): Promise<PersonRow> => {
	const row = await world.store.db
		.selectFrom('people')
		.selectAll()
		.where('id', '=', wanted)
		.where('role', '=', 'learner')
		.executeTakeFirst();
	if (!row?.class) throw new Refused('notThere');
	if (caller.role === 'teacher') await taught(world, caller, row.class);
	else if (caller.id !== row.id) throw new Refused('notThere');
	return row;
};

/** What a learner's class is called. */
const classNamed = async ({ store: { db } }: World, id: string | null): Promise<string> => {
	const row = await db.selectFrom('classes').select('name').where('id', '=', id).executeTakeFirstOrThrow();
	return row.name;
};

/** All that a learner has handed in, as it came: every event of every assignment, with its receipt. */
const handedInBy = async (world: World, learner: string) => {
	const { db } = world.store;
	const attempts = await db
		.selectFrom('attempts')
		.innerJoin('assignments', 'assignments.id', 'attempts.assignment')
		.select(['attempts.id', 'assignments.name', 'attempts.body', 'attempts.number', 'attempts.exercises'])
		.where('learner', '=', learner)
		.orderBy('assignments.id')
		.orderBy('attempts.number')
		.execute();
	const all = [];
	for (const { id: attempt, name: assignment, body, number, exercises } of attempts) {
		const aside = await db
			.selectFrom('conflicts')
			.select(['at', 'done'])
			.where('attempt', '=', attempt)
			.orderBy('id')
			.execute();
		all.push({
			assignment,
			attempt: number,
			...(exercises === null ? {} : { exercises: JSON.parse(exercises) as unknown }),
			body: body === null ? null : (JSON.parse(body) as unknown),
			events: await eventsOf(world, attempt),
			marksGiven: (await overridesOf(world, [attempt])).map(({ id: _, attempt: __, ...each }) => each),
			comments: (await commentsOn(world, attempt)).map(({ id: _, ...each }) => each),
			keptAside: aside.map(({ at, done }) => ({ at, done: JSON.parse(done) as unknown }))
		});
	}
	return all;
};

/** What was sent of a learner to learning platforms, and as whom. */
const sentOf = async ({ store: { db } }: World, learner: string) => {
	const rows = await db
		.selectFrom('sendings')
		.select(['subject', 'score', 'stamp'])
		.where('person', '=', learner)
		.orderBy('id')
		.execute();
	return rows.map(({ subject, score, stamp }) => ({
		as: subject,
		score: score === null ? null : (JSON.parse(score) as unknown),
		at: stamp
	}));
};

/** Gives a learner another name. */
export const renameLearner = useCase({
	who: 'teacher',
	input: z.strictObject({ learner: id, name }),
	run: async (typed, { world, caller }): Promise<void> => {
		const { id: found } = await within(world, caller, typed.learner);
		const names = { name: typed.name, known_as: knownAs(typed.name) };
		await orTaken(world.store.db.updateTable('people').set(names).where('id', '=', found).execute());
	}
});

/** Gives a learner who has forgotten theirs a new passphrase, which is shown once; whoever is signed in as them is signed out. */
export const resetPassphrase = useCase({
	who: 'teacher',
	input: oneLearner,
	run: async (typed, { world, caller }): Promise<{ readonly passphrase: string; readonly name: string }> => {
		const { id: found, name: shown } = await within(world, caller, typed.learner);
		const passphrase = newCode();
		const hash = await hashPassphrase(passphrase, world.cost);
		await world.store.db.transaction().execute(async (whole) => {
			await whole.updateTable('people').set({ passphrase: hash }).where('id', '=', found).execute();
			await whole.deleteFrom('sessions').where('person', '=', found).execute();
		});
		return { passphrase, name: shown };
	}
});

/** Removes a learner with everything that is kept of them: by their teacher, or by themselves. */
export const removeLearner = useCase({
	who: 'member',
	input: oneLearner,
	run: async (typed, { world, caller }): Promise<void> => {
		const { id: found } = await within(world, caller, typed.learner);
		await world.store.db.deleteFrom('people').where('id', '=', found).execute();
	}
});

/** Everything that is kept of a learner, for themselves or their teacher; of a passphrase there is only that it is hashed. */
export const exportLearner = useCase({
	who: 'member',
	input: oneLearner,
	run: async (typed, { world, caller }) => {
		const { db } = world.store;
		const {
			class: inClass,
			passphrase: _,
			known_as: __,
			...person
		} = await within(world, caller, typed.learner);
		const sessions = await db
			.selectFrom('sessions')
			.select('until')
			.where('person', '=', person.id)
			.execute();
		return {
			person: { ...person, class: await classNamed(world, inClass) },
			signedInUntil: sessions.map(({ until }) => until),
			handedIn: await handedInBy(world, person.id),
			sent: await sentOf(world, person.id)
		};
	}
});

/** Who the learner is, and their class, for their own page. */
export const ownPage = useCase({
	who: 'learner',
	input: z.strictObject({}),
	run: async (_, { world, caller }): Promise<{ readonly name: string; readonly class: string }> => ({
		name: caller.name,
		class: await classNamed(world, caller.class)
	})
});
