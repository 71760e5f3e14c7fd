import type { Comment, Override } from '#shared/remark.ts';
import { roundMark } from '#checker/marks.ts';
import type { World } from '../world.ts';
import type { Marked, StepMarked } from './judging.ts';
import type { Asked, Task } from './task.ts';

/** All overrides of some attempts, those included that were taken back, in the order in which they were given. */
export const overridesOf = async (
	{ store: { db } }: Pick<World, 'store'>,
	attempts: readonly string[]
): Promise<readonly (Override & { readonly attempt: string })[]> => {
	if (attempts.length === 0) return [];
	const rows = await db
		.selectFrom('overrides')
		.leftJoin('people', 'people.id', 'overrides.by')
		.selectAll('overrides')
		.select('people.name')
		.where('overrides.attempt', 'in', attempts)
		.orderBy('overrides.id')
		.execute();
	return rows.map(({ mark, name, ...row }) => ({ ...row, mark: mark / 100, by: name }));
};

/** All comments on an attempt, in the order in which they were written. */
export const commentsOn = async (
	{ store: { db } }: Pick<World, 'store'>,
	attempt: string
): Promise<readonly Comment[]> => {
	const rows = await db
		.selectFrom('comments')
		.leftJoin('people', 'people.id', 'comments.by')
		.select(['comments.id', 'comments.method', 'comments.step', 'comments.text', 'comments.at'])
		.select('people.name as by')
		.where('comments.attempt', '=', attempt)
		.orderBy('comments.id')
		.execute();
	return rows;
};

/** The override that holds for a step, where there is one. */
const overrideOf = (
	{ method, step }: Pick<StepMarked, 'method' | 'step'>,
	overrides: readonly Override[]
): Override | undefined =>
	overrides.findLast((each) => each.back === null && each.method === method && each.step === step);

/** What was said of an attempt with the marks that its teacher gave: these count, and a step with one is asked for. */
export const overridden = <M extends Marked>(marked: M, overrides: readonly Override[]): M => {
	if (overrides.length === 0) return marked;
	const given = marked.steps.map((step) => ({ step, override: overrideOf(step, overrides) }));
	const asked = given.filter(({ step, override }) => override && step.verdict.answer === 'excused').length;
	const mark = roundMark(given.reduce((sum, { step, override }) => sum + (override ?? step).mark, 0));
	return { ...marked, total: { ...marked.total, mark, outOf: marked.total.outOf + asked } };
};

/** What a teacher said at one step, as its learner is told: in words, or by a mark with its reason. */
export interface Remark {
	readonly id: string;
	/** The lesson in which the step is drafted; undefined for an exercise. */
	readonly lesson: string | undefined;
	readonly method: string;
	readonly step: string;
	readonly text: string;
	/** The mark that was given; undefined for a comment. */
	readonly mark: number | undefined;
	readonly by: string | null;
	readonly at: number;
}

/**
 * All that a learner is told at the steps of an attempt, in the order in which it was said.
 *
 * @param isTold whether marks may be told: in an exam when it is over
 */
export const remarksFor = async (
	world: Pick<World, 'store'>,
	{ asked, task }: { readonly asked: readonly Asked[]; readonly task: Pick<Task, 'practice'> },
	attempt: string,
	isTold: boolean
): Promise<readonly Remark[]> => {
	const comments = (await commentsOn(world, attempt)).map((each) => ({ ...each, mark: undefined }));
	const marks = isTold ? await overridesOf(world, [attempt]) : [];
	const given = marks
		.filter((each) => overrideOf(each, marks) === each)
		.map(({ reason, ...each }) => ({ ...each, text: reason }));
	return [...comments, ...given]
		.toSorted((a, b) => a.at - b.at)
		.flatMap(({ id, method, step, text, mark, by, at }) => {
			const own = asked.find((each) => each.method.id === method && each.steps.includes(step));
			return own || task.practice ? [{ id, lesson: own?.lesson.id, method, step, text, mark, by, at }] : [];
		});
};
