import { z } from 'zod';
import { BadInput } from '#shared/bad-input.ts';
import { readBody, type Body } from '#shared/body.ts';
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import { notTaken } from '#shared/measurements.ts';
import { policySchema } from '#shared/policy-shape.ts';
import { unknownName } from '#shared/reading.ts';
import { draftedIn, type Course, type Lesson } from '#course/course.ts';
import { evaluate } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import { EXERCISE_KINDS, type Practised } from '#practice/exercises/exercise.ts';
import { practised } from '#practice/exercises/seams.ts';
import { draftedBodies } from '#practice/generate-body.ts';
import { Refused } from '../refused.ts';
import { exerciseSet, practiceSchema, seedOf } from './exercise-set.ts';

const name = z.string().min(1).max(100);
const time = z.number().int().nonnegative().nullable().default(null);

/** The most whole attempts that are counted beforehand. */
const MOST_COUNTED = 5;

/** What a teacher sets: which steps or exercises, for which body, and how it is marked. */
export const taskSchema = z.strictObject({
	/** None where exercises are set. */
	lessons: z.array(name).max(100).default([]),
	/** A run of the steps of its one lesson; null for all of its lessons'. */
	steps: z.array(name).min(1).max(200).nullable().default(null),
	/** Exercises in the place of lessons, each learner's own; null for lessons. */
	practice: practiceSchema.nullable().default(null),
	/** For whom it is drafted: one invented body for all, another one for each learner, or each learner's own. */
	body: z.discriminatedUnion('kind', [
		z.strictObject({ kind: z.literal('one'), id: z.enum(DEMO_BODIES.map(({ id }) => id)) }),
		z.strictObject({ kind: z.literal('each') }),
		z.strictObject({ kind: z.literal('own') })
	]),
	policy: policySchema,
	/** In an exam nothing is told of what is right until it is over. */
	mode: z.enum(['practice', 'exam']).default('practice'),
	/** Whether a learner may ask for help at a step; in an exam nobody may. */
	hints: z.boolean().default(true),
	/** How many whole attempts a learner has, of which the best counts; null for as many as they like. */
	wholeAttempts: z.number().int().min(1).max(MOST_COUNTED).nullable().default(1),
	/** When it opens and closes, in milliseconds since 1970. */
	opens: time,
	closes: time
});

export type Task = z.infer<typeof taskSchema>;

/** A lesson of a task, with the method that it drafts and the steps that are asked for. */
export interface Asked {
	readonly lesson: Lesson;
	readonly method: Method;
	readonly steps: readonly string[];
}

/** The lessons of a task, in the order of the course. Throws BadInput where one is none that is drafted in, or has no such step. */
export const askedIn = (
	task: Pick<Task, 'lessons' | 'steps' | 'practice'>,
	course: Course
): readonly Asked[] => {
	const drafted = draftedIn(course);
	const ids = drafted.map(({ id }) => id);
	if ((task.lessons.length === 0) === (task.practice === null))
		throw new BadInput('task.lessons', unknownName('lesson', '', ids));
	for (const wanted of task.lessons)
		if (!ids.includes(wanted)) throw new BadInput('lessons', unknownName('lesson', wanted, ids));
	const { steps: run } = task;
	return drafted
		.filter(({ id }) => task.lessons.includes(id))
		.flatMap((lesson) => {
			const found = course.method(lesson.meta.method ?? '');
			const wrong = run?.find((step) => !lesson.steps.includes(step));
			if (wrong !== undefined) throw new BadInput('steps', unknownName('step', wrong, lesson.steps));
			return found ? [{ lesson, method: found, steps: run ?? lesson.steps }] : [];
		});
};

/** The drafts of which exercises are set, with the seams that can be trued in them. Throws BadInput where one is not practised. */
const practisedIn = ({ practice }: Pick<Task, 'practice'>, course: Course): readonly Practised[] => {
	const known = course.methods.filter((method) => method.practised);
	const ids = known.map(({ id }) => id);
	for (const wanted of practice?.methods ?? [])
		if (!ids.includes(wanted))
			throw new BadInput('task.practice.methods', unknownName('method', wanted, ids));
	return known
		.filter(({ id }) => practice?.methods.includes(id))
		.map((method) => practised(method, course.garments));
};

/** What a task asks for: steps of lessons, or exercises of drafts. */
export interface Contents {
	readonly asked: readonly Asked[];
	readonly practised: readonly Practised[];
}

/** What a task asks for. Throws BadInput where there is no such thing. */
export const contentsOf = (task: Task, course: Course): Contents => ({
	asked: askedIn(task, course),
	practised: practisedIn(task, course)
});

/** Throws BadInput where something cannot be set: there is no such thing, or none of the drafts can be asked in one of the kinds. */
export const mustBeSettable = (task: Task, course: Course): void => {
	const { practised: exercised } = contentsOf(task, course);
	const { practice } = task;
	if (practice && exerciseSet(practice, exercised, '').length === 0)
		throw new BadInput('task.practice.kinds', unknownName('value', practice.kinds.join(), EXERCISE_KINDS));
};

/** What decides of a task's mark: the methods that its lessons draft, or of which its exercises are made. */
export const judgedBy = ({ asked, practised: exercised }: Contents): readonly Method[] =>
	exercised.length > 0 ? exercised : methodsOf(asked);

/** The methods that a task's lessons draft, each once. */
export const methodsOf = (asked: readonly Asked[]): readonly Method[] => [
	...new Set(asked.map(({ method }) => method))
];

/** An invented body for one learner: the same whenever it is asked for, and one that everything can be drafted for. Throws where there is none. */
const inventedFor = (seed: string, methods: readonly Method[]): Body => {
	const [first, ...others] = methods;
	for (const { body } of first ? draftedBodies(seedOf(seed), first) : [])
		if (others.every((method) => evaluate(method, body).kind === 'drafted')) return body;
	throw new Error(`no invented body can be drafted by ${methods.map(({ id }) => id).join(', ')}`);
};

/**
 * The body that a learner drafts for; undefined where it is to be their own and they have not agreed to hand that in. Throws
 * BadInput where it is none, Refused where it cannot be drafted for.
 *
 * @param seed another for each learner
 * @param own the learner's body file, with whose sending they agree
 */
export const bodyFor = (
	{ body }: Pick<Task, 'body'>,
	methods: readonly Method[],
	seed: string,
	own: unknown
): Body | undefined => {
	if (body.kind === 'own') {
		if (own === undefined) return undefined;
		const read = readBody(own, '', '');
		const cannot = ({ measurements }: Method): boolean => notTaken(measurements, read).length > 0;
		if (methods.some((method) => cannot(method) || evaluate(method, read).kind !== 'drafted'))
			throw new Refused('notDrafted');
		return read;
	}
	if (body.kind === 'each') return inventedFor(seed, methods);
	const found = DEMO_BODIES.find(({ id }) => id === body.id);
	return found?.body;
};
