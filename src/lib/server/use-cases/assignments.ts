import { z } from 'zod';
import { assignmentOf, bestOf, verdictsOf, type Assignment } from '../handing/attempts.ts';
import { mustBeSettable, taskSchema } from '../handing/task.ts';
import { newId } from '../people/ids.ts';
import { id, name } from '../people/shapes.ts';
import { Refused } from '../refused.ts';
import { useCase } from '../use-case.ts';
import type { Caller, World } from '../world.ts';
import { taught } from './classes.ts';

const oneAssignment = z.strictObject({ assignment: id });

/** An assignment of a class that the caller teaches. Throws Refused where there is none, or it is another's. */
export const setBy = async (world: World, caller: Caller, wanted: string): Promise<Assignment> => {
	const row = await world.store.db
		.selectFrom('assignments')
		.selectAll()
		.where('id', '=', wanted)
		.executeTakeFirst();
	if (!row) throw new Refused('notThere');
	await taught(world, caller, row.class);
	return assignmentOf(world, row);
};

/** Sets a class something to draft. */
export const setAssignment = useCase({
	who: 'teacher',
	input: z.strictObject({ class: id, name, task: taskSchema }),
	run: async (
		{ class: asked, name: called, task },
		{ world, caller }
	): Promise<{ readonly assignment: string }> => {
		const { id: found } = await taught(world, caller, asked);
		mustBeSettable(task, world.course);
		const [since, own] = [world.now(), newId(world.now())];
		await world.store.db
			.insertInto('assignments')
			.values({ id: own, class: found, name: called, task: JSON.stringify(task), since })
			.execute();
		return { assignment: own };
	}
});

/** Takes an assignment away with all that was handed in for it. */
export const removeAssignment = useCase({
	who: 'teacher',
	input: oneAssignment,
	run: async (asked, { world, caller }): Promise<void> => {
		const { id: found } = await setBy(world, caller, asked.assignment);
		await world.store.db.deleteFrom('assignments').where('id', '=', found).execute();
	}
});

/** What a class has been set, in the order in which it was. */
export const classAssignments = useCase({
	who: 'teacher',
	input: z.strictObject({ class: id }),
	run: async (asked, { world, caller }) => {
		const { id: found } = await taught(world, caller, asked.class);
		const rows = await world.store.db
			.selectFrom('assignments')
			.selectAll()
			.where('class', '=', found)
			.orderBy('id')
			.execute();
		return rows.map((row) => {
			const { id: own, name: called, task } = assignmentOf(world, row);
			return { id: own, name: called, mode: task.mode, opens: task.opens, closes: task.closes };
		});
	}
});

/** An assignment with what each learner of the class has handed in, by name. */
export const readAssignment = useCase({
	who: 'teacher',
	input: oneAssignment,
	run: async (asked, { world, caller }) => {
		const assignment = await setBy(world, caller, asked.assignment);
		const { db } = world.store;
		const learners = await db
			.selectFrom('people')
			.select(['id', 'name'])
			.where('class', '=', assignment.class)
			.orderBy('known_as')
			.execute();
		const attempts = await db
			.selectFrom('attempts')
			.selectAll()
			.where('assignment', '=', assignment.id)
			.orderBy('number')
			.execute();
		const begun = attempts.filter(({ received }) => received > 0);
		const seen = await verdictsOf(world, assignment, begun);
		const rows = learners.map((learner) => {
			const own = attempts.filter((each) => each.learner === learner.id);
			const all = own.flatMap(({ id: attempt, number }) => {
				const said = seen.get(attempt);
				return said ? [{ number, seen: said }] : [];
			});
			const best = bestOf(all);
			return {
				...learner,
				extra: own.at(-1)?.extra ?? 0,
				received: own.reduce((sum, { received }) => sum + received, 0),
				/** Of the attempt that counts. */
				seen: best?.seen,
				attempts: all.map(({ number, seen: { total } }) => ({
					...{ number, mark: total.mark, outOf: total.outOf, counts: number === best?.number }
				}))
			};
		});
		return {
			...{ id: assignment.id, class: assignment.class, name: assignment.name, task: assignment.task },
			/** How many exercises there are; 0 where steps are set. */
			exercises: assignment.task.practice?.count ?? 0,
			/** Whether it can no longer be changed, since somebody has handed in. */
			frozen: attempts.some(({ received }) => received > 0),
			lessons: assignment.asked.map(({ lesson, method, steps }) => ({
				id: lesson.id,
				method: method.id,
				steps
			})),
			learners: rows
		};
	}
});
