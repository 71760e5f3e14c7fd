import { z } from 'zod';
import { eventSchema, type Answered, type EventKey, type HandedEvent } from '#shared/hand-in.ts';
import { LONGEST_EVENT, MOST_AT_ONCE } from '#shared/hand-in-limits.ts';
import {
	assignedTo,
	assignmentOf,
	attemptAt,
	bodyOf,
	endOf,
	eventsOf,
	standing,
	verdictOf,
	type Assignment
} from '../handing/attempts.ts';
import { remarksFor } from '../handing/remarks.ts';
import { bodyFor, methodsOf } from '../handing/task.ts';
import { addToLog } from '../handing/log.ts';
import { id } from '../people/shapes.ts';
import { Refused } from '../refused.ts';
import type { Store } from '../store/store.ts';
import { togetherIn } from '../together.ts';
import { useCase } from '../use-case.ts';
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

/** Somebody's attempts at some assignments, by assignment: of all who hand in at once, in one question. One is begun when its assignment is opened. */
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
						.select(['assignment', 'id', 'learner'])
						.where('learner', 'in', learners)
						.where('assignment', 'in', assignments)
						.execute();
		const own = new Map(learners.map((learner) => [learner, new Map<string, string>()]));
		for (const { learner, assignment, id: attempt } of rows) own.get(learner)?.set(assignment, attempt);
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
			const attempt = attempts.get(done.assignment);
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
	ownBody: task.body.kind === 'own',
	lessons: asked.map(({ lesson, steps }) => ({ id: lesson.id, steps }))
});

/** Opens an assignment to the learner who is to do it: what is asked, for which body, and what they have done so far. */
export const openAssignment = useCase({
	who: 'learner',
	input: z.strictObject({
		assignment: id,
		/** The learner's own body file: sending it is to agree that it is kept. */
		own: z.unknown().optional()
	}),
	run: async (asked, { world, caller }) => {
		const assignment = await assignedTo(world, caller, asked.assignment);
		const attempt = await attemptAt(world, assignment.id, caller.id);
		const body = await bodyOf(world, assignment, attempt, asked.own);
		const events = await eventsOf(world, attempt.id);
		const last = events.at(-1);
		const until = endOf(assignment.task, attempt);
		const isTold = assignment.task.mode === 'practice' || (until !== null && until < world.now());
		return {
			...shownOf(assignment),
			learner: caller.id,
			body,
			until,
			isHandedIn: attempt.ended !== null,
			remarks: await remarksFor(world, assignment.asked, attempt.id, isTold),
			entries: standing(events),
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
		const { task } = assignment;
		const shown = task.body.kind === 'own' ? ({ kind: 'each' } as const) : task.body;
		return {
			...shownOf(assignment),
			learner: undefined,
			body: bodyFor({ body: shown }, methodsOf(assignment.asked), assignment.id, undefined),
			until: task.closes,
			isHandedIn: false,
			remarks: [],
			entries: {},
			receipt: undefined
		};
	}
});

/** What the caller's class has been set and has begun, with how far they have come. What is right in an exam is told when it is over. */
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
		const attempts = await db.selectFrom('attempts').selectAll().where('learner', '=', caller.id).execute();
		const found = [];
		for (const row of set) {
			const assignment = assignmentOf(world, row);
			const { task } = assignment;
			if ((task.opens ?? 0) > world.now()) continue;
			const attempt = attempts.find((each) => each.assignment === row.id);
			const until = endOf(task, attempt ?? { extra: 0, ended: null });
			const over = until !== null && until <= world.now();
			const told = attempt && attempt.received > 0 && (task.mode === 'practice' || over);
			const seen = told ? await verdictOf(world, assignment, attempt) : undefined;
			found.push({
				id: row.id,
				name: row.name,
				until,
				over,
				mode: task.mode,
				isHandedIn: (attempt?.ended ?? null) !== null,
				received: attempt?.received ?? 0,
				total: seen?.total
			});
		}
		return found;
	}
});
