import { z } from 'zod';
import { attemptAt } from '../handing/attempts.ts';
import { mustBeSettable, taskSchema } from '../handing/task.ts';
import { id, name } from '../people/shapes.ts';
import { Refused } from '../refused.ts';
import { useCase } from '../use-case.ts';
import { setBy } from './assignments.ts';

const MINUTE = 60_000;
/** The most time that one learner is given beyond the others', in minutes: four weeks. */
const MOST_EXTRA = 28 * 24 * 60;

/**
 * Sets something otherwise than it was, as long as nobody has handed anything in for it. Throws Refused after that: what was handed
 * in was drafted for what was asked then.
 */
export const changeAssignment = useCase({
	who: 'teacher',
	input: z.strictObject({ assignment: id, name, task: taskSchema }),
	run: async ({ assignment, name: called, task }, { world, caller }): Promise<void> => {
		const { id: found } = await setBy(world, caller, assignment);
		mustBeSettable(task, world.course);
		const { db, kind } = world.store;
		await db.transaction().execute(async (whole) => {
			const attempts = whole.selectFrom('attempts').select('received').where('assignment', '=', found);
			// Whoever hands in waits until this is done, or is before it.
			const rows = await (kind === 'postgres' ? attempts.forUpdate() : attempts).execute();
			if (rows.some(({ received }) => received > 0)) throw new Refused('frozen');
			await whole
				.updateTable('assignments')
				.set({ name: called, task: JSON.stringify(task) })
				.where('id', '=', found)
				.execute();
			// Who has only looked at it drafts for the body that is asked for now.
			await whole
				.updateTable('attempts')
				.set({ body: null, exercises: null })
				.where('assignment', '=', found)
				.execute();
		});
	}
});

/** Gives one learner more time than the others have, in minutes after the end; none takes it back. */
export const giveTime = useCase({
	who: 'teacher',
	input: z.strictObject({ assignment: id, learner: id, minutes: z.number().int().min(0).max(MOST_EXTRA) }),
	run: async ({ assignment, learner, minutes }, { world, caller }): Promise<void> => {
		const set = await setBy(world, caller, assignment);
		const { db } = world.store;
		const person = await db
			.selectFrom('people')
			.select('id')
			.where('id', '=', learner)
			.where('class', '=', set.class)
			.executeTakeFirst();
		if (!person) throw new Refused('notThere');
		await attemptAt(world, set.id, person.id);
		await db
			.updateTable('attempts')
			.set({ extra: minutes * MINUTE })
			.where('assignment', '=', set.id)
			.where('learner', '=', person.id)
			.execute();
	}
});
