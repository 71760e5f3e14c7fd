import { sql } from 'kysely';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Answered } from '#shared/hand-in.ts';
import { MOST_AT_ONCE } from '#shared/hand-in-limits.ts';
import { backUp, contentsOf, moveStore } from '#server/store/copy.ts';
import { isOutOfReach, openStore } from '#server/store/store.ts';
import { USE_CASES } from '#server/use-cases/all.ts';
import { newPostgres } from '../support/postgres.ts';
import { handedEvent, newSchool, type School } from './school.ts';
import { newPlace, onBoth } from './stores.ts';

const MINUTE = 60_000;
const numbers = (answers: readonly Answered[]): readonly (number | string)[] =>
	answers.map((each) => ('refused' in each ? each.refused : each.number));

/** A class with one learner, who has opened one assignment. */
const begun = async (school: School, task: Readonly<Record<string, unknown>> = {}) => {
	const teacher = await school.teacher('Ms Alder');
	const { class: own, code } = await school.newClass(teacher, 'Alder');
	const { secret, id } = await school.learner(code, 'Ada');
	const assignment = await school.newAssignment(teacher, own, task);
	await school.ask(USE_CASES.openAssignment, secret, { assignment });
	const handIn = async (...events: readonly unknown[]): Promise<readonly Answered[]> =>
		(await school.ask(USE_CASES.handIn, secret, { learner: id, events })).answers;
	return { teacher, code, class: own, learner: secret, id, assignment, handIn };
};
const point = (at: readonly [number, number], checked = true) => ({
	entry: { placement: { kind: 'point', at }, checked, kept: false, help: 0, shown: false }
});

