import { z } from 'zod';
import type { Slip } from '#checker/missteps/misstep.ts';
import { eventsOf, handedIn, verdictOf, type Handed } from '../handing/attempts.ts';
import type { Off } from '../handing/missed.ts';
import { commentsOn, overridesOf } from '../handing/remarks.ts';
import { id } from '../people/shapes.ts';
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

/** One place of one learner. */
interface Told {
	readonly rule: string;
	readonly learner: Named;
	readonly slips: readonly Slip[];
	readonly certain: boolean;
}

const toldAt = (all: readonly Handed[], method: string, step: string): readonly Told[] =>
	all.flatMap(({ id: own, name, seen }) =>
		seen.steps
			.filter((each) => each.method === method && each.step === step)
			.flatMap(({ missed }) => missed)
			.map(({ note, slips, certain }) => ({
				rule: slips.length > 0 ? note : '',
				learner: { id: own, name },
				slips: slips.map(impersonal),
				certain
			}))
	);

/** What went wrong at one step, each wrong rule once. */
const missedAtStep = (all: readonly Handed[], method: string, step: string): readonly ClassMisstep[] => {
	const told = toldAt(all, method, step);
	const of = all.filter(({ seen }) =>
		seen.steps.some(
			(each) =>
				each.method === method &&
				each.step === step &&
				(each.verdict.answer !== 'unfinished' || each.tries > 0)
		)
	).length;
	return [...new Set(told.map(({ rule }) => rule))].map((rule) => {
		const same = told.filter((each) => each.rule === rule);
		const sure = same.filter(({ certain }) => certain);
		const learners = new Map(same.map(({ learner }) => [learner.id, learner]));
		return {
			...{ method, step, of },
			slips: (sure[0] ?? same[0])?.slips ?? [],
			certain: 2 * sure.length >= same.length,
			learners: [...learners.values()]
		};
	});
};

/** What a class has not understood of an assignment, by rule: the commonest first, and what no rule explains after that. */
export const classMissteps = useCase({
	who: 'teacher',
	input: z.strictObject({ assignment: id }),
	run: async (asked, { world, caller }): Promise<readonly ClassMisstep[]> => {
		const assignment = await setBy(world, caller, asked.assignment);
		const all = await handedIn(world, assignment);
		return assignment.asked
			.flatMap(({ method, steps }) => steps.flatMap((step) => missedAtStep(all, method.id, step)))
			.toSorted(
				(a, b) =>
					b.learners.length - a.learners.length || Number(b.slips.length > 0) - Number(a.slips.length > 0)
			);
	}
});

/** All that one learner handed in for an assignment, event by event, with what was said of it: to be looked at as it was drafted. */
export const readWork = useCase({
	who: 'teacher',
	input: z.strictObject({ assignment: id, learner: id }),
	run: async (asked, { world, caller }) => {
		const { assignment, attempt } = await handedInBy(world, caller, asked);
		const { id: own, class: inClass, name, task } = assignment;
		const { name: learner } = await world.store.db
			.selectFrom('people')
			.select('name')
			.where('id', '=', attempt.learner)
			.executeTakeFirstOrThrow();
		return {
			...{ id: own, class: inClass, name, mode: task.mode, level: task.policy.level },
			learner: { id: attempt.learner, name: learner },
			body: attempt.body === null ? undefined : (JSON.parse(attempt.body) as Body),
			asked: assignment.asked.map(({ method, steps }) => ({ method: method.id, steps })),
			events: await eventsOf(world, attempt.id),
			seen: attempt.received > 0 ? await verdictOf(world, assignment, attempt) : undefined,
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
				join.onRef('attempts.learner', '=', 'people.id').on('attempts.assignment', '=', own)
			)
			.leftJoin('events', (join) =>
				join.onRef('events.attempt', '=', 'attempts.id').onRef('events.number', '=', 'attempts.received')
			)
			.select(['people.id', 'people.name', 'attempts.received', 'events.at', 'events.done'])
			.where('people.class', '=', inClass)
			.orderBy('people.known_as')
			.execute();
		const learners = rows.map(({ id: learner, name, received, at, done }) => {
			const { method, step } = done === null ? {} : (JSON.parse(done) as Partial<Done>);
			return { id: learner, name, received: received ?? 0, at, method, step };
		});
		return { now: world.now(), learners };
	}
});

/** So few answers would say whose they are. */
const LEAST_IN_A_CLOUD = 3;

/** Where the class put a point, as so much outward and down from its place: all that was tried and the last of each learner, in no order of theirs. */
const cloudAt = (all: readonly Handed[], method: string, step: string): readonly Off[] => {
	const own = all.map(({ seen }) =>
		seen.steps
			.filter((each) => each.method === method && each.step === step)
			.flatMap(({ missed, verdict }): readonly Off[] => {
				const last =
					'findings' in verdict ? verdict.findings.find(({ aspect }) => aspect === 'place') : undefined;
				const tried = missed.flatMap(({ off }) => off ?? []);
				return last?.aspect === 'place' && verdict.answer === 'right'
					? [...tried, { across: last.across, down: last.down }]
					: tried;
			})
	);
	if (own.filter(({ length }) => length > 0).length < LEAST_IN_A_CLOUD) return [];
	return own.flat().toSorted((a, b) => a.across - b.across || a.down - b.down);
};

/** What a class is shown on a board: the drafts of an assignment, and its own answers without names. */
export const readBoard = useCase({
	who: 'teacher',
	input: z.strictObject({ assignment: id }),
	run: async (asked, { world, caller }) => {
		const assignment = await setBy(world, caller, asked.assignment);
		const all = await handedIn(world, assignment);
		const { id: own, class: inClass, name, task } = assignment;
		return {
			...{ id: own, class: inClass, name },
			body: task.body.kind === 'one' ? task.body.id : undefined,
			asked: assignment.asked.map(({ method, steps }) => ({
				method: method.id,
				steps,
				clouds: Object.fromEntries(steps.map((step) => [step, cloudAt(all, method.id, step)]))
			}))
		};
	}
});
