import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { returnPath } from '#server/people/invitations.ts';
import { callerOf } from '#server/people/sessions.ts';
import { USE_CASES } from '#server/use-cases/all.ts';
import { handedEvent, newSchool, PASSPHRASE, told, type School } from './school.ts';
import { onBoth } from './stores.ts';

const MINUTE = 60_000;
let made = 0;
/** A mark at A, so many millimetres below its place, under a key of its own. */
const markAt = (assignment: string, off: number) =>
	handedEvent(assignment, (made += 1), {
		entry: {
			placement: { kind: 'point', at: [0, 222 + off] },
			...{ checked: true, kept: false, help: 0, shown: false }
		}
	});

onBoth('what is set', (newStorePlace) => {
	let school: School;
	let teacher: string;
	let own: string;
	let ada: { readonly secret: string; readonly id: string };
	let bea: typeof ada;
	beforeAll(async () => {
		school = await newSchool(await newStorePlace());
		teacher = await school.teacher('Ms Alder');
		const { class: made, code } = await school.newClass(teacher, 'Alder');
		[own, ada, bea] = [made, await school.learner(code, 'Ada'), await school.learner(code, 'Bea')];
	});
	afterAll(() => school.close());

	const open = (who: typeof ada, assignment: string) =>
		school.ask(USE_CASES.openAssignment, who.secret, { assignment });
	const handIn = async (who: typeof ada, ...events: readonly unknown[]): Promise<void> => {
		await school.ask(USE_CASES.handIn, who.secret, { learner: who.id, events });
	};
	const seenOf = async (who: typeof ada, assignment: string) => {
		const { learners } = await school.ask(USE_CASES.readAssignment, teacher, { assignment });
		return learners.find(({ id }) => id === who.id)?.seen;
	};
	const listed = async (who: typeof ada, assignment: string) =>
		(await school.ask(USE_CASES.ownAssignments, who.secret, {})).find(({ id }) => id === assignment);

	it('is marked as strictly as the teacher asks: 1, 2 or 4 mm for a point', async () => {
		const marks: Record<string, readonly (number | undefined)[]> = {};
		for (const level of ['strict', 'normal', 'beginner'] as const) {
			const at = [];
			for (const off of [0.9, 1.1, 1.9, 2.1, 3.9, 4.1]) {
				const assignment = await school.newAssignment(teacher, own, { policy: { level } });
				expect((await open(ada, assignment)).level).toBe(level);
				await handIn(ada, markAt(assignment, off));
				at.push((await seenOf(ada, assignment))?.total.mark);
			}
			marks[level] = at;
		}
		expect(marks).toEqual({
			strict: [1, 0, 0, 0, 0, 0],
			normal: [1, 1, 1, 0, 0, 0],
			beginner: [1, 1, 1, 1, 1, 0]
		});
	});

	it('says whether help may be asked for', async () => {
		const assignment = await school.newAssignment(teacher, own, { hints: false });
		expect((await open(ada, assignment)).hints).toBe(false);
		expect((await open(ada, await school.newAssignment(teacher, own))).hints).toBe(true);
	});

	it('is over for a learner who hands an exam in: its marks are told from then on, and nothing counts after it', async () => {
		const assignment = await school.newAssignment(teacher, own, { mode: 'exam' });
		expect((await open(ada, assignment)).isHandedIn).toBe(false);
		await handIn(ada, markAt(assignment, 0));
		expect((await listed(ada, assignment))?.total).toBeUndefined();
		school.later(MINUTE);
		const end = () => told(school.ask(USE_CASES.endExam, ada.secret, { assignment }));
		expect(await end()).toBe('done');
		const at = school.world.now();
		expect(await listed(ada, assignment)).toMatchObject({ over: true, isHandedIn: true, until: at });
		expect((await listed(ada, assignment))?.total).toMatchObject({ mark: 1 });
		school.later(MINUTE);
		expect(await end()).toBe('done');
		await handIn(ada, markAt(assignment, 50));
		expect(await seenOf(ada, assignment)).toMatchObject({ late: 1, total: { mark: 1 } });
		expect(await open(ada, assignment)).toMatchObject({ isHandedIn: true, until: at });
		// The others' goes on.
		expect(await open(bea, assignment)).toMatchObject({ isHandedIn: false, until: null });
	});

	it('ends later for a learner who was given more time, also where it had ended', async () => {
		const closes = school.world.now() + 10 * MINUTE;
		const assignment = await school.newAssignment(teacher, own, { closes });
		await open(ada, assignment);
		school.later(15 * MINUTE);
		await handIn(ada, markAt(assignment, 0));
		expect(await seenOf(ada, assignment)).toMatchObject({ late: 1, total: { mark: 0 } });
		const give = (learner: string, minutes: unknown) =>
			told(school.ask(USE_CASES.giveTime, teacher, { assignment, learner, minutes }));
		expect(await give(ada.id, 20)).toBe('done');
		expect(await seenOf(ada, assignment)).toMatchObject({ late: 0, total: { mark: 1 } });
		expect((await open(ada, assignment)).until).toBe(closes + 20 * MINUTE);
		// Before she has opened it, too.
		expect(await give(bea.id, 30)).toBe('done');
		expect((await open(bea, assignment)).until).toBe(closes + 30 * MINUTE);
		expect(await give(ada.id, 0)).toBe('done');
		expect(await seenOf(ada, assignment)).toMatchObject({ late: 1, total: { mark: 0 } });
		expect(await give('nobody', 10)).toBe('notThere');
		for (const wrong of [-1, 1.5, 50_000, '10']) expect(await give(ada.id, wrong)).toBe('bad minutes');
	});

	it('can be changed until something is handed in for it, and stays as it was asked after that', async () => {
		const assignment = await school.newAssignment(teacher, own, { body: { kind: 'each' } });
		const before = await open(ada, assignment);
		const change = (name: string) => {
			const task = {
				lessons: ['40-back-levels'],
				body: { kind: 'one', id: 'heron' },
				policy: {},
				hints: false
			};
			return told(school.ask(USE_CASES.changeAssignment, teacher, { assignment, name, task }));
		};
		expect(await change('Levels')).toBe('done');
		const after = await open(ada, assignment);
		expect(after).toMatchObject({ name: 'Levels', hints: false, body: { name: 'Heron' } });
		expect(before.body).not.toEqual(after.body);
		await handIn(ada, markAt(assignment, 0));
		expect(await change('Other levels')).toBe('frozen');
		expect((await open(ada, assignment)).name).toBe('Levels');
		const { frozen } = await school.ask(USE_CASES.readAssignment, teacher, { assignment });
		expect(frozen).toBe(true);
	});
});

