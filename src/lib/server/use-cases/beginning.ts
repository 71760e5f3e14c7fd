import { z } from 'zod';
import { assignedTo, attemptsAt, beginAttempt, mayBeginAnew } from '../handing/attempts.ts';
import { attemptNumber, id } from '../people/shapes.ts';
import { Refused } from '../refused.ts';
import { useCase } from '../use-case.ts';

/**
 * A learner begins an assignment anew, where they may: with another body or other exercises where these are drawn. What they did before
 * is handed in as it stands, is kept, and counts where it is the best. Asked for twice it is done once.
 */
export const beginAnew = useCase({
	who: 'learner',
	/** After which of their attempts. */
	input: z.strictObject({ assignment: id, after: attemptNumber }),
	run: async ({ assignment, after }, { world, caller }): Promise<void> => {
		const { id: of, task } = await assignedTo(world, caller, assignment);
		const attempts = await attemptsAt(world, of, caller.id);
		const last = attempts.at(-1);
		if (last && last.number > after) return;
		if (last?.number !== after || !mayBeginAnew(task, attempts, world.now())) throw new Refused('noMore');
		await world.store.db
			.updateTable('attempts')
			.set({ ended: world.now() })
			.where('id', '=', last.id)
			.where('ended', 'is', null)
			.execute();
		const { learner, extra } = last;
		await beginAttempt(world, { assignment: of, learner, number: after + 1, extra });
	}
});
