import { z } from 'zod';
import { assignedTo, attemptAt, endOf } from '../handing/attempts.ts';
import { id } from '../people/shapes.ts';
import { Refused } from '../refused.ts';
import { useCase } from '../use-case.ts';

/** A learner hands an exam in: what comes after that does not count, and what is right is told from then on. Once, before its end. */
export const endExam = useCase({
	who: 'learner',
	input: z.strictObject({ assignment: id }),
	run: async (asked, { world, caller }): Promise<void> => {
		const { id: assignment, task } = await assignedTo(world, caller, asked.assignment);
		if (task.mode !== 'exam') throw new Refused('noExam');
		const attempt = await attemptAt(world, assignment, caller.id);
		const until = endOf(task, attempt);
		if (until !== null && until <= world.now()) return;
		await world.store.db
			.updateTable('attempts')
			.set({ ended: world.now() })
			.where('id', '=', attempt.id)
			.where('ended', 'is', null)
			.execute();
	}
});
