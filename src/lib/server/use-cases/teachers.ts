import type { Transaction } from 'kysely';
import { z } from 'zod';
import { newId } from '../people/ids.ts';
import { id, knownAs, name } from '../people/shapes.ts';
import { Refused } from '../refused.ts';
import { isTaken } from '../store/store.ts';
import type { Tables } from '../store/tables.ts';
import { useCase } from '../use-case.ts';
import type { World } from '../world.ts';
import { taught } from './classes.ts';

/** Who teaches a class, in the order in which they came to it. */
const teachersOf = ({ db }: Pick<World['store'], 'db'>, inClass: string) =>
	db
		.selectFrom('teaching')
		.innerJoin('people', 'people.id', 'teaching.teacher')
		.select(['people.id', 'people.name'])
		.where('teaching.class', '=', inClass)
		.orderBy('teaching.id')
		.execute();

/** The teachers of a class. */
export const readTeachers = useCase({
	who: 'teacher',
	input: z.strictObject({ class: id }),
	run: async (asked, { world, caller }) =>
		teachersOf(world.store, (await taught(world, caller, asked.class)).id)
});

/** Lets a colleague who is a teacher here teach a class as well, with every right that the caller has in it. */
export const addTeacher = useCase({
	who: 'teacher',
	input: z.strictObject({ class: id, name }),
	run: async (typed, { world, caller }): Promise<void> => {
		const { id: found } = await taught(world, caller, typed.class);
		const { db } = world.store;
		const colleague = await db
			.selectFrom('people')
			.select('id')
			.where('class', 'is', null)
			.where('known_as', '=', knownAs(typed.name))
			.executeTakeFirst();
		if (!colleague) throw new Refused('noTeacher');
		const row = { id: newId(world.now()), class: found, teacher: colleague.id };
		try {
			await db.insertInto('teaching').values(row).execute();
		} catch (problem) {
			// Somebody did it before: it is as it should be.
			if (!isTaken(problem)) throw problem;
		}
	}
});

/** Whole transactions of a store. */
type Whole = Transaction<Tables>;

/**
 * Holds classes until a transaction ends: whoever else gives one of them up waits, and counts its teachers after that. In a folder
 * nobody else writes meanwhile.
 */
const hold = async (
	whole: Whole,
	kind: World['store']['kind'],
	classes: readonly string[]
): Promise<void> => {
	if (kind === 'folder' || classes.length === 0) return;
	const rows = whole.selectFrom('classes').select('id').where('id', 'in', classes).orderBy('id');
	await rows.forNoKeyUpdate().execute();
};

/** Takes a class from one of its teachers, or gives it up. Throws Refused where nobody would teach it any more. */
export const takeClassFrom = useCase({
	who: 'teacher',
	input: z.strictObject({ class: id, teacher: id }),
	run: async (asked, { world, caller }): Promise<void> => {
		const { store } = world;
		const { id: found } = await taught(world, caller, asked.class);
		await store.db.transaction().execute(async (whole) => {
			await hold(whole, store.kind, [found]);
			const teachers = await teachersOf({ db: whole }, found);
			if (!teachers.some((each) => each.id === asked.teacher)) throw new Refused('notThere');
			if (teachers.length === 1) throw new Refused('onlyTeacher');
			await whole
				.deleteFrom('teaching')
				.where('class', '=', found)
				.where('teacher', '=', asked.teacher)
				.execute();
		});
	}
});

const ownClassesOf = ({ db }: Pick<World['store'], 'db'>, teacher: string) =>
	db
		.selectFrom('teaching')
		.innerJoin('classes', 'classes.id', 'teaching.class')
		.select(['classes.id', 'classes.name', 'classes.since'])
		.where('teaching.teacher', '=', teacher)
		.orderBy('classes.id')
		.execute();

/** Everything that is kept of the teacher who asks; of a passphrase there is only that it is hashed. What is kept of their learners is the learners'. */
export const exportTeacher = useCase({
	who: 'teacher',
	input: z.strictObject({}),
	run: async (_, { world, caller }) => {
		const { db } = world.store;
		const person = await db
			.selectFrom('people')
			.select(['id', 'role', 'name', 'since'])
			.where('id', '=', caller.id)
			.executeTakeFirstOrThrow();
		const sessions = await db
			.selectFrom('sessions')
			.select('until')
			.where('person', '=', caller.id)
			.execute();
		const links = await db
			.selectFrom('invitations')
			.select(['until', 'person'])
			.where((each) => each.or([each('by', '=', caller.id), each('person', '=', caller.id)]))
			.execute();
		const until = (own: boolean) =>
			links.filter(({ person: whose }) => (whose !== null) === own).map((link) => link.until);
		return {
			person,
			classes: await ownClassesOf(world.store, caller.id),
			signedInUntil: sessions.map((session) => session.until),
			linksForColleaguesUntil: until(false),
			linksToComeAgainUntil: until(true)
		};
	}
});

/** Removes the teacher who asks. Their classes stay with those who teach them too; throws Refused where there is nobody else. */
export const removeTeacher = useCase({
	who: 'teacher',
	input: z.strictObject({}),
	run: async (_, { world: { store }, caller }): Promise<void> =>
		store.db.transaction().execute(async (whole) => {
			// Nobody gives the teacher another class until this is done.
			const self = whole.selectFrom('people').select('id').where('id', '=', caller.id);
			await (store.kind === 'postgres' ? self.forUpdate() : self).execute();
			const own = (await ownClassesOf({ db: whole }, caller.id)).map((each) => each.id);
			await hold(whole, store.kind, own);
			for (const each of own)
				if ((await teachersOf({ db: whole }, each)).length === 1) throw new Refused('onlyTeacher');
			await whole.deleteFrom('people').where('id', '=', caller.id).execute();
		})
});
