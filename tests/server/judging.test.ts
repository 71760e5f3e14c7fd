import { describe, expect, it } from 'vitest';
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import type { HandedEntry, StepDone } from '#shared/hand-in.ts';
import { judged, verdictOn, type LearnersWork } from '#checker/work.ts';
import { evaluate } from '#drafting/evaluate.ts';
import { chanceOf } from '#practice/chance.ts';
import { marking, type Before } from '#server/handing/judging.ts';
import { inSlices } from '#server/slices.ts';
import { askedIn, methodsOf, taskSchema } from '#server/handing/task.ts';
import { lessonCourse } from '../../src/cli/lesson-course.ts';
import { scriptedMarks } from './scripted-learner.ts';

const task = taskSchema.parse({
	lessons: [
		'40-back-levels',
		'41-back-neck-and-shoulder',
		'42-back-armhole',
		'50-front-levels',
		'51-front-neck-and-shoulder'
	],
	body: { kind: 'one', id: 'heron' },
	policy: {}
});
const asked = askedIn(task, lessonCourse());
const methods = methodsOf(asked);
const steps = new Set(asked.flatMap((each) => each.steps));
const bodies = DEMO_BODIES.slice(0, 5).map(({ body }) => body);
const worked = bodies.map((body, i) => ({
	body,
	events: scriptedMarks(methods, steps, body, chanceOf(i)).map((done): StepDone => ({
		assignment: 'a',
		...done
	}))
}));

describe('marks that are judged one by one', () => {
	it('are found to be the same whether all are judged at once, or in portions', async () => {
		for (const { body, events } of worked) {
			const whole = await inSlices(marking(asked, body, task, events));
			let before: Before | undefined;
			for (const portion of [0.1, 0.35, 0.6, 1]) {
				const some = events.slice(0, Math.ceil(events.length * portion));
				before = await inSlices(marking(asked, body, task, some, before));
			}
			expect(before).toEqual(whole);
			expect(whole.steps.some(({ tries }) => tries > 0)).toBe(true);
		}
	});

	it('that were measured on paper cost nothing where their own error leaves open whether they are right', async () => {
		const put = (step: string, at: [number, number], error: number): StepDone => ({
			...{ assignment: 'a', method: 'back-block', step },
			entry: { placement: { kind: 'point', at, error }, checked: true, kept: true, help: 0, shown: false }
		});
		const [heron] = bodies;
		if (!heron) throw new Error('there is no demo body');
		// A of Heron lies at (0, 222), W at (0, 425): up to 2 mm off is right.
		const { steps, total } = await inSlices(
			marking(asked, heron, task, [put('A', [0, 223], 1.5), put('W', [0, 425.5], 1)])
		);
		const of = (name: string) => steps.find(({ method, step }) => method === 'back-block' && step === name);
		expect(of('A')).toMatchObject({ verdict: { answer: 'cannot-tell' }, mark: 0, tries: 0, missed: [] });
		expect(of('W')).toMatchObject({ verdict: { answer: 'right' }, mark: 1 });
		expect(total).toMatchObject({ mark: 1, mistakes: 0, cannotTell: 1 });
	});

	it('are said of one step what is said of it among all', () => {
		for (const { body, events } of worked)
			for (const method of methods) {
				const evaluation = evaluate(method, body);
				const entries: Record<string, HandedEntry> = {};
				for (const done of events.filter((each) => each.method === method.id)) {
					entries[done.step] = done.entry;
					const truth = evaluation.kind === 'drafted' ? evaluation.draft : undefined;
					for (const marks of ['inked', 'pencilled'] as const) {
						const work: LearnersWork = { method, body, truth, entries, marks };
						expect(verdictOn(work, done.step)).toEqual(judged(work).verdict(done.step));
					}
				}
			}
	});
});
