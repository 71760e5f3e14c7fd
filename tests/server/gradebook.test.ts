import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { callerOf } from '#server/people/sessions.ts';
import { lookAtChanged, sendDue, waitAfter } from '#server/gradebook/outbox.ts';
import { startSending } from '#server/gradebook/sender.ts';
import { GradebookService } from '#server/gradebook/service.ts';
import type { StorePlace } from '#server/settings.ts';
import { openStore } from '#server/store/store.ts';
import { USE_CASES } from '#server/use-cases/all.ts';
import { ALL_SCOPES, Gradebook } from './gradebook-server.ts';
import { arrive, claim, newPlatform, TEACHER, type Platform } from './platform.ts';
import { handedEvent, newSchool, type School } from './school.ts';
import { onBoth } from './stores.ts';

const LEVELS = 6;
const MINUTE = 60_000;
type Claims = Readonly<Record<string, unknown>>;

describe('the wait after a try that failed', () => {
	it('is twice as long each time, drawn between half and whole, up to six hours', () => {
		expect([1, 2, 3, 4].map((tries) => waitAfter(tries, 1))).toEqual([15_000, 30_000, 60_000, 120_000]);
		expect([1, 2, 3].map((tries) => waitAfter(tries, 0))).toEqual([7_500, 15_000, 30_000]);
		expect(waitAfter(15, 1)).toBe(6 * 60 * MINUTE);
	});
});

