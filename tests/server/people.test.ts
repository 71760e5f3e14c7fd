import { afterAll, beforeAll, beforeEach, expect, it } from 'vitest';
import { firstTeacherPath } from '#server/people/invitations.ts';
import { callerOf, STAYS } from '#server/people/sessions.ts';
import { LIMITS } from '#server/people/tries.ts';
import { USE_CASES } from '#server/use-cases/all.ts';
import { newSchool, PASSPHRASE, told, type School } from './school.ts';
import { onBoth } from './stores.ts';

const DAY = 24 * 60 * 60_000;

onBoth('the people of a school', (newStorePlace) => {
	let school: School;
	let teacher: string;
	beforeAll(async () => {
		school = await newSchool(await newStorePlace());
		await school.teacher('Ms Alder');
	});
	// Time goes on for weeks from test to test.
	beforeEach(async () => {
		const known = { name: 'Ms Alder', passphrase: PASSPHRASE };
		teacher = (await school.ask(USE_CASES.signIn, undefined, known)).secret;
	});
	afterAll(() => school.close());

	it('begin with one link, which is good once and only while there is no teacher', async () => {
		expect(await firstTeacherPath(school.world)).toBeUndefined();
		const other = await newSchool(await newStorePlace());
		const [earlier, path] = [await firstTeacherPath(other.world), await firstTeacherPath(other.world)];
		const become = (from: string | undefined, name: string) =>
			told(
				other.ask(USE_CASES.becomeTeacher, undefined, {
					link: from?.split('link=')[1],
					name,
					passphrase: PASSPHRASE
				})
			);
		expect(await become(earlier, 'A')).toBe('linkUsed');
		expect(await become('link=', 'A')).toBe('linkUsed');
		expect(await become(path, 'A')).toBe('done');
		expect(await become(path, 'B')).toBe('linkUsed');
		await other.close();
	});

	it('are teachers by invitation, each under a name of their own, and come back by it', async () => {
		const invited = async (): Promise<string> =>
			(await school.ask(USE_CASES.inviteTeacher, teacher, {})).path.split('link=')[1] ?? '';
		const link = await invited();
		const become = (name: string) =>
			told(school.ask(USE_CASES.becomeTeacher, undefined, { link, name, passphrase: PASSPHRASE }));
		// The link stays good for who only chose a name that is taken.
		expect(await become(' ms  ALDER ')).toBe('nameTaken');
		expect(await become('Mr Birch')).toBe('done');
		const late = await invited();
		school.later(8 * DAY);
		expect(
			await told(
				school.ask(USE_CASES.becomeTeacher, undefined, { link: late, name: 'C', passphrase: PASSPHRASE })
			)
		).toBe('linkUsed');
		const signIn = (name: string, passphrase: string) =>
			school.ask(USE_CASES.signIn, undefined, { name, passphrase });
		expect(await told(signIn('mr birch', PASSPHRASE))).toBe('done');
		expect(await told(signIn('Mr Birch', 'three blue button'))).toBe('notTogether');
		expect(await told(signIn('Nobody', PASSPHRASE))).toBe('notTogether');
	});

	it('join by a code, whose case and spaces are forgiven, while the class is open', async () => {
		const { class: own, code } = await school.newClass(teacher, 'Alder Row');
		expect(code).toMatch(/^[A-HJ-NP-Z2-9]{4} [A-HJ-NP-Z2-9]{4}$/);
		const join = (typed: string, name: string, passphrase = PASSPHRASE) =>
			told(school.ask(USE_CASES.join, undefined, { code: typed, name, passphrase }));
		expect(await join(code.toLowerCase().replace(' ', ' - '), 'Ada')).toBe('done');
		expect(await join(code, ' aDA')).toBe('nameTaken');
		expect(await join(code, 'Bea', 'short')).toBe('bad passphrase');
		expect(await join(code, ' \u0007 ')).toBe('bad name');
		expect(await join('AAAA AAAA', 'Bea')).toBe('noOpenClass');
		await school.ask(USE_CASES.setJoining, teacher, { class: own, open: false });
		expect(await join(code, 'Bea')).toBe('noOpenClass');
		// Who is in it comes back, and by no other name, passphrase or class.
		const back = (typed: string, name: string, passphrase = PASSPHRASE) =>
			told(school.ask(USE_CASES.comeBack, undefined, { code: typed, name, passphrase }));
		expect(await back(code, 'ada')).toBe('done');
		expect(await back(code, 'Ada', 'another one')).toBe('notTogether');
		expect(await back('AAAA AAAA', 'Ada')).toBe('notTogether');
		expect(await back(code, 'Ms Alder')).toBe('notTogether');
		await school.ask(USE_CASES.setJoining, teacher, { class: own, open: true });
		expect(await join(code, 'Bea')).toBe('noOpenClass');
		const { code: fresh } = await school.ask(USE_CASES.readClass, teacher, { class: own });
		expect(await join(fresh, 'Bea')).toBe('done');
		school.later(15 * DAY);
		expect(await join(fresh, 'Cora')).toBe('noOpenClass');
	});

	it('cannot guess: wrong tries are counted by address and by name, and forgotten later', async () => {
		const { code } = await school.newClass(teacher, 'Guessed');
		await school.learner(code, 'Ada');
		const guess = (address: string, name = 'Ada') =>
			told(school.ask(USE_CASES.comeBack, undefined, { code, name, passphrase: 'wrong wrong' }, address));
		for (let each = 0; each < LIMITS.name; each += 1)
			expect(await guess(`198.51.100.${each}`)).toBe('notTogether');
		expect(await guess('198.51.100.200')).toBe('tooMany');
		// Also with the right one: else it could be told by the answer.
		const right = { code, name: 'Ada', passphrase: PASSPHRASE };
		expect(await told(school.ask(USE_CASES.comeBack, undefined, right))).toBe('tooMany');
		school.later(11 * 60_000);
		expect(await told(school.ask(USE_CASES.comeBack, undefined, right))).toBe('done');

		const wrongCode = (address: string) =>
			told(
				school.ask(
					USE_CASES.join,
					undefined,
					{ code: 'BBBB BBBB', name: 'x', passphrase: PASSPHRASE },
					address
				)
			);
		const answers = await Promise.all(
			Array.from({ length: LIMITS.address + 20 }, (_, each) =>
				wrongCode(`2001:db8:1:2::${each.toString(16)}`)
			)
		);
		// All at once are no way round.
		expect(answers.filter((each) => each === 'noOpenClass').length).toBeLessThanOrEqual(LIMITS.address);
		expect(answers).toContain('tooMany');
		expect(await wrongCode('2001:db8:1:3::1')).toBe('noOpenClass');
	});

	it('are signed in for two weeks from when they last came, until they sign out', async () => {
		const { code } = await school.newClass(teacher, 'Sessions');
		const { secret } = await school.learner(code, 'Ada');
		const isIn = async () => (await callerOf(school.world, secret)) !== undefined;
		school.later(STAYS * 0.9);
		expect(await isIn()).toBe(true);
		school.later(STAYS * 0.9);
		expect(await isIn()).toBe(true);
		await school.ask(USE_CASES.signOut, secret, {});
		expect(await isIn()).toBe(false);
		const again = await school.ask(USE_CASES.comeBack, undefined, {
			code,
			name: 'Ada',
			passphrase: PASSPHRASE
		});
		school.later(STAYS + 1);
		expect(await callerOf(school.world, again.secret)).toBeUndefined();
	});

	it('have a forgotten passphrase made anew, which ends what was open under the old one', async () => {
		const { code } = await school.newClass(teacher, 'Forgotten');
		const { secret, id } = await school.learner(code, 'Ada');
		const { passphrase, name } = await school.ask(USE_CASES.resetPassphrase, teacher, { learner: id });
		expect(name).toBe('Ada');
		expect(await callerOf(school.world, secret)).toBeUndefined();
		const back = (typed: string) =>
			told(school.ask(USE_CASES.comeBack, undefined, { code, name: 'Ada', passphrase: typed }));
		expect(await back(PASSPHRASE)).toBe('notTogether');
		expect(await back(passphrase)).toBe('done');
	});

	it('can have all that is kept of them, and be removed with all of it', async () => {
		const { class: own, code } = await school.newClass(teacher, 'Kept');
		const { secret, id } = await school.learner(code, 'Ada');
		await school.learner(code, 'Bea');
		const kept = await school.ask(USE_CASES.exportLearner, secret, { learner: id });
		expect(kept.person).toEqual({
			id,
			role: 'learner',
			name: 'Ada',
			class: 'Kept',
			since: school.world.now()
		});
		expect(JSON.stringify(kept)).not.toContain('scrypt');
		await school.ask(USE_CASES.removeLearner, secret, { learner: id });
		expect(await callerOf(school.world, secret)).toBeUndefined();
		const { learners } = await school.ask(USE_CASES.readClass, teacher, { class: own });
		expect(learners.map(({ name }) => name)).toEqual(['Bea']);
		await school.ask(USE_CASES.removeClass, teacher, { class: own });
		const left = await school.world.store.db
			.selectFrom('people')
			.select('id')
			.where('class', '=', own)
			.execute();
		expect(left).toEqual([]);
	});

	it('keeps no passphrase and no secret that anybody could use', async () => {
		const { code } = await school.newClass(teacher, 'Secrets');
		const { secret } = await school.learner(code, 'Ada');
		const { db } = school.world.store;
		const all = JSON.stringify([
			await db.selectFrom('people').selectAll().execute(),
			await db.selectFrom('sessions').selectAll().execute(),
			await db.selectFrom('tries').selectAll().execute()
		]);
		expect(all).not.toContain(PASSPHRASE);
		expect(all).not.toContain(secret);
		expect(all).not.toContain('192.0.2.1');
	});
});
