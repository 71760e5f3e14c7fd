import { expect, it } from 'vitest';
import { USE_CASES } from '#server/use-cases/all.ts';
import { handedEvent, newSchool } from './school.ts';
import { onBoth } from './stores.ts';

/** Heron's levels, as they are worked by hand (tests/e2e/support/heron.ts). */
const POINTS = { A: [0, 222], W: [0, 425], H: [0, 630] } as const;
const LEVELS = { armholeLevel: [222, 260], waistLevel: [425, 205], hipLevel: [630, 270] } as const;

onBoth('the plan of a class', (newStorePlace) => {
	it('tells who has begun and who has done each lesson that was set, and for whom each learner drafts', async () => {
		const school = await newSchool(await newStorePlace());
		const teacher = await school.teacher('Ms Alder');
		const { class: own, code } = await school.newClass(teacher, 'Alder');
		const plan = () => school.ask(USE_CASES.lessonPlan, teacher, { class: own });
		expect(await plan()).toEqual({ id: own, name: 'Alder', lessons: [], assignments: [], learners: 0 });

		const [ada, bea] = [await school.learner(code, 'Ada'), await school.learner(code, 'Bea')];
		await school.learner(code, 'Cleo');
		const levels = await school.newAssignment(teacher, own);
		school.later(1);
		const each = await school.newAssignment(teacher, own, {
			lessons: ['41-back-neck-and-shoulder'],
			body: { kind: 'each' }
		});
		const marks = [
			...Object.entries(POINTS).map(([step, at]) => ({ step, placement: { kind: 'point', at } })),
			...Object.entries(LEVELS).map(([step, [down, far]]) => ({
				step,
				placement: { kind: 'line', segments: [{ from: [0, down], to: [far, down] }] }
			}))
		].map(({ step, placement }, i) =>
			handedEvent(levels, i + 1, {
				step,
				entry: { placement, checked: true, kept: false, help: 0, shown: false }
			})
		);
		for (const [who, events] of [
			[ada, marks],
			[bea, marks.slice(0, 2)]
		] as const) {
			await school.ask(USE_CASES.openAssignment, who.secret, { assignment: levels });
			await school.ask(USE_CASES.handIn, who.secret, { learner: who.id, events });
		}
		expect(await plan()).toMatchObject({
			learners: 3,
			lessons: [
				{ id: '40-back-levels', begun: 2, done: 1 },
				{ id: '41-back-neck-and-shoulder', begun: 0, done: 0 }
			],
			assignments: [{ id: levels }, { id: each }]
		});

		const sheets = async (assignment: string) =>
			(await school.ask(USE_CASES.classSheets, teacher, { assignment })).learners;
		expect((await sheets(levels)).map(({ name, body }) => [name, body?.name])).toEqual([
			['Ada', 'Heron'],
			['Bea', 'Heron'],
			['Cleo', 'Heron']
		]);
		const before = await sheets(each);
		expect(before[0]?.body).not.toEqual(before[1]?.body);
		// What is printed is what she will draft for.
		const { body } = await school.ask(USE_CASES.openAssignment, ada.secret, { assignment: each });
		expect(before[0]?.body).toEqual(body);
		const theirs = await school.newAssignment(teacher, own, { body: { kind: 'own' } });
		expect((await sheets(theirs)).map((learner) => learner.body)).toEqual([undefined, undefined, undefined]);
		await school.close();
	});
});
