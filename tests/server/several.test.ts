import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { backUp, contentsOf, moveStore, restore } from '#server/store/copy.ts';
import { migrate } from '#server/store/migrate.ts';
import { MIGRATIONS } from '#server/store/migrations.ts';
import { connect, openStore } from '#server/store/store.ts';
import { USE_CASES } from '#server/use-cases/all.ts';
import { handedEvent, newSchool, told, type School } from './school.ts';
import { newPlace, onBoth } from './stores.ts';

const MINUTE = 60_000;
/** The depth of Heron's armhole level, as shared/bodies and the method give it, and one that is far off. */
const [RIGHT, WRONG] = [222, 180];

let made = 0;
const begun = async (school: School, task: Readonly<Record<string, unknown>>) => {
	const teacher = await school.teacher(`Teacher ${(made += 1)}`);
	const { class: own, code } = await school.newClass(teacher, 'Alder');
	const learner = await school.learner(code, 'Ada');
	const assignment = await school.newAssignment(teacher, own, { wholeAttempts: 3, ...task });
	const open = (attempt?: number) =>
		school.ask(USE_CASES.openAssignment, learner.secret, { assignment, ...(attempt && { attempt }) });
	let sequence = 0;
	const hand = async (step: string, depth: number, attempt?: number) => {
		sequence += 1;
		const entry = {
			placement: { kind: 'point', at: [0, depth] },
			...{ checked: true, kept: false, help: 0, shown: false }
		};
		const done = { step, entry, ...(attempt !== undefined && { attempt }) };
		const events = [handedEvent(assignment, sequence, done)];
		return (await school.ask(USE_CASES.handIn, learner.secret, { learner: learner.id, events })).answers;
	};
	const anew = (after: number) =>
		told(school.ask(USE_CASES.beginAnew, learner.secret, { assignment, after }));
	const listed = async () => {
		const all = await school.ask(USE_CASES.ownAssignments, learner.secret, {});
		return all.find(({ id }) => id === assignment);
	};
	const row = async () =>
		(await school.ask(USE_CASES.readAssignment, teacher, { assignment })).learners.find(
			({ id }) => id === learner.id
		);
	await open();
	return { teacher, class: own, learner, assignment, open, hand, anew, listed, row };
};

