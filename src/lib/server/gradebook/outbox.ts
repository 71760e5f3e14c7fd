import { assignmentOf, attemptsAt, type Assignment } from '../handing/attempts.ts';
import { newSecret } from '../people/ids.ts';
import type { AttemptRow, MarkColumnRow, PlatformRow, SendingRow } from '../store/tables.ts';
import type { World } from '../world.ts';
import { scoreOf, type Score } from './score.ts';
import { NotServed, type GradebookService, type Outcome } from './service.ts';

/** What a column of marks holds at most. Marks are sent with what they are out of, so any number does. */
export const MOST = 100;
/** A learner's work is looked at no oftener, in milliseconds: between, more of it may have come in. */
const LOOK_AGAIN = 30_000;
/** The most that is looked at, and sent, together. */
const TOGETHER = 20;
/** How long a process has what it sends for itself: longer than all that it asks a platform for one mark. */
const HOLDS = 90_000;
/** The wait after a first try that failed, in milliseconds; twice as long after each other one, up to the longest. */
const FIRST_WAIT = 15_000;
const LONGEST_WAIT = 6 * 60 * 60_000;
/** Tries after which a mark waits for a teacher: they take about a day. */
const MOST_TRIES = 16;

/** The wait after some tries, drawn, so that what failed together does not come back together. */
export const waitAfter = (tries: number, drawn = Math.random()): number =>
	Math.round(Math.min(LONGEST_WAIT, FIRST_WAIT * 2 ** (tries - 1)) * (0.5 + drawn / 2));

/** What somebody handed in since it was looked at, or ended, or was judged anew, or what has closed. */
const changed = ({
	store: { db },
	now
}: World): Promise<{ readonly id: string; readonly looked: number }[]> =>
	db
		.selectFrom('sendings')
		.innerJoin('mark_columns', 'mark_columns.id', 'sendings.mark_column')
		.select(['sendings.id', 'sendings.looked'])
		.where('sendings.looked', '<=', now() - LOOK_AGAIN)
		.where((is) => {
			const attempts = is
				.selectFrom('attempts')
				.whereRef('attempts.assignment', '=', 'mark_columns.assignment')
				.whereRef('attempts.learner', '=', 'sendings.person')
				.where('attempts.received', '>', 0);
			const received = attempts.select(({ fn }) => fn.sum<number>('attempts.received').as('received'));
			return is.and([
				is.exists(attempts.select('attempts.id')),
				is.or([
					is(received, '>', is.ref('sendings.upto')),
					is('sendings.look_at', '<=', now()),
					is.exists(attempts.select('attempts.id').whereRef('attempts.ended', '>', 'sendings.looked')),
					is.exists(
						attempts
							.innerJoin('verdicts', 'verdicts.attempt', 'attempts.id')
							.select('verdicts.id')
							.whereRef('verdicts.at', '>', 'sendings.looked')
					)
				])
			]);
		})
		.orderBy('sendings.looked')
		.limit(TOGETHER)
		.execute();

/** The attempts that a mark is of, with their assignment; undefined where that was removed meanwhile. */
const workOf = async (
	world: World,
	sending: SendingRow
): Promise<{ readonly assignment: Assignment; readonly attempts: readonly AttemptRow[] } | undefined> => {
	const { db } = world.store;
	const row = await db
		.selectFrom('assignments')
		.innerJoin('mark_columns', 'mark_columns.assignment', 'assignments.id')
		.selectAll('assignments')
		.where('mark_columns.id', '=', sending.mark_column)
		.executeTakeFirst();
	if (!row) return undefined;
	return { assignment: assignmentOf(world, row), attempts: await attemptsAt(world, row.id, sending.person) };
};

/** Whether a score says what the last one said: that more was handed in, which changed nothing, is not sent. */
const isSame = (score: Score, last: string | null): boolean => {
	const said = (each: Score): string => JSON.stringify({ ...each, submission: undefined });
	return last !== null && said(score) === said(JSON.parse(last) as Score);
};

/** Looks at what has changed: where the score is another one, it is to be sent. Of several processes one looks at each. */
export const lookAtChanged = async (world: World): Promise<void> => {
	const { db } = world.store;
	for (const { id, looked } of await changed(world)) {
		const sending = await db
			.updateTable('sendings')
			.set({ looked: world.now() })
			.where('id', '=', id)
			.where('looked', '=', looked)
			.returningAll()
			.executeTakeFirst();
		const work = sending && (await workOf(world, sending));
		if (!work || work.attempts.length === 0) continue;
		const { score, upto, lookAt } = await scoreOf(world, work.assignment, work.attempts, sending.language);
		const fresh = {
			score: JSON.stringify(score),
			state: 'waiting',
			tries: 0,
			due: world.now()
		} as const;
		await db
			.updateTable('sendings')
			.set({ upto, look_at: lookAt, ...(isSame(score, sending.score) ? {} : fresh) })
			.where('id', '=', id)
			.execute();
	}
};

