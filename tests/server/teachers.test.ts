import { afterAll, beforeAll, expect, it } from 'vitest';
import { callerOf } from '#server/people/sessions.ts';
import { Refused } from '#server/refused.ts';
import { USE_CASES } from '#server/use-cases/all.ts';
import { newSchool, type School } from './school.ts';
import { onBoth } from './stores.ts';

const told = async (asked: Promise<unknown>): Promise<string> => {
	try {
		await asked;
		return 'done';
	} catch (problem) {
		if (!(problem instanceof Refused)) throw problem;
		return problem.refusal;
	}
};

onBoth('two teachers of a class', (newStorePlace) => {
	let school: School;
	let alder: string;
	let birch: string;
	let own: string;
	let begun: number;
	const idOf = async (secret: string): Promise<string> => (await callerOf(school.world, secret))?.id ?? '';
	const names = async (asking: string): Promise<readonly string[]> =>
		(await school.ask(USE_CASES.readTeachers, asking, { class: own })).map(({ name }) => name);

	beforeAll(async () => {
		school = await newSchool(await newStorePlace());
		begun = school.world.now();
		[alder, birch] = [await school.teacher('Ms Alder'), await school.teacher('Mr Birch')];
		own = (await school.newClass(alder, 'Alder Row')).class;
	});
	afterAll(() => school.close());

	it('a colleague is added by name, whose case is forgiven, and may then do all of it', async () => {
		const add = (name: string) => told(school.ask(USE_CASES.addTeacher, alder, { class: own, name }));
		expect(await add('Mrs Cedar')).toBe('noTeacher');
		expect(await told(school.ask(USE_CASES.readClass, birch, { class: own }))).toBe('notThere');
		school.later(1);
		expect(await add('mr  BIRCH')).toBe('done');
		expect(await add('Mr Birch')).toBe('done');
		expect(await names(birch)).toEqual(['Ms Alder', 'Mr Birch']);
		expect((await school.ask(USE_CASES.ownClasses, birch, {})).map(({ name }) => name)).toEqual([
			'Alder Row'
		]);
	});

	it('a learner has the name of no teacher to be added by', async () => {
		const { code } = await school.ask(USE_CASES.readClass, alder, { class: own });
		await school.learner(code, 'Ada');
		const add = school.ask(USE_CASES.addTeacher, alder, { class: own, name: 'Ada' });
		expect(await told(add)).toBe('noTeacher');
	});

	it('a class is taken from one, or given up, as long as somebody teaches it', async () => {
		const take = (secret: string, teacher: string) =>
			told(school.ask(USE_CASES.takeClassFrom, secret, { class: own, teacher }));
		expect(await take(birch, 'nobody')).toBe('notThere');
		expect(await take(birch, await idOf(alder))).toBe('done');
		expect(await take(alder, await idOf(birch))).toBe('notThere');
		expect(await take(birch, await idOf(birch))).toBe('onlyTeacher');
		await school.ask(USE_CASES.addTeacher, birch, { class: own, name: 'Ms Alder' });
	});

	it('a teacher has all that is kept of them, and nothing of anybody else', async () => {
		await school.ask(USE_CASES.inviteTeacher, alder, {});
		const kept = await school.ask(USE_CASES.exportTeacher, alder, {});
		expect(kept.person).toEqual({
			id: await idOf(alder),
			role: 'teacher',
			name: 'Ms Alder',
			since: begun
		});
		expect(kept.classes.map(({ name }) => name)).toEqual(['Alder Row']);
		expect([kept.signedInUntil.length, kept.linksForColleaguesUntil.length]).toEqual([1, 1]);
		expect(JSON.stringify(kept)).not.toMatch(/scrypt|Ada|Birch/);
	});

	it('a teacher goes with all of that, and the class stays with the other', async () => {
		expect(await told(school.ask(USE_CASES.removeTeacher, alder, {}))).toBe('done');
		expect(await callerOf(school.world, alder)).toBeUndefined();
		expect(await names(birch)).toEqual(['Mr Birch']);
		expect(await told(school.ask(USE_CASES.removeTeacher, birch, {}))).toBe('onlyTeacher');
		await school.ask(USE_CASES.removeClass, birch, { class: own });
		expect(await told(school.ask(USE_CASES.removeTeacher, birch, {}))).toBe('done');
		expect(await school.world.store.db.selectFrom('invitations').select('id').execute()).toEqual([]);
	});
});