onBoth('an assignment that may be done several times', (newStorePlace) => {
	let school: School;
	beforeAll(async () => {
		school = await newSchool(await newStorePlace());
	});
	afterAll(() => school.close());

	it('counts the best, keeps all, and stops when none is left', async () => {
		const on = await begun(school, {});
		expect(await on.anew(1)).toBe('noMore');
		await on.hand('A', RIGHT);
		expect((await on.open()).isAnotherLeft).toBe(true);
		school.later(MINUTE);
		expect(await on.anew(1)).toBe('done');
		// Asked for twice, as by two pages at once, it is done once.
		expect(await on.anew(1)).toBe('done');
		expect(await on.open()).toMatchObject({ attempt: 2, attempts: [1, 2], entries: {}, isHandedIn: false });
		expect(await on.open(1)).toMatchObject({ attempt: 1, isHandedIn: true, until: school.world.now() });
		await on.hand('A', WRONG, 2);
		expect(await on.listed()).toMatchObject({
			total: { mark: 1 },
			attempts: [
				{ number: 1, total: { mark: 1 }, counts: true },
				{ number: 2, total: { mark: 0 }, counts: false }
			]
		});
		await on.anew(2);
		await on.open();
		await on.hand('A', RIGHT, 3);
		await on.hand('W', 425, 3);
		expect(await on.row()).toMatchObject({ received: 4, seen: { total: { mark: 2 } } });
		expect((await on.row())?.attempts.map(({ mark, counts }) => [mark, counts])).toEqual([
			[1, false],
			[0, false],
			[2, true]
		]);
		expect(await on.anew(3)).toBe('noMore');
		expect((await on.open()).isAnotherLeft).toBe(false);
		// The teacher looks at the one that counts, and at any other.
		const look = (attempt?: number) =>
			school.ask(USE_CASES.readWork, on.teacher, {
				...{ assignment: on.assignment, learner: on.learner.id },
				...(attempt && { attempt: String(attempt) })
			});
		expect(await look()).toMatchObject({
			attempt: 3,
			attempts: [{ number: 1 }, { number: 2 }, { number: 3 }]
		});
		expect((await look(2)).events).toHaveLength(1);
		const { handedIn } = await school.ask(USE_CASES.exportLearner, on.learner.secret, {
			learner: on.learner.id
		});
		expect(handedIn.map(({ attempt, events }) => [attempt, events.length])).toEqual([
			[1, 1],
			[2, 1],
			[3, 2]
		]);
	});

	it('takes what waited of an earlier attempt into that one, where it comes too late to count', async () => {
		const on = await begun(school, {});
		await on.hand('A', RIGHT);
		await on.anew(1);
		school.later(MINUTE);
		await on.hand('W', 425, 1);
		expect((await on.open()).entries).toEqual({});
		expect((await on.row())?.attempts).toMatchObject([{ number: 1, mark: 1 }]);
		expect(await on.hand('W', 425, 7)).toEqual([{ refused: 'notThere' }]);
	});

	it('has another body each time where one is drawn, and one attempt where nothing else is said', async () => {
		const on = await begun(school, { body: { kind: 'each' }, wholeAttempts: null });
		const bodies = [];
		for (const attempt of [1, 2, 3]) {
			bodies.push(JSON.stringify((await on.open()).body));
			await on.hand('A', RIGHT, attempt);
			expect(await on.anew(attempt)).toBe('done');
		}
		expect(new Set(bodies).size).toBe(3);
		const practice = { methods: ['back-block'], kinds: ['next-point', 'work-number'], count: 4 };
		const once = await begun(school, { lessons: [], practice, wholeAttempts: 2 });
		const first = (await once.open()).exercises;
		const events = [
			{ ...handedEvent(once.assignment, 1), done: { assignment: once.assignment, exercise: 1, help: 1 } }
		];
		await school.ask(USE_CASES.handIn, once.learner.secret, { learner: once.learner.id, events });
		expect(await once.anew(1)).toBe('done');
		expect((await once.open()).exercises).not.toEqual(first);
		const usual = await begun(school, { wholeAttempts: undefined });
		await usual.hand('A', RIGHT);
		expect(await usual.anew(1)).toBe('noMore');
	});

	it('begins an exam anew only when the last one is handed in, and nothing when it is over; more time goes on', async () => {
		const closes = school.world.now() + 10 * MINUTE;
		const on = await begun(school, { mode: 'exam', closes });
		await on.hand('A', RIGHT);
		expect(await on.anew(1)).toBe('noMore');
		await school.ask(USE_CASES.endExam, on.learner.secret, { assignment: on.assignment });
		expect(await on.anew(1)).toBe('done');
		await on.hand('A', WRONG, 2);
		// What is told is the first one's alone: the second is not over.
		expect((await on.listed())?.attempts.map(({ total }) => total?.mark)).toEqual([1, undefined]);
		await school.ask(USE_CASES.giveTime, on.teacher, {
			...{ assignment: on.assignment, learner: on.learner.id },
			minutes: 5
		});
		expect((await on.open()).until).toBe(closes + 5 * MINUTE);
		await school.ask(USE_CASES.endExam, on.learner.secret, { assignment: on.assignment });
		school.later(20 * MINUTE);
		expect(await on.anew(2)).toBe('noMore');
	});

	it('counts the missteps of a learner once, however often they were made anew', async () => {
		const on = await begun(school, {});
		await on.hand('A', WRONG);
		await on.anew(1);
		await on.hand('A', WRONG, 2);
		const found = await school.ask(USE_CASES.classMissteps, on.teacher, { assignment: on.assignment });
		expect(found.map(({ step, learners, of }) => [step, learners.length, of])).toEqual([['A', 1, 1]]);
	});

	it('counts the attempt to which a teacher gave the better mark', async () => {
		const on = await begun(school, {});
		await on.hand('A', WRONG);
		await on.anew(1);
		await on.hand('A', RIGHT, 2);
		const step = { assignment: on.assignment, learner: on.learner.id, method: 'back-block' };
		for (const name of ['A', 'W'])
			await school.ask(USE_CASES.overrideMark, on.teacher, {
				...{ ...step, step: name, attempt: '1' },
				...{ mark: 1, reason: 'Drawn on paper.' }
			});
		expect(await on.row()).toMatchObject({
			seen: { total: { mark: 2 } },
			attempts: [{ counts: true }, { counts: false }]
		});
	});
});