onBoth('what is handed in', (newStorePlace) => {
	let school: School;
	let on: Awaited<ReturnType<typeof begun>>;
	beforeAll(async () => {
		school = await newSchool(await newStorePlace());
		on = await begun(school);
	});
	afterAll(() => school.close());

	it('has one receipt, however often it is sent, and a later one has a later number', async () => {
		const [first, second] = [handedEvent(on.assignment, 1), handedEvent(on.assignment, 2, { step: 'W' })];
		const receipts = await on.handIn(first, second);
		expect(receipts).toEqual([
			{ number: 1, at: school.world.now() },
			{ number: 2, at: school.world.now() }
		]);
		school.later(MINUTE);
		expect(await on.handIn(second, first)).toEqual([receipts[1], receipts[0]]);
		expect(numbers(await on.handIn(handedEvent(on.assignment, 1, {}, '2')))).toEqual([3]);
	});

	it('is kept aside where its key is that of another, and the first one stays', async () => {
		const other = handedEvent(on.assignment, 1, { step: 'H' });
		expect(numbers(await on.handIn(other, other, handedEvent(on.assignment, 3)))).toEqual([
			'conflict',
			'conflict',
			4
		]);
		const found = await school.ask(USE_CASES.exportLearner, on.learner, { learner: on.id });
		const [{ events, keptAside } = { events: [], keptAside: [] }] = found.handedIn;
		expect(events.map(({ number, done }) => [number, 'step' in done && done.step])).toEqual([
			[1, 'A'],
			[2, 'W'],
			[3, 'A'],
			[4, 'A']
		]);
		expect(keptAside.map(({ done }) => (done as { step: string }).step)).toEqual(['H']);
	});

	it('at a step that there is not is kept, and in nobody’s way: not even by a name that every object has', async () => {
		const apart = await newSchool(await newStorePlace());
		const own = await begun(apart);
		const names = ['__proto__', 'constructor', 'toString', 'hasOwnProperty', 'zzz'];
		const events = ['back-block', ...names].flatMap((method) => names.map((step) => ({ method, step })));
		const sent = events.map((each, i) => handedEvent(own.assignment, i + 1, each));
		const good = handedEvent(own.assignment, 100);
		expect(numbers(await own.handIn(...sent, good))).toEqual([...sent, good].map((_, i) => i + 1));
		await own.handIn(handedEvent(own.assignment, 101, { step: 'constructor' }));

		const { assignment } = own;
		const opened = await apart.ask(USE_CASES.openAssignment, own.learner, { assignment });
		expect(opened.entries).toEqual({ 'back-block': { A: expect.anything() as unknown } });
		expect(Object.keys(Object.prototype)).toEqual([]);
		const read = await apart.ask(USE_CASES.readWork, own.teacher, { assignment, learner: own.id });
		expect(read.events.map(({ done }) => 'step' in done && done.step)).toEqual(['A']);
		expect(read.seen?.steps.find(({ step }) => step === 'A')?.verdict.answer).toBe('right');
		const { learners } = await apart.ask(USE_CASES.classNow, own.teacher, { assignment });
		expect(learners[0]).toMatchObject({ received: sent.length + 2, step: undefined });
		const kept = await apart.ask(USE_CASES.exportLearner, own.learner, { learner: own.id });
		expect(kept.handedIn[0]?.events).toHaveLength(sent.length + 2);
		await apart.close();
	});

	it('takes each of many by itself: what cannot be read, or is of no assignment of theirs, is in the way of no other', async () => {
		const elsewhere = await begun(await newSchool(await newStorePlace()));
		const events = [
			handedEvent(on.assignment, 0),
			{ key: 1 },
			handedEvent(elsewhere.assignment, 10),
			handedEvent(on.assignment, 11, point([9e9, 0])),
			handedEvent(on.assignment, 12, { mark: 1 }),
			handedEvent(on.assignment, 13)
		];
		expect(numbers(await on.handIn(...events))).toEqual([
			'unreadable',
			'unreadable',
			'notThere',
			'unreadable',
			'unreadable',
			5
		]);
		const many = Array.from({ length: MOST_AT_ONCE + 1 }, (_, i) => handedEvent(on.assignment, 100 + i));
		await expect(on.handIn(...many)).rejects.toThrow();
		await expect(on.handIn()).rejects.toThrow();
	});

	it('is not in the way of another learner whose browser has the same key', async () => {
		const { secret, id } = await school.learner(on.code, 'Bea');
		const { entries } = await school.ask(USE_CASES.openAssignment, secret, { assignment: on.assignment });
		expect(entries).toEqual({});
		const events = [handedEvent(on.assignment, 1, { step: 'H' })];
		expect(numbers((await school.ask(USE_CASES.handIn, secret, { learner: id, events })).answers)).toEqual([
			1
		]);
	});

	it('is numbered without a gap where many come at once', async () => {
		const many = Array.from({ length: 120 }, (_, i) =>
			on.handIn(handedEvent(on.assignment, 1 + i, {}, '77'))
		);
		const answers = (await Promise.all(many)).flatMap(numbers).map(Number);
		expect(answers.sort((a, b) => a - b)).toEqual(Array.from({ length: 120 }, (_, i) => 6 + i));
	});

	it('is judged here, whatever a browser says: tries are counted from the log, and the screen and the table read one row', async () => {
		const other = await newSchool(await newStorePlace());
		const { class: own, teacher, learner, assignment, handIn } = await begun(other);
		const half = point([0, 111]);
		// Wrong, checked again at the same place, wrong elsewhere with help, right; and one that was never checked.
		await handIn(
			handedEvent(assignment, 1, half),
			handedEvent(assignment, 2, point([0, 111], false)),
			handedEvent(assignment, 3, half),
			handedEvent(assignment, 4, { entry: { ...point([0, 300]).entry, help: 1 } }),
			handedEvent(assignment, 5),
			handedEvent(assignment, 6, { step: 'W', ...point([0, 410], false) })
		);
		const readSteps = async () => {
			const { learners } = await other.ask(USE_CASES.readAssignment, teacher, { assignment });
			return learners.find(({ name }) => name === 'Ada')?.seen;
		};
		const seen = await readSteps();
		const [a, w] = seen?.steps ?? [];
		expect(a).toMatchObject({ step: 'A', tries: 2, help: 1, mark: 0.75, verdict: { answer: 'right' } });
		expect(w).toMatchObject({ step: 'W', tries: 0, mark: 0 });
		expect(seen?.total).toMatchObject({ mark: 0.75, outOf: 6 });
		const [told] = await other.ask(USE_CASES.ownAssignments, learner, {});
		expect(told?.total).toEqual(seen?.total);
		const row = await other.world.store.db.selectFrom('verdicts').selectAll().executeTakeFirstOrThrow();
		expect(row).toMatchObject({ mark: 75, upto: 6, until: null, engine: 'tested' });
		expect(row.methods).toMatch(/^[0-9a-f]{16}$/);

		// A newer program changes no mark by itself, but judges what comes in from now on.
		Object.assign(other.world, { engine: 'newer' });
		expect(await readSteps()).toEqual({ ...seen, current: false });
		await handIn(handedEvent(assignment, 7, { step: 'W' }));
		await readSteps();
		const rows = await other.world.store.db.selectFrom('verdicts').select('engine').orderBy('upto').execute();
		expect(rows).toEqual([{ engine: 'tested' }, { engine: 'newer' }]);
		await other.ask(USE_CASES.removeClass, teacher, { class: own });
		const { counts } = await contentsOf(other.world.store.db);
		expect(counts).toMatchObject({ assignments: 0, attempts: 0, events: 0, verdicts: 0 });
		await other.close();
	});

	it('is taken in after the end too, and does not count then', async () => {
		const other = await newSchool(await newStorePlace());
		const closes = other.world.now() + 10 * MINUTE;
		const { teacher, learner, assignment, handIn } = await begun(other, { closes, mode: 'exam' });
		const told = async () => (await other.ask(USE_CASES.ownAssignments, learner, {}))[0];
		await handIn(handedEvent(assignment, 1, point([0, 222], false)));
		expect((await told())?.total).toBeUndefined();
		other.later(11 * MINUTE);
		expect(numbers(await handIn(handedEvent(assignment, 2, point([0, 111], false))))).toEqual([2]);
		const { learners } = await other.ask(USE_CASES.readAssignment, teacher, { assignment });
		expect(learners[0]?.seen).toMatchObject({ late: 1, upto: 2, total: { mark: 1, outOf: 6 } });
		expect((await told())?.total).toMatchObject({ mark: 1 });
		await other.close();
	});

	it('is for an invented body of each learner, or for their own only where they agree', async () => {
		const other = await newSchool(await newStorePlace());
		const { teacher, class: own, code, learner } = await begun(other);
		const bea = (await other.learner(code, 'Bea')).secret;
		const each = await other.newAssignment(teacher, own, { body: { kind: 'each' } });
		const bodyOf = async (who: string, assignment: string, more: object = {}) =>
			(await other.ask(USE_CASES.openAssignment, who, { assignment, ...more })).body;
		expect(await bodyOf(learner, each)).toEqual(await bodyOf(learner, each));
		expect(await bodyOf(bea, each)).not.toEqual(await bodyOf(learner, each));
		const theirs = await other.newAssignment(teacher, own, { body: { kind: 'own' } });
		expect(await bodyOf(learner, theirs)).toBeUndefined();
		await expect(bodyOf(learner, theirs, { own: { unit: 'cm', bust: 96 } })).rejects.toThrow('notDrafted');
		const heron = { unit: 'cm', bust: 96, waist: 78, hip: 102, neck: 37, shoulderWidth: 38, backLength: 41 };
		const file = { ...heron, waistToHip: 21, frontLength: 44, bustHeight: 27, bustSpan: 19 };
		expect(await bodyOf(learner, theirs, { own: file })).toMatchObject({ measurements: { bust: 960 } });
		expect(await bodyOf(learner, theirs, { own: { ...file, bust: 97 } })).toMatchObject({
			measurements: { bust: 960 }
		});
		await other.close();
	});
});

