import type { Body } from '#shared/body.ts';
import type { Done, HandedEntry } from '#shared/hand-in.ts';
import { hashOf, newId } from '../people/ids.ts';
import { Refused } from '../refused.ts';
import type { AssignmentRow, AttemptRow, VerdictRow } from '../store/tables.ts';
import type { Caller, World } from '../world.ts';
import { inSlices, inTurn } from '../slices.ts';
import { hashOfMethods, marking, type Before, type Marked } from './judging.ts';
import { overridden, overridesOf, type Override } from './remarks.ts';
import { askedIn, bodyFor, methodsOf, taskSchema, type Asked, type Task } from './task.ts';

/** An assignment as it was set. */
export interface Assignment extends Pick<AssignmentRow, 'id' | 'class' | 'name' | 'since'> {
	readonly task: Task;
	readonly asked: readonly Asked[];
}

/** Reads a row back. */
export const assignmentOf = (
	{ course }: World,
	{ id, class: of, name, since, task }: AssignmentRow
): Assignment => {
	const read = taskSchema.parse(JSON.parse(task));
	return { id, class: of, name, since, task: read, asked: askedIn(read, course) };
};

/** An assignment of a learner's class that has begun. Throws Refused where there is none, or it is another's. */
export const assignedTo = async (world: World, caller: Caller, wanted: string): Promise<Assignment> => {
	const row = await world.store.db
		.selectFrom('assignments')
		.selectAll()
		.where('id', '=', wanted)
		.where('class', '=', caller.class)
		.executeTakeFirst();
	const found = row && assignmentOf(world, row);
	if (!found || (found.task.opens ?? 0) > world.now()) throw new Refused('notThere');
	return found;
};

/** A learner's work on an assignment, begun where there is none yet. */
export const attemptAt = async (
	{ store: { db }, now }: World,
	assignment: string,
	learner: string
): Promise<AttemptRow> => {
	const at = now();
	await db
		.insertInto('attempts')
		.values({ id: newId(at), assignment, learner, body: null, received: 0, extra: 0, ended: null, since: at })
		.onConflict((conflict) => conflict.columns(['assignment', 'learner']).doNothing())
		.execute();
	return db
		.selectFrom('attempts')
		.selectAll()
		.where('assignment', '=', assignment)
		.where('learner', '=', learner)
		.executeTakeFirstOrThrow();
};

/**
 * The body of an attempt, chosen once: whatever comes later, it stays. Undefined while the learner has not handed in their own. Throws BadInput.
 *
 * @param own the learner's body file, where they agree to hand it in
 */
export const bodyOf = async (
	{ store: { db } }: World,
	{ id, task, asked }: Assignment,
	attempt: AttemptRow,
	own?: unknown
): Promise<Body | undefined> => {
	if (attempt.body !== null) return JSON.parse(attempt.body) as Body;
	const body = bodyFor(task, methodsOf(asked), `${id} ${attempt.learner}`, own);
	if (body)
		await db
			.updateTable('attempts')
			.set({ body: JSON.stringify(body) })
			.where('id', '=', attempt.id)
			.where('body', 'is', null)
			.execute();
	return body;
};

/** All events of an attempt, in the order of their receipts. */
export const eventsOf = async (
	{ store: { db } }: Pick<World, 'store'>,
	attempt: string
): Promise<readonly { readonly number: number; readonly at: number; readonly done: Done }[]> => {
	const rows = await db
		.selectFrom('events')
		.select(['number', 'at', 'done'])
		.where('attempt', '=', attempt)
		.orderBy('number')
		.execute();
	return rows.map(({ number, at, done }) => ({ number, at, done: JSON.parse(done) as Done }));
};

/** The steps as they stand after some events: by method, then by step. */
export const standing = (
	events: readonly { readonly done: Done }[]
): Readonly<Record<string, Readonly<Record<string, HandedEntry>>>> => {
	const methods: Record<string, Record<string, HandedEntry>> = {};
	for (const {
		done: { method, step, entry }
	} of events)
		(methods[method] ??= {})[step] = entry;
	return methods;
};

/** What the judge said of an attempt, and whether that is all that came in. */
export interface Seen extends Marked {
	readonly upto: number;
	/** When it was judged. */
	readonly at: number;
	/** Events that came in after the end, which do not count. */
	readonly late: number;
	/** The marks that teachers gave, those included that were taken back. The total counts them; the steps are as they were judged. */
	readonly overrides: readonly Override[];
	/** Whether this program, by the methods as they are now, would say the same. */
	readonly current: boolean;
}

/** A verdict as its row keeps it: with what each mark was found to be, so that it is found once. */
type Report = Marked & Pick<Seen, 'late'> & Partial<Before>;

/** What a row holds. */
export const seenOf = ({ report, upto, at }: VerdictRow): Seen => {
	const { steps, total, late } = JSON.parse(report) as Report;
	return { steps, total, late, upto, at, overrides: [], current: true };
};

/** Until when what a learner hands in counts: its end, or when they handed an exam in; null where there is no end. */
export const endOf = (
	{ closes }: Pick<Task, 'closes'>,
	{ extra, ended }: Pick<AttemptRow, 'extra' | 'ended'>
): number | null => ended ?? (closes === null ? null : closes + extra);

const NOTHING: Marked = { steps: [], total: { mark: 0, outOf: 0, mistakes: 0, consequences: 0 } };

