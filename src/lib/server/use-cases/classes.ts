import { z } from 'zod';
import { codeWords, newCode, newId } from '../people/ids.ts';
import { invitationPath } from '../people/invitations.ts';
import { id, name } from '../people/shapes.ts';
import { Refused } from '../refused.ts';
import { useCase } from '../use-case.ts';
import type { Caller, World } from '../world.ts';

/** How long a class is open to whoever knows its code, in milliseconds: two weeks. */
const OPEN_FOR = 14 * 24 * 60 * 60_000;

/** A class as its teacher sees it. */
export interface ClassSeen {
	readonly id: string;
	readonly name: string;
	/** As it is written on a board. */
	readonly code: string;
	/** Until when whoever knows the code may join; undefined where the class is closed. */
	readonly openUntil: number | undefined;
}

const seen = (
	row: { readonly id: string; readonly name: string; readonly code: string; readonly open_until: number },
	now: number
): ClassSeen => ({
	id: row.id,
	name: row.name,
	code: codeWords(row.code),
	openUntil: row.open_until > now ? row.open_until : undefined
});

/** A class that the caller teaches. Throws Refused where there is none, or it is another's. */
export const taught = async (
	{ store: { db }, now }: World,
	caller: Caller,
	wanted: string
): Promise<ClassSeen> => {
	const row = await db
		.selectFrom('classes')
		.innerJoin('teaching', 'teaching.class', 'classes.id')
		.selectAll('classes')
		.where('classes.id', '=', wanted)
		.where('teaching.teacher', '=', caller.id)
		.executeTakeFirst();
	if (!row) throw new Refused('notThere');
	return seen(row, now());
};

const oneClass = z.strictObject({ class: id });

/** Begins a class, open to whoever knows its code. */
export const startClass = useCase({
	who: 'teacher',
	input: z.strictObject({ name }),
	run: async (typed, { world: { store, now }, caller }): Promise<{ readonly class: string }> => {
		const at = now();
		const own = newId(at);
		const row = { id: own, name: typed.name, code: newCode(), open_until: at + OPEN_FOR, since: at };
		await store.db.transaction().execute(async (whole) => {
			await whole.insertInto('classes').values(row).execute();
			await whole
				.insertInto('teaching')
				.values({ id: newId(at), class: own, teacher: caller.id })
				.execute();
		});
		return { class: own };
	}
});

/** The classes that the caller teaches, in the order in which they were begun. */
export const ownClasses = useCase({
	who: 'teacher',
	input: z.strictObject({}),
	run: async (
		_,
		{ world: { store, now }, caller }
	): Promise<readonly (ClassSeen & { readonly learners: number })[]> => {
		const rows = await store.db
			.selectFrom('classes')
			.innerJoin('teaching', 'teaching.class', 'classes.id')
			.leftJoin('people', 'people.class', 'classes.id')
			.select(['classes.id', 'classes.name', 'classes.code', 'classes.open_until'])
			.select(({ fn }) => fn.count<number>('people.id').as('learners'))
			.where('teaching.teacher', '=', caller.id)
			.groupBy(['classes.id', 'classes.name', 'classes.code', 'classes.open_until'])
			.orderBy('classes.id')
			.execute();
		return rows.map((row) => ({ ...seen(row, now()), learners: row.learners }));
	}
});

/** One class with its learners, by name. */
export const readClass = useCase({
	who: 'teacher',
	input: oneClass,
	run: async (asked, { world, caller }) => {
		const found = await taught(world, caller, asked.class);
		const learners = await world.store.db
			.selectFrom('people')
			.select(['id', 'name', 'since'])
			.where('class', '=', found.id)
			.orderBy('known_as')
			.execute();
		return { ...found, learners };
	}
});

/** Opens a class to new learners under a new code, or closes it. Who is in it stays, and comes back by the code that is shown then. */
export const setJoining = useCase({
	who: 'teacher',
	input: z.strictObject({ class: id, open: z.boolean() }),
	run: async ({ class: asked, open }, { world, caller }): Promise<void> => {
		const { id: found } = await taught(world, caller, asked);
		const at = world.now();
		const change = open ? { code: newCode(), open_until: at + OPEN_FOR } : { open_until: at };
		await world.store.db.updateTable('classes').set(change).where('id', '=', found).execute();
	}
});

/** Removes a class with all its learners and all that they handed in. */
export const removeClass = useCase({
	who: 'teacher',
	input: oneClass,
	run: async (asked, { world, caller }): Promise<void> => {
		const { id: found } = await taught(world, caller, asked.class);
		await world.store.db.deleteFrom('classes').where('id', '=', found).execute();
	}
});

/** A link by which one colleague becomes a teacher here. */
export const inviteTeacher = useCase({
	who: 'teacher',
	input: z.strictObject({}),
	run: async (_, { world, caller }): Promise<{ readonly path: string }> => ({
		path: await invitationPath(world, caller.id)
	})
});
