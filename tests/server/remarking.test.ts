import { afterAll, beforeAll, expect, it } from 'vitest';
import { USE_CASES } from '#server/use-cases/all.ts';
import { classOf, mark } from './class-of.ts';
import { newSchool, type School } from './school.ts';
import { onBoth } from './stores.ts';

onBoth('marking anew', (newStorePlace) => {
	let school: School;
	let on: Awaited<ReturnType<typeof classOf>>;
	beforeAll(async () => {
		school = await newSchool(await newStorePlace());
		on = await classOf(school, {
			Ada: [mark('U', [500, 222]), mark('U', [260, 222])],
			Bea: [mark('U', [260, 222])]
		});
	});
	afterAll(() => school.close());

	const read = async () => {
		const { learners } = await school.ask(USE_CASES.readAssignment, on.teacher, {
			assignment: on.assignment
		});
		return learners.map(({ name, seen }) => [name, seen?.total.mark, seen?.current]);
	};
	const preview = () => school.ask(USE_CASES.previewRemarking, on.teacher, { assignment: on.assignment });
	const apply = (shown: string) =>
		school.ask(USE_CASES.applyRemarking, on.teacher, { assignment: on.assignment, shown });

	/** An earlier program took nothing off for Ada's wrong try. */
	const markedByAnEarlierOne = async (): Promise<void> => {
		await read();
		const { db } = school.world.store;
		const rows = await db.selectFrom('verdicts').selectAll().execute();
		for (const { id, report } of rows)
			await db
				.updateTable('verdicts')
				.set({ report: report.replaceAll('"mark":0.9', '"mark":1') })
				.where('id', '=', id)
				.execute();
		Object.assign(school.world, { engine: 'newer' });
	};

	it('shows what it would change, and changes nothing by that', async () => {
		expect((await preview()).old).toBe(0);
		await markedByAnEarlierOne();
		school.later(1000);
		const { old, changes } = await preview();
		expect(old).toBe(2);
		expect(changes).toEqual([
			{
				...{ learner: on.learners['Ada']?.id, name: 'Ada', attempt: 1, total: { before: 1, after: 0.9 } },
				steps: [{ method: 'back-block', step: 'U', before: 1, after: 0.9 }]
			}
		]);
		expect(await read()).toEqual([
			['Ada', 1, false],
			['Bea', 1, false]
		]);
	});

	it('is refused where something came in since it was shown', async () => {
		const { shown } = await preview();
		await on.hand('Bea', 2, [mark('U', [260.1, 222])]);
		await expect(apply(shown)).rejects.toThrow('changedMeanwhile');
		expect(await read()).toEqual([
			['Ada', 1, false],
			['Bea', 1, true]
		]);
	});

	it('is done as it was shown; what was said before stays in its row, and a teacher’s mark counts on', async () => {
		const step = { learner: on.learners['Bea']?.id, method: 'back-block', step: 'U' };
		const given = { assignment: on.assignment, ...step, mark: 0.5, reason: 'Shown to me.' };
		await school.ask(USE_CASES.overrideMark, on.teacher, given);
		await apply((await preview()).shown);
		expect(await read()).toEqual([
			['Ada', 0.9, true],
			['Bea', 0.5, true]
		]);
		const rows = await school.world.store.db
			.selectFrom('verdicts')
			.innerJoin('attempts', 'attempts.id', 'verdicts.attempt')
			.select('verdicts.engine')
			.where('attempts.learner', '=', on.learners['Ada']?.id ?? '')
			.orderBy('verdicts.at')
			.execute();
		expect(rows.map(({ engine }) => engine)).toEqual(['tested', 'newer']);
		expect(await preview()).toMatchObject({ old: 0, changes: [] });
	});
});
