import { z } from 'zod';
import type { Body } from '#shared/body.ts';
import { assignmentOf, bodyOfSeed, verdictOf, type Assignment, type Seen } from '../handing/attempts.ts';
import { methodsOf } from '../handing/task.ts';
import { id } from '../people/shapes.ts';
import { useCase } from '../use-case.ts';
import type { World } from '../world.ts';
import { setBy } from './assignments.ts';
import { taught } from './classes.ts';

const learnersOf = ({ store: { db } }: World, inClass: string) =>
	db.selectFrom('people').select(['id', 'name']).where('class', '=', inClass).orderBy('known_as').execute();

/** What was judged of an assignment's attempts, with whose each is. */
const seenOf = async (
	world: World,
	assignment: Assignment
): Promise<readonly { readonly learner: string; readonly seen: Seen }[]> => {
	const attempts = await world.store.db
		.selectFrom('attempts')
		.selectAll()
		.where('assignment', '=', assignment.id)
		.where('received', '>', 0)
		.execute();
	const all = [];
	for (const attempt of attempts)
		all.push({ learner: attempt.learner, seen: await verdictOf(world, assignment, attempt) });
	return all;
};

/** Who has begun a lesson, and who has every step of it right. */
interface Progress {
	readonly begun: Set<string>;
	readonly done: Set<string>;
}

/** Notes how far the learners of an assignment have come with each of its lessons, or with its exercises. */
const note = async (world: World, assignment: Assignment, by: Map<string, Progress>): Promise<void> => {
	const all = await seenOf(world, assignment);
	if (assignment.task.practice) {
		const isRight = ({ seen }: (typeof all)[number]): boolean =>
			seen.steps.length > 0 && seen.steps.every(({ verdict }) => verdict.answer === 'right');
		const done = new Set(all.filter(isRight).map(({ learner }) => learner));
		by.set(assignment.id, { begun: new Set(all.map(({ learner }) => learner)), done });
	}
	for (const { lesson, method, steps: asked } of assignment.asked) {
		const { begun, done } = by.get(lesson.id) ?? { begun: new Set(), done: new Set() };
		by.set(lesson.id, { begun, done });
		for (const { learner, seen } of all) {
			const own = seen.steps.filter((each) => each.method === method.id && asked.includes(each.step));
			if (own.some(({ verdict }) => verdict.answer !== 'unfinished')) begun.add(learner);
			if (own.length > 0 && own.every(({ verdict }) => verdict.answer === 'right')) done.add(learner);
		}
	}
};

/** What a class has been set so far, lesson by lesson in the order of the course, and how many learners have done it. */
export const lessonPlan = useCase({
	who: 'teacher',
	input: z.strictObject({ class: id }),
	run: async (asked, { world, caller }) => {
		const { id: found, name } = await taught(world, caller, asked.class);
		const rows = await world.store.db
			.selectFrom('assignments')
			.selectAll()
			.where('class', '=', found)
			.orderBy('id')
			.execute();
		const by = new Map<string, Progress>();
		for (const row of rows) await note(world, assignmentOf(world, row), by);
		const lessons = world.course.lessons.flatMap(({ id: lesson }) => {
			const progress = by.get(lesson);
			return progress ? [{ id: lesson, begun: progress.begun.size, done: progress.done.size }] : [];
		});
		const set = rows.map((row) => {
			const practice = by.get(row.id);
			return {
				...{ id: row.id, name: row.name },
				/** How far the class has come with exercises; undefined where steps are set. */
				practice: practice && { begun: practice.begun.size, done: practice.done.size }
			};
		});
		return { id: found, name, lessons, assignments: set, learners: (await learnersOf(world, found)).length };
	}
});

/** For whom each learner of a class drafts an assignment, for sheets to be printed; no body for who has not agreed to hand their own in. */
export const classSheets = useCase({
	who: 'teacher',
	input: z.strictObject({ assignment: id }),
	run: async (wanted, { world, caller }) => {
		const assignment = await setBy(world, caller, wanted.assignment);
		const { id: own, name, asked } = assignment;
		const methods = methodsOf(asked);
		const attempts = await world.store.db
			.selectFrom('attempts')
			.select(['learner', 'body', 'number'])
			.where('assignment', '=', own)
			.orderBy('number')
			.execute();
		const bodyOf = (learner: string): Body | undefined => {
			const { body, number = 1 } = attempts.findLast((attempt) => attempt.learner === learner) ?? {};
			return typeof body === 'string'
				? (JSON.parse(body) as Body)
				: bodyOfSeed(assignment, { learner, number });
		};
		// Exercises are no sheets: nothing of them is drafted from the beginning.
		const learners = methods.length === 0 ? [] : await learnersOf(world, assignment.class);
		return {
			...{ id: own, class: assignment.class, name },
			methods: methods.map((method) => method.id),
			learners: learners.map((learner) => ({ name: learner.name, body: bodyOf(learner.id) }))
		};
	}
});
