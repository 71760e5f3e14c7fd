import { z } from 'zod';
import { newId } from '../people/ids.ts';
import { id, knownAs, name } from '../people/shapes.ts';
import { Refused } from '../refused.ts';
import { isTaken } from '../store/store.ts';
import { useCase } from '../use-case.ts';
import type { World } from '../world.ts';
import { taught } from './classes.ts';

/** Who teaches a class, in the order in which they came to it. */
const teachersOf = ({ store: { db } }: World, inClass: string) =>
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
	run: async (asked, { world, caller }) => teachersOf(world, (await taught(world, caller, asked.class)).id)
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

/** Takes a class from one of its teachers, or gives it up. Throws Refused where nobody would teach it any more. */
export const takeClassFrom = useCase({
	who: 'teacher',
	input: z.strictObject({ class: id, teacher: id }),
	run: async (asked, { world, caller }): Promise<void> => {
		const { id: found } = await taught(world, caller, asked.class);
		const teachers = await teachersOf(world, found);
		if (!teachers.some((each) => each.id === asked.teacher)) throw new Refused('notThere');
		if (teachers.length === 1) throw new Refused('onlyTeacher');
		await world.store.db
			.deleteFrom('teaching')
			.where('class', '=', found)
			.where('teacher', '=', asked.teacher)
			.execute();
	}
});

const ownClassesOf = ({ store: { db } }: World, teacher: string) =>
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
		const links = await db.selectFrom('invitations').select('until').where('by', '=', caller.id).execute();
		return {
			person,
			classes: await ownClassesOf(world, caller.id),
			signedInUntil: sessions.map(({ until }) => until),
			linksForColleaguesUntil: links.map(({ until }) => until)
		};
	}
});

/** Removes the teacher who asks. Their classes stay with those who teach them too; throws Refused where there is nobody else. */
export const removeTeacher = useCase({
	who: 'teacher',
	input: z.strictObject({}),
	run: async (_, { world, caller }): Promise<void> => {
		for (const { id: each } of await ownClassesOf(world, caller.id))
			if ((await teachersOf(world, each)).length === 1) throw new Refused('onlyTeacher');
		await world.store.db.deleteFrom('people').where('id', '=', caller.id).execute();
	}
});
