import { z } from 'zod';
import { handedIn, judgedNow, seenOf, type Assignment, type Seen } from '../handing/attempts.ts';
import { overridden } from '../handing/remarks.ts';
import { hashOf } from '../people/ids.ts';
import { id } from '../people/shapes.ts';
import { Refused } from '../refused.ts';
import type { VerdictRow } from '../store/tables.ts';
import { useCase } from '../use-case.ts';
import type { World } from '../world.ts';
import { setBy } from './assignments.ts';

/** A mark before and after. */
interface Change {
	readonly before: number;
	readonly after: number;
}

/** What marking anew would change for one learner. */
interface Changed {
	readonly learner: string;
	readonly name: string;
	/** Which of their attempts. */
	readonly attempt: number;
	readonly total: Change;
	readonly steps: readonly (Change & { readonly method: string; readonly step: string })[];
}

const changedIn = (before: Seen, after: Seen): Pick<Changed, 'total' | 'steps'> => ({
	total: { before: before.total.mark, after: after.total.mark },
	steps: after.steps.flatMap(({ method, step, mark }) => {
		const was = before.steps.find((each) => each.method === method && each.step === step)?.mark ?? 0;
		return was === mark ? [] : [{ method, step, before: was, after: mark }];
	})
});

/** Replays all that was handed in for an assignment, under the policy that it was set with: what this program says of it that another one said. */
const replayed = async (world: World, assignment: Assignment) => {
	const rows: VerdictRow[] = [];
	const people = new Set<string>();
	const changes: Changed[] = [];
	const all = (await handedIn(world, assignment)).flatMap(({ id: learner, name, attempts }) =>
		attempts.map((each) => ({ learner, name, ...each }))
	);
	for (const { learner, name, attempt, seen: before } of all) {
		if (before.current) continue;
		const row = await judgedNow(world, assignment, attempt);
		rows.push(row);
		people.add(learner);
		const changed = changedIn(before, overridden(seenOf(row), before.overrides));
		if (changed.steps.length > 0 || changed.total.before !== changed.total.after)
			changes.push({ learner, name, attempt: attempt.number, ...changed });
	}
	return {
		rows,
		changes,
		people: people.size,
		shown: hashOf(JSON.stringify([rows.map((row) => row.id), changes]))
	};
};

/** What marking an assignment anew would change, by learner. Nothing is changed by looking. */
export const previewRemarking = useCase({
	who: 'teacher',
	input: z.strictObject({ assignment: id }),
	run: async (asked, { world, caller }) => {
		const assignment = await setBy(world, caller, asked.assignment);
		const { people, changes, shown } = await replayed(world, assignment);
		const { id: own, class: inClass, name } = assignment;
		const lessons = assignment.asked.map(({ method, steps }) => ({ method: method.id, steps }));
		return { id: own, class: inClass, name, lessons, old: people, changes, shown };
	}
});

/**
 * Marks an assignment anew, as it was shown: where something else would come of it by now, it is refused and shown again. What was
 * said before stays in its row.
 */
export const applyRemarking = useCase({
	who: 'teacher',
	input: z.strictObject({ assignment: id, shown: id }),
	run: async (asked, { world, caller }): Promise<void> => {
		const assignment = await setBy(world, caller, asked.assignment);
		const { rows, shown } = await replayed(world, assignment);
		if (shown !== asked.shown) throw new Refused('changedMeanwhile');
		if (rows.length === 0) return;
		await world.store.db
			.insertInto('verdicts')
			.values(rows)
			.onConflict((conflict) => conflict.column('id').doUpdateSet({ at: world.now() }))
			.execute();
	}
});
