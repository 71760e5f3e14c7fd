import type { Body } from '#shared/body.ts';
import type { Done, HandedEntry } from '#shared/hand-in.ts';
import { MOST_ATTEMPTS } from '#shared/hand-in-limits.ts';
import type { Override } from '#shared/remark.ts';
import { hashOf, newId } from '../people/ids.ts';
import { Refused } from '../refused.ts';
import type { AssignmentRow, AttemptRow, VerdictRow } from '../store/tables.ts';
import type { Caller, World } from '../world.ts';
import type { ExerciseKey } from '#practice/exercises/exercise.ts';
import { inSlices, inTurn } from '../slices.ts';
import { hashOfMethods, marking, type Before, type Marked } from './judging.ts';
import { overridden, overridesOf } from './remarks.ts';
import { exerciseSet, readExercises } from './exercise-set.ts';
import { practiceMarking, type PractisedBefore } from './practice-marking.ts';
import { bodyFor, contentsOf, judgedBy, methodsOf, taskSchema, type Contents, type Task } from './task.ts';

/** An assignment as it was set. */
export interface Assignment extends Pick<AssignmentRow, 'id' | 'class' | 'name' | 'since'>, Contents {
	readonly task: Task;
}

/** Reads a row back. */
export const assignmentOf = (
	{ course }: World,
	{ id, class: of, name, since, task }: AssignmentRow
): Assignment => {
	const read = taskSchema.parse(JSON.parse(task));
	return { id, class: of, name, since, task: read, ...contentsOf(read, course) };
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

/** All attempts of a learner at an assignment, in the order in which they were begun. */
export const attemptsAt = async (
	{ store: { db } }: Pick<World, 'store'>,
	assignment: string,
	learner: string
): Promise<readonly AttemptRow[]> =>
	db
		.selectFrom('attempts')
		.selectAll()
		.where('assignment', '=', assignment)
		.where('learner', '=', learner)
		.orderBy('number')
		.execute();

/** Begins an attempt, where it is not begun yet: whoever asks twice at once has one. */
export const beginAttempt = async (
	{ store: { db }, now }: World,
	{ assignment, learner, number, extra }: Pick<AttemptRow, 'assignment' | 'learner' | 'number' | 'extra'>
): Promise<void> => {
	const since = now();
	const nothing = { body: null, exercises: null, received: 0, ended: null };
	await db
		.insertInto('attempts')
		.values({ id: newId(since), assignment, learner, number, extra, since, ...nothing })
		.onConflict((conflict) => conflict.columns(['assignment', 'learner', 'number']).doNothing())
		.execute();
};

/** A learner's last attempt at an assignment, begun where there is none yet. */
export const attemptAt = async (world: World, assignment: string, learner: string): Promise<AttemptRow> => {
	const last = async (): Promise<AttemptRow | undefined> =>
		(await attemptsAt(world, assignment, learner)).at(-1);
	const known = await last();
	if (known) return known;
	await beginAttempt(world, { assignment, learner, number: 1, extra: 0 });
	const begun = await last();
	if (!begun) throw new Refused('notThere');
	return begun;
};

/** By what the numbers of an attempt are drawn: others for each learner, and each time. */
const seedFor = (assignment: string, { learner, number }: Pick<AttemptRow, 'learner' | 'number'>): string =>
	`${assignment} ${learner}${number === 1 ? '' : ` ${number}`}`;

/** For whom an attempt that is not begun would draft, or another one's sheets are made. Throws BadInput, Refused. */
export const bodyOfSeed = (
	{ id, task, asked }: Assignment,
	attempt: Pick<AttemptRow, 'learner' | 'number'>,
	own?: unknown
): Body | undefined => bodyFor(task, methodsOf(asked), seedFor(id, attempt), own);

/**
 * The body of an attempt, chosen once: whatever comes later, it stays. Undefined while the learner has not handed in their own. Throws BadInput.
 *
 * @param own the learner's body file, where they agree to hand it in
 */
export const bodyOf = async (
	{ store: { db } }: World,
	assignment: Assignment,
	attempt: AttemptRow,
	own?: unknown
): Promise<Body | undefined> => {
	if (attempt.body !== null) return JSON.parse(attempt.body) as Body;
	const body = bodyOfSeed(assignment, attempt, own);
	if (body)
		await db
			.updateTable('attempts')
			.set({ body: JSON.stringify(body) })
			.where('id', '=', attempt.id)
			.where('body', 'is', null)
			.execute();
	return body;
};

/** The exercises of an attempt, drawn once: whatever a later program would draw, they stay. */
export const exercisesOf = async (
	{ store: { db } }: World,
	{ id, task, practised }: Assignment,
	attempt: AttemptRow
): Promise<readonly ExerciseKey[]> => {
	if (attempt.exercises !== null) return readExercises(attempt.exercises);
	const drawn = task.practice ? exerciseSet(task.practice, practised, seedFor(id, attempt)) : [];
	await db
		.updateTable('attempts')
		.set({ exercises: JSON.stringify(drawn) })
		.where('id', '=', attempt.id)
		.where('exercises', 'is', null)
		.execute();
	return drawn;
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

/** Whether something was done at a step that there is: whoever sends an event may name any, and names that every object has are among them. */
export const isAtAStep = ({ course }: Pick<World, 'course'>, done: Done): boolean =>
	'exercise' in done || (course.method(done.method)?.steps.some(({ name }) => name === done.step) ?? false);

/** The steps as they stand after some events, each at a step that there is: by method, then by step. */
export const standing = (
	events: readonly { readonly done: Done }[]
): Readonly<Record<string, Readonly<Record<string, HandedEntry>>>> => {
	const methods: Record<string, Record<string, HandedEntry>> = {};
	for (const { done } of events) if ('method' in done) (methods[done.method] ??= {})[done.step] = done.entry;
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
type Report = Marked & Pick<Seen, 'late'> & Partial<Before> & Partial<PractisedBefore>;

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

/** Whether another attempt is left after some, and it is not over; an exam is handed in before it is begun anew. */
export const isAnotherLeft = (
	{ wholeAttempts, closes, mode }: Pick<Task, 'wholeAttempts' | 'closes' | 'mode'>,
	attempts: readonly AttemptRow[],
	now: number
): boolean => {
	const last = attempts.at(-1);
	if (!last || attempts.length >= (wholeAttempts ?? MOST_ATTEMPTS)) return false;
	if (closes !== null && closes + last.extra <= now) return false;
	return mode === 'practice' || last.ended !== null;
};

/** Whether a learner may begin anew: another attempt is left, and something was handed in for the last one. */
export const mayBeginAnew = (...asked: Parameters<typeof isAnotherLeft>): boolean =>
	(asked[1].at(-1)?.received ?? 0) > 0 && isAnotherLeft(...asked);

const NOTHING: Marked = { steps: [], total: { mark: 0, outOf: 0, mistakes: 0, consequences: 0 } };

/** What was said of an attempt before, by this program and these methods. */
const judgedBefore = async (
	{ store: { db }, engine }: World,
	{ id }: AttemptRow,
	methods: string
): Promise<Partial<Report>> => {
	const row = await db
		.selectFrom('verdicts')
		.select('report')
		.where('attempt', '=', id)
		.where('engine', '=', engine)
		.where('methods', '=', methods)
		.orderBy('upto', 'desc')
		.executeTakeFirst();
	return row ? (JSON.parse(row.report) as Partial<Report>) : {};
};

/** What is said of what counts of an attempt, on from what was said before of no more than that. */
const found = async (
	{ task, asked, practised }: Assignment,
	attempt: AttemptRow,
	inTime: readonly Done[],
	{ steps = [], tried, practised: standings }: Partial<Report>
): Promise<Marked> => {
	if (task.practice && attempt.exercises !== null) {
		const before = standings && standings.events <= inTime.length ? { practised: standings } : undefined;
		const exercises = readExercises(attempt.exercises);
		return inSlices(practiceMarking(exercises, practised, task, inTime, before));
	}
	if (task.practice || attempt.body === null) return NOTHING;
	const before = tried && tried.events <= inTime.length ? { steps, tried } : undefined;
	return inSlices(marking(asked, JSON.parse(attempt.body) as Body, task, inTime, before));
};

/** Judges an attempt as it stands, on from where it was judged before. */
export const judgedNow = async (
	world: World,
	assignment: Assignment,
	attempt: AttemptRow
): Promise<VerdictRow> => {
	const events = await eventsOf(world, attempt.id);
	const until = endOf(assignment.task, attempt);
	const inTime = events.filter(({ at }) => until === null || at <= until).map(({ done }) => done);
	const methods = hashOfMethods(judgedBy(assignment));
	const before = await judgedBefore(world, attempt, methods);
	const marked = await found(assignment, attempt, inTime, before);
	const report: Report = { ...marked, late: events.length - inTime.length };
	const upto = events.at(-1)?.number ?? 0;
	return {
		id: hashOf([attempt.id, upto, until, world.engine, methods].join(' ')),
		...{ attempt: attempt.id, upto, until, engine: world.engine, methods },
		mark: Math.round(marked.total.mark * 100),
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
	const methods = hashOfMethods(judgedBy(assignment));
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

/** An attempt with what was said of it. */
export interface Attempted {
	readonly attempt: AttemptRow;
	readonly seen: Seen;
}

const shareOf = ({ seen: { total } }: Pick<Attempted, 'seen'>): number =>
	total.outOf > 0 ? total.mark / total.outOf : 0;

/** The attempt that counts, of those in which anything was handed in: the best by its share of what was asked; of equals the first. */
export const bestOf = <A extends Pick<Attempted, 'seen'>>(attempts: readonly A[]): A | undefined =>
	attempts.reduce<A | undefined>(
		(best, each) => (best && shareOf(best) >= shareOf(each) ? best : each),
		undefined
	);

/** A learner with what they handed in, and what was said of it: of the attempt that counts, and of all. */
export interface Handed extends Attempted {
	readonly id: string;
	readonly name: string;
	readonly attempts: readonly Attempted[];
}

/** All learners who have handed something in for an assignment, by name, each with what was said of it. */
export const handedIn = async (world: World, assignment: Assignment): Promise<readonly Handed[]> => {
	const { db } = world.store;
	const rows = await db
		.selectFrom('attempts')
		.selectAll()
		.where('assignment', '=', assignment.id)
		.where('received', '>', 0)
		.orderBy('number')
		.execute();
	const people = await db
		.selectFrom('people')
		.select(['id', 'name'])
		.where('class', '=', assignment.class)
		.orderBy('known_as')
		.execute();
	const seen = await verdictsOf(world, assignment, rows);
	return people.flatMap((person) => {
		const attempts = rows
			.filter(({ learner }) => learner === person.id)
			.flatMap((attempt) => {
				const own = seen.get(attempt.id);
				return own ? [{ attempt, seen: own }] : [];
			});
		const best = bestOf(attempts);
		return best ? [{ ...person, ...best, attempts }] : [];
	});
};