onBoth('a store of an earlier program', (newStorePlace, kind) => {
	it('keeps all that was handed in when several attempts become possible, and what hangs on it', async () => {
		const place = await newStorePlace();
		const before = connect(place);
		const last = MIGRATIONS.length;
		await migrate(before.db, kind, last - 1);
		const hex = (number: number): string => number.toString(16).padStart(32, '0');
		const { db } = before;
		await db
			.insertInto('classes')
			.values({ id: hex(1), name: 'Alder', code: 'A', open_until: 1, since: 1 })
			.execute();
		const person = {
			role: 'learner',
			name: 'Ada',
			known_as: 'ada',
			class: hex(1),
			passphrase: '',
			since: 1
		} as const;
		await db
			.insertInto('people')
			.values({ ...person, id: hex(2) })
			.execute();
		await db
			.insertInto('assignments')
			.values({ id: hex(3), class: hex(1), name: 'x', task: '{}', since: 1 })
			.execute();
		const attempt = {
			assignment: hex(3),
			learner: hex(2),
			body: null,
			received: 2,
			extra: 5,
			ended: 7,
			since: 1
		};
		await db
			.insertInto('attempts')
			.values({ ...attempt, id: hex(4) } as never)
			.execute();
		for (const number of [1, 2])
			await db
				.insertInto('events')
				.values({ id: hex(10 + number), attempt: hex(4), number, at: 1, done: '{}' })
				.execute();
		const comment = { attempt: hex(4), method: 'm', step: 's', text: 't', by: null, at: 1 };
		await db
			.insertInto('comments')
			.values({ ...comment, id: hex(20) })
			.execute();
		const lines: string[] = [];
		await before.close();

		const store = await openStore(place);
		const rows = await store.db.selectFrom('attempts').selectAll().execute();
		expect(rows).toEqual([{ ...attempt, id: hex(4), number: 1, exercises: null }]);
		expect((await contentsOf(store.db)).counts).toMatchObject({ attempts: 1, events: 2, comments: 1 });
		const another = { ...attempt, exercises: null };
		await store.db
			.insertInto('attempts')
			.values({ ...another, id: hex(5), number: 2 })
			.execute();
		await expect(
			store.db
				.insertInto('attempts')
				.values({ ...another, id: hex(6), number: 2 })
				.execute()
		).rejects.toThrow();
		await expect(
			store.db
				.insertInto('events')
				.values({ id: hex(30), attempt: hex(99), number: 9, at: 1, done: '{}' })
				.execute()
		).rejects.toThrow();
		await backUp(store, (line) => {
			lines.push(line);
			return Promise.resolve();
		});
		const other = connect(await newStorePlace());
		const asLines = async function* (): AsyncGenerator<string> {
			for (const line of lines) yield await Promise.resolve(line);
		};
		expect(await restore(other, asLines())).toEqual(await contentsOf(store.db));
		await other.close();
		await store.db.deleteFrom('attempts').where('id', '=', hex(4)).execute();
		expect((await contentsOf(store.db)).counts).toMatchObject({ attempts: 1, events: 0, comments: 0 });
		await store.close();
	});
});

describe('attempts', () => {
	it('are moved from a folder to PostgreSQL with their numbers and exercises', async () => {
		const [folder, database] = [await newPlace('folder'), await newPlace('postgres')];
		const school = await newSchool(folder.place);
		const practice = { methods: ['back-block'], kinds: ['work-number'], count: 2 };
		const on = await begun(school, { lessons: [], practice });
		const events = [
			{ ...handedEvent(on.assignment, 1), done: { assignment: on.assignment, exercise: 1, help: 1 } }
		];
		await school.ask(USE_CASES.handIn, on.learner.secret, { learner: on.learner.id, events });
		await on.anew(1);
		const to = await openStore(database.place);
		await moveStore(school.world.store, to);
		const rows = await to.db
			.selectFrom('attempts')
			.select(['number', 'exercises'])
			.orderBy('number')
			.execute();
		expect(rows.map(({ number, exercises }) => [number, exercises !== null])).toEqual([
			[1, true],
			[2, false]
		]);
		await to.close();
		await school.close();
		await folder.remove();
		await database.remove();
	});
});
