import { z } from 'zod';
import { eventSchema, type Answered, type Done, type EventKey, type HandedEvent } from '#shared/hand-in.ts';
import { LONGEST_EVENT, MOST_AT_ONCE } from '#shared/hand-in-limits.ts';
import {
	assignedTo,
	assignmentOf,
	attemptAt,
	attemptsAt,
	bestOf,
	bodyOf,
	endOf,
	eventsOf,
	exercisesOf,
	isAtAStep,
	isAnotherLeft,
	mayBeginAnew,
	standing,
	verdictsOf,
	type Assignment
} from '../handing/attempts.ts';
import { exerciseSet } from '../handing/exercise-set.ts';
import { remarksFor } from '../handing/remarks.ts';
import { bodyFor, methodsOf } from '../handing/task.ts';
import { addToLog } from '../handing/log.ts';
import { attemptNumber, id } from '../people/shapes.ts';
import { Refused } from '../refused.ts';
import type { Store } from '../store/store.ts';
import type { AttemptRow } from '../store/tables.ts';
import { togetherIn } from '../together.ts';
import { useCase } from '../use-case.ts';
import type { World } from '../world.ts';
import { setBy } from './assignments.ts';

const HEX = 16;
/** Digits of a sequence in an id: what comes later sorts later. */
const SEQUENCE_DIGITS = 8;

/** Under which id an event is kept: nobody else's key can be in its way. */
const idOf = (learner: string, { device, tab, sequence }: EventKey): string =>
	learner + device + tab + sequence.toString(HEX).padStart(SEQUENCE_DIGITS, '0');

const readEvent = (sent: unknown): HandedEvent | undefined => {
	const event = eventSchema.safeParse(sent).data;
	return event && JSON.stringify(event).length <= LONGEST_EVENT ? event : undefined;
};

/** Which attempt at which assignment something was done for; the first where none is said. */
const attemptOf = ({ assignment, attempt = 1 }: Pick<Done, 'assignment' | 'attempt'>): string =>
	`${assignment} ${attempt}`;

/** Somebody's attempts at some assignments, by assignment and number: of all who hand in at once, in one question. One is begun when its assignment is opened. */
const ownAttempts = togetherIn(
	async (
		{ db }: Store,
		asked: readonly { readonly learner: string; readonly assignments: readonly string[] }[]
	): Promise<readonly ReadonlyMap<string, string>[]> => {
		const assignments = [...new Set(asked.flatMap((each) => each.assignments))];
		const learners = [...new Set(asked.map(({ learner }) => learner))];
		const rows =
			assignments.length === 0
				? []
				: await db
						.selectFrom('attempts')
						.select(['assignment', 'number', 'id', 'learner'])
						.where('learner', 'in', learners)
						.where('assignment', 'in', assignments)
						.execute();
		const own = new Map(learners.map((learner) => [learner, new Map<string, string>()]));
		for (const { learner, assignment, number, id: attempt } of rows)
			own.get(learner)?.set(attemptOf({ assignment, attempt: number }), attempt);
		return asked.map(({ learner }) => own.get(learner) ?? new Map<string, string>());
	}
);

/**
 * Takes in what a learner did, each event under its own key: it is answered with a receipt only when it is on the disk. The same
 * event again has the same receipt; another one under the same key is kept aside. What comes after the end is taken in as well,
 * since nothing is to be lost, and does not count. `learner` is whose events they are.
 */
export const handIn = useCase({
	who: 'learner',
	input: z.strictObject({ learner: id, events: z.array(z.unknown()).min(1).max(MOST_AT_ONCE) }),
	run: async ({ learner, events }, { world, caller }): Promise<{ readonly answers: readonly Answered[] }> => {
		// Somebody else has signed in at the same browser meanwhile.
		if (learner !== caller.id) throw new Refused('signIn');
		const read = events.map(readEvent);
		const named = new Set(read.flatMap((event) => event?.done.assignment ?? []));
		const attempts = await ownAttempts(world.store, { learner: caller.id, assignments: [...named] });
		const answers = read.map(async (event): Promise<Answered> => {
			if (!event) return { refused: 'unreadable' };
			const { key, done } = event;
			const attempt = attempts.get(attemptOf(done));
			if (attempt === undefined) return { refused: 'notThere' };
			return addToLog(world, { id: idOf(caller.id, key), attempt, done: JSON.stringify(done) });
		});
		return { answers: await Promise.all(answers) };
	}
});

/** What is told of an assignment to whoever does it. */
const shownOf = ({ id: own, name, task, asked }: Assignment) => ({
	id: own,
	name,
	mode: task.mode,
	level: task.policy.level,
	hints: task.hints,
	ownBody: task.practice === null && task.body.kind === 'own',
	practice: task.practice && { methods: task.practice.methods },
	wholeAttempts: task.wholeAttempts,
	lessons: asked.map(({ lesson, steps }) => ({ id: lesson.id, steps }))
});

