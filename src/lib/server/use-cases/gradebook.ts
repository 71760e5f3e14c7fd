import { z } from 'zod';
import { id } from '../people/shapes.ts';
import { Refused } from '../refused.ts';
import { useCase } from '../use-case.ts';
import { taught } from './classes.ts';

const inClass = z.strictObject({ class: id });

/** The marks of a class on their way to learning platforms: how many have arrived, and each that has not. */
export const classSendings = useCase({
	who: 'teacher',
	input: inClass,
	run: async (asked, { world, caller }) => {
		const { id: found } = await taught(world, caller, asked.class);
		const rows = await world.store.db
			.selectFrom('sendings')
			.innerJoin('mark_columns', 'mark_columns.id', 'sendings.mark_column')
			.innerJoin('assignments', 'assignments.id', 'mark_columns.assignment')
			.innerJoin('people', 'people.id', 'sendings.person')
			.select(['sendings.id', 'sendings.state', 'sendings.outcome', 'sendings.status', 'sendings.due'])
			.select(['people.name as learner', 'assignments.name as assignment'])
			.where('assignments.class', '=', found)
			.where('sendings.state', '<>', 'nothing')
			.orderBy('assignments.id')
			.orderBy('people.known_as')
			.execute();
		return {
			arrived: rows.filter(({ state }) => state === 'sent').length,
			open: rows.filter(({ state }) => state !== 'sent')
		};
	}
});

/** Sends a mark again that was not taken, or at once what is still waiting. */
export const sendMarkAgain = useCase({
	who: 'teacher',
	input: inClass.extend({ sending: id }),
	run: async (asked, { world, caller }): Promise<void> => {
		const { id: found } = await taught(world, caller, asked.class);
		const { db } = world.store;
		const again = await db
			.updateTable('sendings')
			.set({ state: 'waiting', tries: 0, due: world.now() })
			.where('id', '=', asked.sending)
			.where('score', 'is not', null)
			.where('mark_column', 'in', (from) =>
				from
					.selectFrom('mark_columns')
					.innerJoin('assignments', 'assignments.id', 'mark_columns.assignment')
					.select('mark_columns.id')
					.where('assignments.class', '=', found)
			)
			.executeTakeFirst();
		if (again.numUpdatedRows === 0n) throw new Refused('notThere');
	}
});
