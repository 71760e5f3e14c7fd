import { z } from 'zod';
import type { Slip } from '#checker/missteps/misstep.ts';
import type { ExerciseKind } from '#practice/exercises/exercise.ts';
import { eventsOf, handedIn, isAtAStep, type Assignment, type Handed } from '../handing/attempts.ts';
import { readExercises } from '../handing/exercise-set.ts';
import type { StepMarked } from '../handing/judging.ts';
import type { Off } from '../handing/missed.ts';
import { commentsOn, overridesOf } from '../handing/remarks.ts';
import { attemptNumber, id } from '../people/shapes.ts';
import { Refused } from '../refused.ts';
import { useCase } from '../use-case.ts';
import type { Body } from '#shared/body.ts';
import type { Done } from '#shared/hand-in.ts';
import { setBy } from './assignments.ts';
import { handedInBy } from './remarks.ts';

/** A learner as others are told of them. */
interface Named {
	readonly id: string;
	readonly name: string;
}

/** What some of a class did wrong at one step, by one rule. */
export interface ClassMisstep {
	readonly method: string;
	readonly step: string;
	/** What was asked and how it was answered, where it was an exercise and no rule explains the answer. */
	readonly exercise?: { readonly kind: ExerciseKind; readonly note: string };
	/** What was probably done; none where no rule explains what they put down. */
	readonly slips: readonly Slip[];
	/** Whether most of the places can come of nothing else. */
	readonly certain: boolean;
	readonly learners: readonly Named[];
	/** How many put anything down at this step. */
	readonly of: number;
}

/** A slip without what somebody's tape showed. */
const impersonal = ({ key, values }: Slip): Slip => ({
	key,
	values: values.map((value) =>
		typeof value === 'object' && value !== null && 'asRead' in value
			? Object.fromEntries(Object.entries(value).filter(([name]) => name !== 'asRead'))
			: value
	)
});

/** One step of one learner's, in one of their attempts: an exercise belongs to the step that it asks for. */
interface Did {
	readonly learner: Named;
	readonly method: string;
	readonly step: string;
	readonly marked: StepMarked;
}

/** All that was done of some learners' work, attempt by attempt. */
const didOf = (all: readonly Handed[]): readonly Did[] =>
	all.flatMap(({ id: own, name, attempts }) =>
		attempts.flatMap(({ seen }) =>
			seen.steps.map((marked) => {
				const { method, step } = marked.about ?? marked;
				return { learner: { id: own, name }, method, step, marked };
			})
		)
	);

/** One wrong place, or answer, of one learner. */
interface Told extends Pick<ClassMisstep, 'exercise'> {
	readonly rule: string;
	readonly learner: Named;
	readonly slips: readonly Slip[];
	readonly certain: boolean;
}

const toldOf = ({ learner, marked: { missed, about } }: Did): readonly Told[] =>
	missed.map(({ note, slips, certain }) => {
		const exercise = about && slips.length === 0 ? { kind: about.kind, note } : undefined;
		return {
			rule: slips.length > 0 ? note : exercise ? `${exercise.kind} ${note}` : '',
			...(exercise && { exercise }),
			...{ learner, slips: slips.map(impersonal), certain }
		};
	});

/** What went wrong at one step, each wrong rule once. */
const missedAtStep = (did: readonly Did[], method: string, step: string): readonly ClassMisstep[] => {
	const own = did.filter((each) => each.method === method && each.step === step);
	const told = own.flatMap(toldOf);
	const begun = own.filter(({ marked }) => marked.verdict.answer !== 'unfinished' || marked.tries > 0);
	const of = new Set(begun.map(({ learner }) => learner.id)).size;
	return [...new Set(told.map(({ rule }) => rule))].map((rule) => {
		const same = told.filter((each) => each.rule === rule);
		const sure = same.filter(({ certain }) => certain);
		const learners = new Map(same.map(({ learner }) => [learner.id, learner]));
		const { exercise } = same[0] ?? {};
		return {
			...{ method, step, of, ...(exercise && { exercise }) },
			slips: (sure[0] ?? same[0])?.slips ?? [],
			certain: 2 * sure.length >= same.length,
			learners: [...learners.values()]
		};
	});
};

/** The steps that a class was asked for: those of the lessons, or those that its exercises happened to ask for. */
const stepsAsked = (
	{ asked, task }: Assignment,
	did: readonly Did[]
): readonly { readonly method: string; readonly step: string }[] => {
	if (!task.practice)
		return asked.flatMap(({ method, steps }) => steps.map((step) => ({ method: method.id, step })));
	const found = new Map(did.map(({ method, step }) => [`${method} ${step}`, { method, step }]));
	return [...found.values()];
};

/** What a class has not understood of an assignment, by rule: the commonest first, and what no rule explains after that. */
export const classMissteps = useCase({
	who: 'teacher',
	input: z.strictObject({ assignment: id }),
	run: async (asked, { world, caller }): Promise<readonly ClassMisstep[]> => {
		const assignment = await setBy(world, caller, asked.assignment);
		const all = await handedIn(world, assignment);
		const did = didOf(all);
		return stepsAsked(assignment, did)
			.flatMap(({ method, step }) => missedAtStep(did, method, step))
			.toSorted(
				(a, b) =>
					b.learners.length - a.learners.length || Number(b.slips.length > 0) - Number(a.slips.length > 0)
			);
	}
});

