import { afterAll, beforeAll, expect, it } from 'vitest';
import { callerOf } from '#server/people/sessions.ts';
import { openStore } from '#server/store/store.ts';
import { carryOut, type UseCase } from '#server/use-case.ts';
import { USE_CASES } from '#server/use-cases/all.ts';
import { newSchool, told, type School } from './school.ts';
import { onBoth } from './stores.ts';

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
		expect(kept.linksToComeAgainUntil).toEqual([]);
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

onBoth('two teachers who go at the same moment, by two servers,', (newStorePlace) => {
	it('do not leave a class without anybody', async () => {
		const place = await newStorePlace();
		const school = await newSchool(place);
		const idOf = async (secret: string): Promise<string> => (await callerOf(school.world, secret))?.id ?? '';
		const both = [await school.teacher('Mrs Elm'), await school.teacher('Mr Fir')] as const;
		const other = { ...school.world, store: await openStore(place) };
		const askThere = async <I, O>(use: UseCase<I, O>, secret: string, input: unknown): Promise<O> =>
			carryOut(use, other, { caller: await callerOf(other, secret), address: '192.0.2.1' }, input);
		for (let i = 0; i < 12; i += 1) {
			school.later(1);
			const { class: shared } = await school.newClass(both[0], `Elm and Fir ${i}`);
			await school.ask(USE_CASES.addTeacher, both[0], { class: shared, name: 'Mr Fir' });
			const [first, second] = [await idOf(both[0]), await idOf(both[1])];
			const answers = await Promise.all([
				told(school.ask(USE_CASES.takeClassFrom, both[0], { class: shared, teacher: first })),
				told(askThere(USE_CASES.takeClassFrom, both[1], { class: shared, teacher: second }))
			]);
			expect(answers.toSorted()).toEqual(['done', 'onlyTeacher']);
		}
		// Each has some of the classes alone by now, and gives them over.
		for (const own of both)
			for (const { id: each } of await school.ask(USE_CASES.ownClasses, own, {}))
				for (const name of ['Mrs Elm', 'Mr Fir'])
					await school.ask(USE_CASES.addTeacher, own, { class: each, name });
		const gone = [
			told(school.ask(USE_CASES.removeTeacher, both[0], {})),
			told(askThere(USE_CASES.removeTeacher, both[1], {}))
		];
		expect((await Promise.all(gone)).toSorted()).toEqual(['done', 'onlyTeacher']);
		await Promise.all([other.store.close(), school.close()]);
	});
});
