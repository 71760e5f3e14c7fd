import { z } from 'zod';
import { EXERCISES } from '#shared/hand-in-limits.ts';
import { attemptsAt, bestOf, verdictsOf, type Assignment, type Seen } from '../handing/attempts.ts';
import { readExercises } from '../handing/exercise-set.ts';
import { newId } from '../people/ids.ts';
import { attemptNumber, id, remark } from '../people/shapes.ts';
import { Refused } from '../refused.ts';
import type { AttemptRow } from '../store/tables.ts';
import { useCase } from '../use-case.ts';
import type { Caller, World } from '../world.ts';
import { taught } from './classes.ts';
import { setBy } from './assignments.ts';

/** One step, or one exercise, of what one learner handed in. */
const oneStep = { assignment: id, learner: id, attempt: attemptNumber.optional(), method: id, step: id };

/**
 * What a learner handed in for an assignment of a class that the caller teaches: the attempt that is named, else the one that counts,
 * and all of them. Throws Refused where there is nothing.
 */
export const handedInBy = async (
	world: World,
	caller: Caller,
	asked: { readonly assignment: string; readonly learner: string; readonly attempt?: number | undefined }
): Promise<{
	readonly assignment: Assignment;
	readonly attempt: AttemptRow;
	readonly attempts: readonly { readonly attempt: AttemptRow; readonly seen: Seen | undefined }[];
}> => {
	const assignment = await setBy(world, caller, asked.assignment);
	const rows = await attemptsAt(world, assignment.id, asked.learner);
	const seen = await verdictsOf(
		world,
		assignment,
		rows.filter(({ received }) => received > 0)
	);
	const attempts = rows.map((attempt) => ({ attempt, seen: seen.get(attempt.id) }));
	const best = bestOf(attempts.flatMap(({ attempt, seen: own }) => (own ? [{ attempt, seen: own }] : [])));
	const named = rows.find(({ number }) => number === asked.attempt);
	const attempt = asked.attempt === undefined ? (best?.attempt ?? rows.at(-1)) : named;
	if (!attempt) throw new Refused('notThere');
	return { assignment, attempt, attempts };
};

/** Whether a step, or an exercise by its number, is asked for. */
const isAsked = (
	{ asked, task }: Assignment,
	{ exercises }: AttemptRow,
	{ method, step }: { readonly method: string; readonly step: string }
): boolean => {
	if (task.practice)
		return method === EXERCISES && readExercises(exercises ?? '[]').some((_, i) => String(i + 1) === step);
	return asked.some((each) => each.method.id === method && each.steps.includes(step));
};

/** The attempt that a step belongs to which is asked for. Throws Refused where it is not. */
const attemptWith = async (
	world: World,
	caller: Caller,
	asked: z.infer<z.ZodObject<typeof oneStep>>
): Promise<AttemptRow> => {
	const { assignment, attempt } = await handedInBy(world, caller, asked);
	if (!isAsked(assignment, attempt, asked)) throw new Refused('notThere');
	return attempt;
};

/** What stands in a platform's gradebook is looked at again. */
const markChanged = async (
	{ store: { db }, now }: World,
	{ assignment, learner }: Pick<AttemptRow, 'assignment' | 'learner'>
): Promise<void> => {
	await db
		.updateTable('sendings')
		.set({ look_at: now() })
		.where('person', '=', learner)
		.where('mark_column', 'in', (from) =>
			from.selectFrom('mark_columns').select('id').where('assignment', '=', assignment)
		)
		.execute();
};

/** Gives a step a mark in the place of the judge's, with the reason, which the learner sees. The judge's stays beside it. */
export const overrideMark = useCase({
	who: 'teacher',
	input: z.strictObject({ ...oneStep, mark: z.number().min(0).max(1), reason: remark }),
	run: async ({ mark, reason, ...asked }, { world, caller }): Promise<void> => {
		const found = await attemptWith(world, caller, asked);
		const [at, attempt] = [world.now(), found.id];
		const { method, step } = asked;
		await world.store.db
			.insertInto('overrides')
			.values({
				...{ id: newId(at), attempt, method, step, reason, at },
				...{ mark: Math.round(mark * 100), by: caller.id, back: null }
			})
			.execute();
		await markChanged(world, found);
	}
});

/** An attempt of a class that the caller teaches. Throws Refused where it is not. */
const taughtAttempt = async (
	world: World,
	caller: Caller,
	attempt: string | undefined
): Promise<Pick<AttemptRow, 'assignment' | 'learner'>> => {
	const row = await world.store.db
		.selectFrom('attempts')
		.innerJoin('assignments', 'assignments.id', 'attempts.assignment')
		.select(['assignments.class', 'attempts.assignment', 'attempts.learner'])
		.where('attempts.id', '=', attempt ?? '')
		.executeTakeFirst();
	if (!row) throw new Refused('notThere');
	await taught(world, caller, row.class);
	return row;
};

/** Takes a teacher's mark back: the one that was there before counts again. That it was given stays on record. */
export const takeMarkBack = useCase({
	who: 'teacher',
	input: z.strictObject({ override: id }),
	run: async ({ override }, { world, caller }): Promise<void> => {
		const { db } = world.store;
		const row = await db
			.selectFrom('overrides')
			.select('attempt')
			.where('id', '=', override)
			.executeTakeFirst();
		const found = await taughtAttempt(world, caller, row?.attempt);
		await db
			.updateTable('overrides')
			.set({ back: world.now() })
			.where('id', '=', override)
			.where('back', 'is', null)
			.execute();
		await markChanged(world, found);
	}
});

/** Writes something to a learner at one step of their draft. */
export const addComment = useCase({
	who: 'teacher',
	input: z.strictObject({ ...oneStep, text: remark }),
	run: async ({ text, ...asked }, { world, caller }): Promise<void> => {
		const { id: attempt } = await attemptWith(world, caller, asked);
		const at = world.now();
		const { method, step } = asked;
		await world.store.db
			.insertInto('comments')
			.values({ id: newId(at), attempt, method, step, text, by: caller.id, at })
			.execute();
	}
});

/** Takes away what was written to a learner. */
export const removeComment = useCase({
	who: 'teacher',
	input: z.strictObject({ comment: id }),
	run: async ({ comment }, { world, caller }): Promise<void> => {
		const { db } = world.store;
		const row = await db
			.selectFrom('comments')
			.select('attempt')
			.where('id', '=', comment)
			.executeTakeFirst();
		await taughtAttempt(world, caller, row?.attempt);
		await db.deleteFrom('comments').where('id', '=', comment).execute();
	}
});