/** Takes marks that are due for this process alone, each with a time that is later than the one that it was last sent with. */
const hold = async ({ store: { db, kind }, now }: World, holder: string): Promise<SendingRow[]> => {
	const at = now();
	const due = db
		.selectFrom('sendings')
		.select('id')
		.where('state', '=', 'waiting')
		.where('due', '<=', at)
		.where('held_until', '<=', at)
		.orderBy('due')
		.limit(TOGETHER);
	// In a folder even a change of nothing is a wait for the right to write.
	if (kind === 'folder' && !(await due.executeTakeFirst())) return [];
	return db
		.with(
			(cte) => cte('picked').materialized(),
			() => (kind === 'postgres' ? due.forUpdate().skipLocked() : due)
		)
		.updateTable('sendings')
		.set(({ eb }) => ({
			holder,
			held_until: at + HOLDS,
			stamp: eb
				.case()
				.when('stamp', '<', at)
				.then(at)
				.else(eb('stamp', '+', 1))
				.end()
		}))
		.where('id', 'in', (from) => from.selectFrom('picked').select('id'))
		.where('held_until', '<=', at)
		.returningAll()
		.execute();
};

/** The column that a mark goes into, with its platform; its address is found or made where it is not known, by one process at a time. */
const columnFor = async (
	{ store: { db }, now }: World,
	service: GradebookService,
	sending: SendingRow
): Promise<{ readonly platform: PlatformRow; readonly scopes: string; readonly address: string }> => {
	const ask = (): Promise<MarkColumnRow> =>
		db.selectFrom('mark_columns').selectAll().where('id', '=', sending.mark_column).executeTakeFirstOrThrow();
	const column = await ask();
	const platform = await db
		.selectFrom('platforms')
		.selectAll()
		.where('id', '=', column.platform)
		.executeTakeFirstOrThrow();
	const { scopes } = column;
	if (column.address !== null) return { platform, scopes, address: column.address };
	if (column.columns === null) throw new NotServed('noColumn', 404);
	const own = db.updateTable('mark_columns').where('id', '=', column.id);
	const mine = await own
		.set({ held_until: now() + HOLDS })
		.where('held_until', '<=', now())
		.where('address', 'is', null)
		.executeTakeFirst();
	// Somebody else is at it, for another learner.
	if (mine.numUpdatedRows === 0n) throw new NotServed('noColumn', undefined, FIRST_WAIT / 5);
	try {
		const { link, assignment } = column;
		const { name: label } = await db
			.selectFrom('assignments')
			.select('name')
			.where('id', '=', assignment)
			.executeTakeFirstOrThrow();
		const wanted = { link, assignment, label, most: MOST };
		const address = await service.column(platform, scopes, column.columns, wanted);
		await own.set({ address }).execute();
		return { platform, scopes, address };
	} finally {
		await own.set({ held_until: 0 }).execute();
	}
};

/** Notes what came of a try, as far as nothing else has become of the mark meanwhile. */
const note = async (
	{ store: { db }, now }: World,
	sending: SendingRow,
	outcome: Outcome,
	problem?: NotServed
): Promise<void> => {
	const tries = sending.tries + 1;
	const own = db.updateTable('sendings').where('id', '=', sending.id).where('holder', '=', sending.holder);
	const state = !problem ? 'sent' : problem.mayPass && tries < MOST_TRIES ? 'waiting' : 'refused';
	const due = problem ? now() + Math.max(problem.wait, waitAfter(tries)) : sending.due;
	// The same score still, or a newer one that is due already.
	await own
		.set({ state, tries, due })
		.where('score', '=', sending.score)
		.where('due', '=', sending.due)
		.execute();
	await own.set({ held_until: 0, outcome, status: problem?.status ?? null }).execute();
};

/** Sends one mark that this process holds. Gives whether it arrived. */
const send = async (world: World, service: GradebookService, sending: SendingRow): Promise<void> => {
	try {
		const { platform, scopes, address } = await columnFor(world, service, sending);
		const { subject: userId, stamp, score } = sending;
		await service.post(platform, scopes, address, {
			userId,
			timestamp: new Date(stamp).toISOString(),
			...(JSON.parse(score ?? '{}') as Score)
		});
		await note(world, sending, 'sent');
	} catch (problem) {
		// Without the store nothing can be noted: it is held until that has passed, and sent again.
		if (!(problem instanceof NotServed)) throw problem;
		await note(world, sending, problem.outcome, problem);
	}
};

/** Sends all that is due, some at a time. */
export const sendDue = async (world: World, service: GradebookService, stop: AbortSignal): Promise<void> => {
	const holder = newSecret();
	while (!stop.aborted) {
		const held = await hold(world, holder);
		if (held.length === 0) return;
		await Promise.all(held.map((sending) => send(world, service, sending)));
	}
};