onBoth('marks for a learning platform', (newStorePlace) => {
	let place: StorePlace;
	let school: School;
	let platform: Platform;
	let gradebook: Gradebook;
	let service: GradebookService;
	let teacher: string;
	let inClass: string;
	let number = 0;
	const never = new AbortController().signal;

	beforeAll(async () => {
		place = await newStorePlace();
		school = await newSchool(place);
		platform = await newPlatform();
		gradebook = await new Gradebook({
			keys: () => school.ask(USE_CASES.ownKeys, undefined, {}),
			now: () => school.world.now(),
			client: 'square-across'
		}).start();
		await platform.enter(school, await school.teacher('Ms Alder'), { token: `${gradebook.address}/token` });
		service = new GradebookService(school.world, never);
		teacher = await comes({ sub: 'the teacher', [claim('roles')]: [TEACHER] });
		inClass = (await school.ask(USE_CASES.ownClasses, teacher, {}))[0]?.id ?? '';
	});
	afterAll(async () => {
		platform.close();
		gradebook.close();
		await school.close();
	});
	beforeEach(() => {
		school.later(2 * MINUTE);
		gradebook.posted.length = 0;
		gradebook.refused.length = 0;
	});
	afterEach(() => expect(gradebook.troubles).toEqual([]));

	const comes = async (claims: Claims): Promise<string> => {
		const found = await arrive(school, platform, claims);
		if (found.kind !== 'in') throw new Error(found.kind);
		return found.secret;
	};

	/** Somebody who has come to an assignment by a link of its own, and what they hand in. */
	const newLearner = async (more: Claims = {}, task: Claims = {}) => {
		number += 1;
		const [sub, link] = [`learner ${number}`, `link ${number}`];
		const assignment = await school.newAssignment(teacher, inClass, task);
		const claims = {
			sub,
			[claim('custom')]: { assignment },
			[claim('resource_link')]: { id: link },
			...gradebook.claim(),
			...more
		};
		const secret = await comes(claims);
		const learner = (await callerOf(school.world, secret))?.id ?? '';
		await school.ask(USE_CASES.openAssignment, secret, { assignment });
		let sequence = 0;
		const handIn = async (done: Claims = {}): Promise<void> => {
			sequence += 1;
			const events = [handedEvent(assignment, sequence, done)];
			await school.ask(USE_CASES.handIn, secret, { learner, events });
		};
		return { sub, link, assignment, secret, learner, claims, handIn };
	};
	const round = async (): Promise<void> => {
		await lookAtChanged(school.world);
		await sendDue(school.world, service, never);
	};
	const scores = () => gradebook.posted.map(({ score }) => score);
	const open = async () => (await school.ask(USE_CASES.classSendings, teacher, { class: inClass })).open;
	const wrong = {
		entry: { placement: { kind: 'point', at: [40, 222] }, checked: true, kept: false, help: 0, shown: false }
	};

	it('are those of the best of several attempts, each sent later than the last', async () => {
		const { handIn, assignment, secret } = await newLearner({}, { wholeAttempts: 3 });
		const next = async (after: number): Promise<void> => {
			await school.ask(USE_CASES.beginAnew, secret, { assignment, after });
			await school.ask(USE_CASES.openAssignment, secret, { assignment });
		};
		const given = () => scores().map(({ scoreGiven }) => scoreGiven);
		await handIn();
		await round();
		expect(given()).toEqual([1]);
		school.later(MINUTE);
		await next(1);
		await handIn({ attempt: 2, ...wrong });
		await round();
		// The second is worse: what arrives is still the first, which is over now.
		expect(given().every((mark) => mark === 1)).toBe(true);
		school.later(MINUTE);
		await next(2);
		await handIn({ attempt: 3 });
		await handIn({
			attempt: 3,
			step: 'W',
			entry: { ...wrong.entry, placement: { kind: 'point', at: [0, 425] } }
		});
		await round();
		expect(given().at(-1)).toBe(2);
		const times = scores().map(({ timestamp }) => Date.parse(timestamp));
		expect(times).toEqual([...new Set(times)].toSorted((a, b) => a - b));
	});

	it('arrive once each time that they change, each later than the last, with a comment and when it was handed in', async () => {
		const { handIn, sub, link, assignment } = await newLearner();
		await round();
		expect(scores()).toEqual([]);
		await handIn();
		const at = new Date(school.world.now()).toISOString();
		school.later(MINUTE);
		await round();
		expect(scores()).toEqual([
			{
				userId: sub,
				timestamp: new Date(school.world.now()).toISOString(),
				activityProgress: 'InProgress',
				gradingProgress: 'FullyGraded',
				scoreGiven: 1,
				scoreMaximum: LEVELS,
				comment: '1 of 6, 0 mistakes',
				submission: { submittedAt: at }
			}
		]);
		expect(gradebook.columns.filter((each) => each.resourceLinkId === link)).toMatchObject([
			{ scoreMaximum: 100, label: 'The back', resourceId: assignment }
		]);
		school.later(MINUTE);
		await round();
		// More that changes nothing is not sent either.
		await handIn();
		school.later(MINUTE);
		await round();
		expect(scores().length).toBe(1);
		await handIn(wrong);
		school.later(MINUTE);
		await round();
		expect(scores()[1]).toMatchObject({ scoreGiven: 0, comment: '0 of 6, 1 mistake' });
		expect(gradebook.refused).toEqual([]);
	});

	it('are said in the language of the platform’s pages', async () => {
		const { handIn } = await newLearner({ [claim('launch_presentation')]: { locale: 'es-MX' } });
		await handIn();
		await round();
		expect(scores()[0]?.comment).toBe('1 de 6, 0 errores');
	});

	it('go into the column that the link brought, or that the platform has for it', async () => {
		const brought = gradebook.addColumn({ scoreMaximum: 20, label: 'Brought' });
		const one = await newLearner(gradebook.claim(brought));
		await one.handIn();
		const other = await newLearner();
		// It has several of the link, on pages of one: the last is the assignment's own.
		for (const label of ['Beside', 'Beside too'])
			gradebook.addColumn({ scoreMaximum: 9, label, resourceLinkId: other.link });
		const { link: resourceLinkId, assignment: resourceId } = other;
		const there = gradebook.addColumn({ scoreMaximum: 12, label: 'There', resourceLinkId, resourceId });
		gradebook.pageOf = 1;
		await other.handIn();
		const columns = gradebook.columns.length;
		await round();
		expect(new Set(gradebook.posted.map(({ column }) => column))).toEqual(new Set([brought, there]));
		gradebook.pageOf = 100;
		expect(gradebook.columns.length).toBe(columns);
		expect(gradebook.cells.get(`${there} ${other.sub}`)?.mark).toBe(2);
	});

	it('are sent with one leave until it runs out, and with a new one where it is taken back', async () => {
		const { handIn } = await newLearner();
		await handIn();
		await round();
		const before = gradebook.tokens;
		const more = [await newLearner(), await newLearner()];
		for (const each of more) await each.handIn();
		await round();
		expect(gradebook.tokens).toBe(before);
		school.later(2 * 60 * MINUTE);
		for (const each of more) await each.handIn(wrong);
		await round();
		expect(gradebook.tokens).toBe(before + 1);
		gradebook.forgetTokens();
		school.later(MINUTE);
		for (const each of more) await each.handIn();
		await round();
		expect(gradebook.tokens).toBe(before + 2);
		expect(scores().length).toBe(7);
	});

	it.each([
		['an error of its own', { status: 503 }, { outcome: 'answered', status: 503 }],
		['a connection that is cut', 'cut', { outcome: 'noAnswer', status: null }],
		['a time that it finds too old', { status: 409 }, { outcome: 'answered', status: 409 }]
	] as const)(
		'wait after %s, and are sent again with a later time and the same comment',
		async (_, trouble, told) => {
			const { handIn, sub } = await newLearner(
				gradebook.claim(gradebook.addColumn({ scoreMaximum: 10, label: 'x' }))
			);
			await handIn();
			gradebook.troubles.push(trouble, trouble);
			await round();
			const [first] = await open();
			expect(first).toMatchObject({ state: 'waiting', ...told, assignment: 'The back' });
			const wait = (first?.due ?? 0) - school.world.now();
			expect(wait).toBeGreaterThanOrEqual(7_500);
			expect(wait).toBeLessThanOrEqual(15_000);
			school.later(7_000);
			await round();
			expect(scores()).toEqual([]);
			school.later(8_000);
			await round();
			expect((await open())[0]?.due ?? 0).toBeGreaterThanOrEqual(school.world.now() + 15_000);
			school.later(30_000);
			await round();
			expect(scores()).toMatchObject([{ userId: sub, comment: '1 of 6, 0 mistakes' }]);
			expect(await open()).toEqual([]);
		}
	);

	it('wait as long as the platform wants to be left alone', async () => {
		const { handIn } = await newLearner(
			gradebook.claim(gradebook.addColumn({ scoreMaximum: 10, label: 'x' }))
		);
		await handIn();
		gradebook.troubles.push({ status: 429, headers: { 'retry-after': '600' } });
		await round();
		expect((await open())[0]?.due).toBe(school.world.now() + 600_000);
		school.later(10 * MINUTE);
		await round();
		expect(scores().length).toBe(1);
	});

	it('that the platform refuses wait for the teacher, who sends them again', async () => {
		const { handIn } = await newLearner(
			gradebook.claim(gradebook.addColumn({ scoreMaximum: 10, label: 'x' }))
		);
		await handIn();
		gradebook.troubles.push({ status: 422 });
		await round();
		school.later(24 * 60 * MINUTE);
		await round();
		expect(scores()).toEqual([]);
		const [refused, ...others] = await open();
		expect(others).toEqual([]);
		expect(refused).toMatchObject({ state: 'refused', outcome: 'answered', status: 422 });
		await school.ask(USE_CASES.sendMarkAgain, teacher, { class: inClass, sending: refused?.id });
		await round();
		expect(scores()).toMatchObject([{ comment: '1 of 6, 0 mistakes' }]);
	});

	it('have times that rise even where the clock stands still', async () => {
		const { handIn, learner } = await newLearner();
		await handIn();
		await round();
		const { db } = school.world.store;
		const { id } = await db
			.selectFrom('sendings')
			.select('id')
			.where('person', '=', learner)
			.executeTakeFirstOrThrow();
		for (let again = 0; again < 3; again += 1) {
			await school.ask(USE_CASES.sendMarkAgain, teacher, { class: inClass, sending: id });
			await sendDue(school.world, service, never);
		}
		const times = scores().map(({ timestamp }) => Date.parse(timestamp) - school.world.now());
		expect(times).toEqual([0, 1, 2, 3]);
		expect(gradebook.refused).toEqual([]);
	});

	it.each([
		['scores', ALL_SCOPES.filter((each) => !each.endsWith('/score')), true],
		['columns', ALL_SCOPES.filter((each) => !each.includes('lineitem')), false]
	])(
		'are not sent where the platform does not allow %s, and the teacher is told',
		async (_, scope, hasColumn) => {
			const column = hasColumn ? gradebook.addColumn({ scoreMaximum: 10, label: 'x' }) : undefined;
			const { handIn, learner } = await newLearner(gradebook.claim(column, scope));
			await handIn();
			await round();
			expect((await open())[0]).toMatchObject({ state: 'refused', outcome: 'notAllowed' });
			await school.ask(USE_CASES.removeLearner, teacher, { learner });
			expect(await open()).toEqual([]);
		}
	);

	it('of an exam are told when it is over, and what is not finished then is final', async () => {
		const closes = school.world.now() + 10 * MINUTE;
		const exam = await newLearner({}, { mode: 'exam', closes });
		const practice = await newLearner({}, { closes });
		await exam.handIn();
		await practice.handIn();
		school.later(MINUTE);
		await round();
		expect(scores().find(({ userId }) => userId === exam.sub)).toMatchObject({
			activityProgress: 'InProgress',
			gradingProgress: 'Pending'
		});
		expect(scores().find(({ userId }) => userId === exam.sub)).not.toHaveProperty('scoreGiven');
		expect(scores().find(({ userId }) => userId === practice.sub)).toMatchObject({
			gradingProgress: 'Pending',
			scoreGiven: 1
		});
		school.later(10 * MINUTE);
		await round();
		for (const { sub } of [exam, practice])
			expect(scores().findLast(({ userId }) => userId === sub)).toMatchObject({
				activityProgress: 'Completed',
				gradingProgress: 'FullyGraded',
				scoreGiven: 1,
				scoreMaximum: LEVELS
			});
		school.later(MINUTE);
		await round();
		expect(scores().length).toBe(4);
	});

	it('are sent once where several processes send, and one column is made for all', async () => {
		const first = await newLearner();
		await first.handIn();
		const others = [];
		for (let each = 0; each < 12; each += 1) {
			const sub = `${first.sub} beside ${each}`;
			const secret = await comes({ ...first.claims, sub });
			const learner = (await callerOf(school.world, secret))?.id ?? '';
			const { assignment } = first;
			await school.ask(USE_CASES.openAssignment, secret, { assignment });
			await school.ask(USE_CASES.handIn, secret, { learner, events: [handedEvent(assignment, 1)] });
			others.push(sub);
		}
		const store = await openStore(place);
		const beside = { ...school.world, store };
		const another = new GradebookService(beside, never);
		for (let again = 0; again < 3; again += 1) {
			await Promise.all([
				lookAtChanged(school.world).then(() => sendDue(school.world, service, never)),
				lookAtChanged(beside).then(() => sendDue(beside, another, never))
			]);
			school.later(MINUTE);
		}
		await store.close();
		expect(
			scores()
				.map(({ userId }) => userId)
				.sort()
		).toEqual([first.sub, ...others].sort());
		expect(gradebook.columns.filter((each) => each.resourceLinkId === first.link).length).toBe(1);
		expect(gradebook.refused).toEqual([]);
	});

	it('stop with the server, whatever the platform does, and are sent by the next one', async () => {
		const { handIn, sub } = await newLearner(
			gradebook.claim(gradebook.addColumn({ scoreMaximum: 10, label: 'x' }))
		);
		await handIn();
		gradebook.troubles.push('silent');
		const problems: unknown[] = [];
		const stop = startSending(school.world, (problem) => problems.push(problem));
		await expect.poll(() => gradebook.troubles.length).toBe(0);
		stop();
		await expect.poll(async () => (await open())[0]?.outcome).toBe('noAnswer');
		school.later(MINUTE);
		const stopNext = startSending(school.world, (problem) => problems.push(problem));
		await expect.poll(() => scores().map(({ userId }) => userId)).toEqual([sub]);
		stopNext();
		expect(problems).toEqual([]);
	});

	it('are among what is kept of a learner, and go with them', async () => {
		const { handIn, learner, sub } = await newLearner();
		await handIn();
		await round();
		const kept = await school.ask(USE_CASES.exportLearner, teacher, { learner });
		expect(kept.sent).toMatchObject([{ as: sub, score: { scoreGiven: 1 } }]);
		await school.ask(USE_CASES.removeLearner, teacher, { learner });
		const { db } = school.world.store;
		expect(await db.selectFrom('sendings').selectAll().where('person', '=', learner).execute()).toEqual([]);
	});

	it('are nobody’s where the platform has no gradebook', async () => {
		const { handIn, learner } = await newLearner({
			'https://purl.imsglobal.org/spec/lti-ags/claim/endpoint': undefined
		});
		await handIn();
		const { db } = school.world.store;
		expect(await db.selectFrom('sendings').selectAll().where('person', '=', learner).execute()).toEqual([]);
	});
});