/** What was said of an attempt before, by this program and these methods, where it was of no more than counts now. */
const judgedBefore = async (
	{ store: { db }, engine }: World,
	{ id }: AttemptRow,
	methods: string,
	counted: number
): Promise<Before | undefined> => {
	const row = await db
		.selectFrom('verdicts')
		.select('report')
		.where('attempt', '=', id)
		.where('engine', '=', engine)
		.where('methods', '=', methods)
		.orderBy('upto', 'desc')
		.executeTakeFirst();
	const { steps = [], tried } = row ? (JSON.parse(row.report) as Partial<Report>) : {};
	return tried && tried.events <= counted ? { steps, tried } : undefined;
};

/** Judges an attempt as it stands, on from where it was judged before. */
export const judgedNow = async (
	world: World,
	{ task, asked }: Assignment,
	attempt: AttemptRow
): Promise<VerdictRow> => {
	const events = await eventsOf(world, attempt.id);
	const until = endOf(task, attempt);
	const inTime = events.filter(({ at }) => until === null || at <= until).map(({ done }) => done);
	const body = attempt.body === null ? undefined : (JSON.parse(attempt.body) as Body);
	const methods = hashOfMethods(methodsOf(asked));
	const before = await judgedBefore(world, attempt, methods, inTime.length);
	const found = body ? await inSlices(marking(asked, body, task, inTime, before)) : NOTHING;
	const report: Report = { ...found, late: events.length - inTime.length };
	const upto = events.at(-1)?.number ?? 0;
	return {
		id: hashOf([attempt.id, upto, until, world.engine, methods].join(' ')),
		...{ attempt: attempt.id, upto, until, engine: world.engine, methods },
		mark: Math.round(found.total.mark * 100),
		report: JSON.stringify(report),
		at: world.now()
	};
};

/** What was said of an attempt as it stands, where it was judged since anything came in. */
const verdictBefore = async (
	{ store: { db } }: World,
	{ task }: Assignment,
	attempt: AttemptRow
): Promise<VerdictRow | undefined> => {
	const until = endOf(task, attempt);
	return db
		.selectFrom('verdicts')
		.selectAll()
		.where('attempt', '=', attempt.id)
		.where('upto', '=', attempt.received)
		.where('until', until === null ? 'is' : '=', until)
		.orderBy('at', 'desc')
		.executeTakeFirst();
};

/**
 * What is said of an attempt as it stands: what was said before where nothing has come in since, so that a newer program changes
 * no mark by itself. Every screen, table and file reads it from the one row that is kept. Others are answered while it is worked out.
 */
const judgedOf = async (world: World, assignment: Assignment, attempt: AttemptRow): Promise<Seen> => {
	const kept = await verdictBefore(world, assignment, attempt);
	if (kept) return seenOf(kept);
	return inTurn(async () => {
		// Somebody who looked at the same time may have been before us.
		const meanwhile = await verdictBefore(world, assignment, attempt);
		if (meanwhile) return seenOf(meanwhile);
		const row = await judgedNow(world, assignment, attempt);
		await world.store.db
			.insertInto('verdicts')
			.values(row)
			.onConflict((conflict) => conflict.column('id').doNothing())
			.execute();
		return seenOf(row);
	});
};

/**
 * What counts of some attempts, by attempt: what the judge said, with the marks that their teacher gave in its place. What was said
 * before is read together.
 */
export const verdictsOf = async (
	world: World,
	assignment: Assignment,
	attempts: readonly AttemptRow[]
): Promise<ReadonlyMap<string, Seen>> => {
	const ids = attempts.map(({ id }) => id);
	if (ids.length === 0) return new Map();
	const rows = await world.store.db
		.selectFrom('verdicts')
		.innerJoin('attempts', (join) =>
			join.onRef('attempts.id', '=', 'verdicts.attempt').onRef('attempts.received', '=', 'verdicts.upto')
		)
		.selectAll('verdicts')
		.where('attempts.id', 'in', ids)
		.orderBy('verdicts.at')
		.execute();
	const overrides = await overridesOf(world, ids);
	const methods = hashOfMethods(methodsOf(assignment.asked));
	const found = new Map<string, Seen>();
	for (const attempt of attempts) {
		const until = endOf(assignment.task, attempt);
		const last = rows.findLast((row) => row.attempt === attempt.id && row.until === until);
		const seen = last ? seenOf(last) : await judgedOf(world, assignment, attempt);
		const own = overrides.filter((each) => each.attempt === attempt.id);
		const current = !last || (last.engine === world.engine && last.methods === methods);
		found.set(attempt.id, { ...overridden(seen, own), overrides: own, current });
	}
	return found;
};

/** The same of one attempt. */
export const verdictOf = async (world: World, assignment: Assignment, attempt: AttemptRow): Promise<Seen> => {
	const found = (await verdictsOf(world, assignment, [attempt])).get(attempt.id);
	if (!found) throw new Error('an attempt has no verdict');
	return found;
};

/** A learner with what they handed in, and what was said of it. */
export interface Handed {
	readonly id: string;
	readonly name: string;
	readonly attempt: AttemptRow;
	readonly seen: Seen;
}

/** All learners who have handed something in for an assignment, by name, each with what was said of it. */
export const handedIn = async (world: World, assignment: Assignment): Promise<readonly Handed[]> => {
	const { db } = world.store;
	const attempts = await db
		.selectFrom('attempts')
		.selectAll()
		.where('assignment', '=', assignment.id)
		.where('received', '>', 0)
		.execute();
	const people = await db
		.selectFrom('people')
		.select(['id', 'name'])
		.where('class', '=', assignment.class)
		.orderBy('known_as')
		.execute();
	const seen = await verdictsOf(world, assignment, attempts);
	return people.flatMap((person) => {
		const attempt = attempts.find(({ learner }) => learner === person.id);
		const own = attempt && seen.get(attempt.id);
		return own ? [{ ...person, attempt, seen: own }] : [];
	});
};