/** The attempt that a learner opens: the one that is named, else their last, begun where there is none. */
const opened = async (
	world: World,
	assignment: string,
	learner: string,
	number: number | undefined
): Promise<AttemptRow> => {
	if (number === undefined) return attemptAt(world, assignment, learner);
	const found = (await attemptsAt(world, assignment, learner)).find((each) => each.number === number);
	if (!found) throw new Refused('notThere');
	return found;
};

/** Opens an assignment to the learner who is to do it: what is asked, for which body, and what they have done so far. */
export const openAssignment = useCase({
	who: 'learner',
	input: z.strictObject({
		assignment: id,
		/** Which of their attempts; the last where none is said. */
		attempt: attemptNumber.optional(),
		/** The learner's own body file: sending it is to agree that it is kept. */
		own: z.unknown().optional()
	}),
	run: async (asked, { world, caller }) => {
		const assignment = await assignedTo(world, caller, asked.assignment);
		const attempt = await opened(world, assignment.id, caller.id, asked.attempt);
		const { practice, mode } = assignment.task;
		const body = practice ? undefined : await bodyOf(world, assignment, attempt, asked.own);
		const events = await eventsOf(world, attempt.id);
		const last = events.at(-1);
		const until = endOf(assignment.task, attempt);
		const isTold = mode === 'practice' || (until !== null && until < world.now());
		const all = await attemptsAt(world, assignment.id, caller.id);
		return {
			...shownOf(assignment),
			learner: caller.id,
			body,
			until,
			attempt: attempt.number,
			attempts: all.map(({ number }) => number),
			isAnotherLeft: isAnotherLeft(assignment.task, all, world.now()),
			exercises: practice ? await exercisesOf(world, assignment, attempt) : [],
			isHandedIn: attempt.ended !== null,
			remarks: await remarksFor(world, assignment, attempt.id, isTold),
			entries: standing(events.filter(({ done }) => isAtAStep(world, done))),
			answered: events.flatMap(({ done }) => ('exercise' in done ? [done] : [])),
			receipt: last && { number: last.number, at: last.at }
		};
	}
});

/** Shows an assignment as a learner sees it, to the teacher who sets it: nothing is handed in. */
export const previewAssignment = useCase({
	who: 'teacher',
	input: z.strictObject({ assignment: id }),
	run: async (asked, { world, caller }) => {
		const assignment = await setBy(world, caller, asked.assignment);
		const { task, practised } = assignment;
		const shown = task.body.kind === 'own' ? ({ kind: 'each' } as const) : task.body;
		return {
			...shownOf(assignment),
			learner: undefined,
			body: task.practice
				? undefined
				: bodyFor({ body: shown }, methodsOf(assignment.asked), assignment.id, undefined),
			until: task.closes,
			...{ attempt: 1, attempts: [1], isAnotherLeft: false, isHandedIn: false },
			exercises: task.practice ? exerciseSet(task.practice, practised, assignment.id) : [],
			...{ remarks: [], entries: {}, answered: [], receipt: undefined }
		};
	}
});

/** What is told to a learner of their attempts at one assignment: what is right in an exam when it is over. */
const toldOf = async (world: World, assignment: Assignment, own: readonly AttemptRow[]) => {
	const { task } = assignment;
	const isOver = (attempt: Pick<AttemptRow, 'extra' | 'ended'>): boolean => {
		const until = endOf(task, attempt);
		return until !== null && until <= world.now();
	};
	const told = own.filter((each) => each.received > 0 && (task.mode === 'practice' || isOver(each)));
	const seen = await verdictsOf(world, assignment, told);
	const attempts = own.map((each) => ({ ...each, seen: seen.get(each.id) }));
	const best = bestOf(attempts.flatMap(({ seen: said, ...each }) => (said ? [{ ...each, seen: said }] : [])));
	const last = own.at(-1) ?? { extra: 0, ended: null };
	return {
		until: endOf(task, last),
		over: isOver(last),
		isHandedIn: last.ended !== null,
		received: own.reduce((sum, each) => sum + each.received, 0),
		/** Of the attempt that counts. */
		total: best?.seen.total,
		attempts: attempts.map(({ number, seen: said }) => ({
			...{ number, total: said?.total, counts: number === best?.number }
		})),
		mayBeginAnew: mayBeginAnew(task, own, world.now())
	};
};

/** What the caller's class has been set and has begun, with how far they have come. */
export const ownAssignments = useCase({
	who: 'learner',
	input: z.strictObject({}),
	run: async (_, { world, caller }) => {
		const { db } = world.store;
		const set = await db
			.selectFrom('assignments')
			.selectAll()
			.where('class', '=', caller.class)
			.orderBy('id')
			.execute();
		const attempts = await db
			.selectFrom('attempts')
			.selectAll()
			.where('learner', '=', caller.id)
			.orderBy('number')
			.execute();
		const found = [];
		for (const row of set) {
			const assignment = assignmentOf(world, row);
			const { task } = assignment;
			if ((task.opens ?? 0) > world.now()) continue;
			const own = attempts.filter((each) => each.assignment === row.id);
			found.push({
				...{ id: row.id, name: row.name, mode: task.mode },
				...(await toldOf(world, assignment, own))
			});
		}
		return found;
	}
});