describe('a teacher who lost the passphrase', () => {
	onBoth('comes in again by a link of the server', (newStorePlace) => {
		it('once, in time, and by no link that makes a teacher', async () => {
			const school = await newSchool(await newStorePlace());
			const alder = await school.teacher('Ms Alder');
			expect(await returnPath(school.world, 'Mr Birch')).toBeUndefined();
			const linkFor = async (name: string): Promise<string> =>
				/link=([^&]+)/.exec((await returnPath(school.world, name)) ?? '')?.[1] ?? '';
			const again = (link: string, passphrase: string) =>
				school.ask(USE_CASES.comeAgain, undefined, { link, passphrase });
			const [earlier, link] = [await linkFor('ms ALDER'), await linkFor('Ms Alder')];
			expect(await told(again(earlier, PASSPHRASE))).toBe('linkUsed');
			const become = { link, name: 'Mr Birch', passphrase: PASSPHRASE };
			expect(await told(school.ask(USE_CASES.becomeTeacher, undefined, become))).toBe('linkUsed');
			const { path } = await school.ask(USE_CASES.inviteTeacher, alder, {});
			expect(await told(again(path.split('link=')[1] ?? '', PASSPHRASE))).toBe('linkUsed');

			const { secret } = await again(link, 'four green ribbons');
			expect((await callerOf(school.world, secret))?.name).toBe('Ms Alder');
			expect(await callerOf(school.world, alder)).toBeUndefined();
			expect(await told(again(link, PASSPHRASE))).toBe('linkUsed');
			const signIn = (passphrase: string) =>
				told(school.ask(USE_CASES.signIn, undefined, { name: 'Ms Alder', passphrase }));
			expect(await signIn(PASSPHRASE)).toBe('notTogether');
			expect(await signIn('four green ribbons')).toBe('done');

			const late = await linkFor('Ms Alder');
			school.later(8 * 24 * 60 * MINUTE);
			expect(await told(again(late, PASSPHRASE))).toBe('linkUsed');
			await school.close();
		});
	});
});