/** All that one learner handed in for an assignment, event by event, with what was said of it: to be looked at as it was drafted. */
export const readWork = useCase({
	who: 'teacher',
	input: z.strictObject({ assignment: id, learner: id, attempt: attemptNumber.optional() }),
	run: async (asked, { world, caller }) => {
		const { assignment, attempt, attempts } = await handedInBy(world, caller, asked);
		const { id: own, class: inClass, name, task } = assignment;
		const { name: learner } = await world.store.db
			.selectFrom('people')
			.select('name')
			.where('id', '=', attempt.learner)
			.executeTakeFirstOrThrow();
		return {
			...{ id: own, class: inClass, name, mode: task.mode, level: task.policy.level },
			learner: { id: attempt.learner, name: learner },
			attempt: attempt.number,
			attempts: attempts.map(({ attempt: { number }, seen }) => ({ number, total: seen?.total })),
			body: attempt.body === null ? undefined : (JSON.parse(attempt.body) as Body),
			practice: task.practice && { methods: task.practice.methods },
			exercises: attempt.exercises === null ? [] : readExercises(attempt.exercises),
			asked: assignment.asked.map(({ method, steps }) => ({ method: method.id, steps })),
			events: (await eventsOf(world, attempt.id)).filter(({ done }) => isAtAStep(world, done)),
			seen: attempts.find((each) => each.attempt.id === attempt.id)?.seen,
			overrides: await overridesOf(world, [attempt.id]),
			comments: await commentsOn(world, attempt.id)
		};
	}
});

/** Who is where in an assignment, from the last thing that each learner handed in: by name. It is asked again and again. */
export const classNow = useCase({
	who: 'teacher',
	input: z.strictObject({ assignment: id }),
	run: async (asked, { world, caller }) => {
		const { id: own, class: inClass } = await setBy(world, caller, asked.assignment);
		const rows = await world.store.db
			.selectFrom('people')
			.leftJoin('attempts', (join) =>
				join
					.onRef('attempts.learner', '=', 'people.id')
					.on('attempts.assignment', '=', own)
					// The last of theirs.
					.on((is) =>
						is.not(
							is.exists(
								is
									.selectFrom('attempts as later')
									.select('later.id')
									.where('later.assignment', '=', own)
									.whereRef('later.learner', '=', 'people.id')
									.whereRef('later.number', '>', 'attempts.number')
							)
						)
					)
			)
			.leftJoin('events', (join) =>
				join.onRef('events.attempt', '=', 'attempts.id').onRef('events.number', '=', 'attempts.received')
			)
			.select(['people.id', 'people.name', 'events.at', 'events.done'])
			.select((is) =>
				is
					.selectFrom('attempts as all')
					.select(({ fn }) => fn.sum<number>('all.received').as('received'))
					.where('all.assignment', '=', own)
					.whereRef('all.learner', '=', 'people.id')
					.as('received')
			)
			.where('people.class', '=', inClass)
			.orderBy('people.known_as')
			.execute();
		const learners = rows.map(({ id: learner, name, received, at, done }) => {
			const sent = done === null ? undefined : (JSON.parse(done) as Done);
			const last = sent && isAtAStep(world, sent) ? sent : undefined;
			const where =
				last && 'exercise' in last ? { exercise: last.exercise } : { method: last?.method, step: last?.step };
			return { id: learner, name, received: received ?? 0, at, ...where };
		});
		return { now: world.now(), learners };
	}
});

/** So few answers would say whose they are. */
const LEAST_IN_A_CLOUD = 3;

/** Where the class put a point, as so much outward and down from its place: all that was tried and the last of each learner, in no order of theirs. */
const cloudAt = (did: readonly Did[], method: string, step: string): readonly Off[] => {
	const own = did
		.filter((each) => each.method === method && each.step === step)
		.map(({ learner, marked: { missed, verdict } }) => {
			const last =
				'findings' in verdict ? verdict.findings.find(({ aspect }) => aspect === 'place') : undefined;
			const tried = missed.flatMap(({ off }) => off ?? []);
			const places: readonly Off[] =
				last?.aspect === 'place' && verdict.answer === 'right'
					? [...tried, { across: last.across, down: last.down }]
					: tried;
			return { learner: learner.id, places };
		})
		.filter(({ places }) => places.length > 0);
	if (new Set(own.map(({ learner }) => learner)).size < LEAST_IN_A_CLOUD) return [];
	return own.flatMap(({ places }) => places).toSorted((a, b) => a.across - b.across || a.down - b.down);
};

/** What a class is shown on a board: the drafts of an assignment, and its own answers without names. */
export const readBoard = useCase({
	who: 'teacher',
	input: z.strictObject({ assignment: id }),
	run: async (asked, { world, caller }) => {
		const assignment = await setBy(world, caller, asked.assignment);
		const did = didOf(await handedIn(world, assignment));
		const { id: own, class: inClass, name, task } = assignment;
		// Exercises have no one step that a class could look at together.
		if (task.practice) throw new Refused('notThere');
		return {
			...{ id: own, class: inClass, name },
			body: task.body.kind === 'one' ? task.body.id : undefined,
			asked: assignment.asked.map(({ method, steps }) => ({
				method: method.id,
				steps,
				clouds: Object.fromEntries(steps.map((step) => [step, cloudAt(did, method.id, step)]))
			}))
		};
	}
});