describe('a store that cannot keep anything just now', () => {
	it('says so where the disk is full, keeps nothing by halves, and goes on when there is room', async () => {
		const { place, remove } = await newPlace('folder');
		const school = await newSchool(place);
		const { assignment, handIn } = await begun(school);
		const { db } = school.world.store;
		await sql`pragma wal_checkpoint(truncate)`.execute(db);
		const { rows } = await sql<{ page_count: number }>`pragma page_count`.execute(db);
		await sql.raw(`pragma max_page_count = ${(rows[0]?.page_count ?? 0) + 1}`).execute(db);
		const problems: unknown[] = [];
		let kept = 0;
		for (let sequence = 1; sequence <= 200; sequence += 1)
			await handIn(handedEvent(assignment, sequence)).then(
				() => (kept += 1),
				(problem: unknown) => problems.push(problem)
			);
		expect(problems.length).toBeGreaterThan(0);
		expect(problems.every(isOutOfReach)).toBe(true);
		expect((await contentsOf(db)).counts.events).toBe(kept);
		await sql.raw('pragma max_page_count = 1000000').execute(db);
		for (let sequence = 1; sequence <= 200; sequence += 1) await handIn(handedEvent(assignment, sequence));
		expect((await contentsOf(db)).counts.events).toBe(200);
		await school.close();
		await remove();
	});

	it('says so where the database has gone, and goes on when it is back', async () => {
		const postgres = await newPostgres();
		const school = await newSchool({ kind: 'postgres', url: postgres.url });
		const { assignment, handIn } = await begun(school);
		await handIn(handedEvent(assignment, 1));
		postgres.kill();
		const problem: unknown = await handIn(handedEvent(assignment, 2)).catch((reason: unknown) => reason);
		expect(isOutOfReach(problem)).toBe(true);
		postgres.start();
		expect(numbers(await handIn(handedEvent(assignment, 2), handedEvent(assignment, 1)))).toEqual([2, 1]);
		await school.close();
		postgres.remove();
	});
});

describe('what was handed in', () => {
	it('moves with everything else from a folder to PostgreSQL', async () => {
		const [folder, database] = [await newPlace('folder'), await newPlace('postgres')];
		const school = await newSchool(folder.place);
		const { teacher, assignment, handIn } = await begun(school);
		await handIn(handedEvent(assignment, 1), handedEvent(assignment, 2, point([1, 1])));
		await handIn(handedEvent(assignment, 1, { step: 'H' }));
		await school.ask(USE_CASES.readAssignment, teacher, { assignment });
		const to = await openStore(database.place);
		const { counts } = await moveStore(school.world.store, to);
		expect(counts).toMatchObject({ assignments: 1, attempts: 1, events: 2, conflicts: 1, verdicts: 1 });
		const lines: [string[], string[]] = [[], []];
		for (const [index, store] of [school.world.store, to].entries())
			await backUp(store, (line) => {
				lines[index]?.push(line);
				return Promise.resolve();
			});
		expect(lines[1]).toEqual(lines[0]);
		await Promise.all([school.close(), to.close()]);
		await Promise.all([folder.remove(), database.remove()]);
	});
});
