import { afterAll, beforeAll, expect, it } from 'vitest';
import { misdoneIn } from '#checker/missteps/words.ts';
import { slipsIn } from '#checker/missteps/in-language.ts';
import { USE_CASES } from '#server/use-cases/all.ts';
import type { Language } from '#shared/speech/language.ts';
import { lessonCourse } from '../../src/cli/lesson-course.ts';
import { speechFor } from '../support/speech.ts';
import { classOf, mark } from './class-of.ts';
import { newSchool, remarked, type School } from './school.ts';
import { onBoth } from './stores.ts';

onBoth('what a class has not understood', (newStorePlace) => {
	let school: School;
	let on: Awaited<ReturnType<typeof classOf>>;
	beforeAll(async () => {
		school = await newSchool(await newStorePlace());
		on = await classOf(school, {
			// Wrong by the same rule, one of them twice, and put right since; one by no rule; one not at all.
			Ada: [mark('U', [500, 222]), mark('U', [260, 222])],
			Bea: [mark('U', [500, 222]), mark('U', [500.5, 222]), mark('U', [260, 222]), mark('C', [123, 77])],
			Cleo: [mark('U', [260, 222])],
			Dora: []
		});
	});
	afterAll(() => school.close());
	const missteps = () => school.ask(USE_CASES.classMissteps, on.teacher, { assignment: on.assignment });

	it('is counted by rule from all tries, each learner once, the commonest first', async () => {
		const found = await missteps();
		expect(
			found.map(({ step, slips, certain, learners, of }) => ({
				step,
				slips: slips.map(({ key }) => key),
				certain,
				who: learners.map(({ name }) => name),
				of
			}))
		).toEqual([
			{ step: 'U', slips: ['fraction'], certain: true, who: ['Ada', 'Bea'], of: 3 },
			{ step: 'C', slips: [], certain: false, who: ['Bea'], of: 1 }
		]);
	});

	it('is said in whole sentences of either language', async () => {
		const [first] = await missteps();
		const said = (language: Language): readonly string[] => {
			const [judged, shown] = [
				lessonCourse().method('back-block'),
				lessonCourse(language).method('back-block')
			];
			if (!first || !judged || !shown) throw new Error('nothing was found');
			const speech = speechFor(language);
			const { teaching } = speech.words;
			const { label } = shown.steps.find(({ name }) => name === 'U') ?? { label: { name: '' } };
			const step = { point: 'U', label };
			const did = slipsIn(first.slips, judged, shown).map((each) => misdoneIn(each, speech));
			return [teaching.missed({ step, did, count: 2, of: 3 }), teaching.board({ step, did })];
		};
		expect(said('en')).toEqual([
			'At U, underarm, 2 of 3 took half of the bust; the rule is a quarter.',
			'U, underarm: some of us took half of the bust; the rule is a quarter.'
		]);
		expect(said('es')).toEqual([
			'En U, punto bajo el brazo, 2 de 3 han tomado la mitad del contorno de busto; la regla es la cuarta parte.',
			'U, punto bajo el brazo: algunos hemos tomado la mitad del contorno de busto; la regla es la cuarta parte.'
		]);
	});

	it('holds nothing that somebody’s own tape showed', async () => {
		expect(JSON.stringify(await missteps())).not.toContain('asRead');
	});
});

onBoth('what a teacher says of a draft', (newStorePlace) => {
	let school: School;
	let on: Awaited<ReturnType<typeof classOf>>;
	beforeAll(async () => {
		school = await newSchool(await newStorePlace());
		on = await classOf(school, { Ada: [mark('K', [380, 0]), mark('K', [192, 0])] });
	});
	afterAll(() => school.close());

	const step = (name: string) => ({
		...{ assignment: on.assignment, learner: on.learners['Ada']?.id },
		...{ method: 'back-block', step: name }
	});
	const asAda = () => on.learners['Ada']?.secret;
	const workOf = () =>
		school.ask(USE_CASES.readWork, on.teacher, {
			assignment: on.assignment,
			learner: on.learners['Ada']?.id
		});
	const marks = async (): Promise<readonly (number | undefined)[]> => {
		const { learners } = await school.ask(USE_CASES.readAssignment, on.teacher, {
			assignment: on.assignment
		});
		const [told] = await school.ask(USE_CASES.ownAssignments, asAda(), {});
		const { seen } = await workOf();
		return [learners[0]?.seen?.total.mark, told?.total?.mark, seen?.total.mark];
	};

	it('shows every mark as it was handed in, in order, with the body that it was drafted for', async () => {
		const { events, body, seen, learner } = await workOf();
		expect(learner.name).toBe('Ada');
		expect(body?.measurements.bust).toBe(960);
		expect(
			events.map(({ number, done }) => [
				number,
				'step' in done && done.step,
				'step' in done && done.entry.placement
			])
		).toEqual([
			[1, 'K', { kind: 'point', at: [380, 0] }],
			[2, 'K', { kind: 'point', at: [192, 0] }]
		]);
		expect(seen?.steps.find((each) => each.step === 'K')).toMatchObject({ tries: 1, mark: 0.9 });
	});

	it('counts in the place of the judge’s mark, which stays; and not any more when it was taken back', async () => {
		expect(await marks()).toEqual([0.9, 0.9, 0.9]);
		await school.ask(USE_CASES.overrideMark, on.teacher, {
			...step('K'),
			mark: 1,
			reason: 'A slip of the hand.'
		});
		expect(await marks()).toEqual([1, 1, 1]);
		const { seen, overrides } = await workOf();
		expect(seen?.steps.find((each) => each.step === 'K')?.mark).toBe(0.9);
		expect(overrides).toMatchObject([
			{
				step: 'K',
				mark: 1,
				reason: 'A slip of the hand.',
				by: 'Ms Alder',
				at: school.world.now(),
				back: null
			}
		]);
		school.later(1000);
		await school.ask(USE_CASES.takeMarkBack, on.teacher, { override: overrides[0]?.id });
		expect(await marks()).toEqual([0.9, 0.9, 0.9]);
		expect((await workOf()).overrides).toMatchObject([{ mark: 1, back: school.world.now() }]);
	});

	it('is told to the learner at its step, and to nobody else', async () => {
		await school.ask(USE_CASES.addComment, on.teacher, { ...step('K'), text: 'Measure  from O.' });
		await school.ask(USE_CASES.overrideMark, on.teacher, { ...step('N'), mark: 0.5, reason: 'Shown to me.' });
		const { remarks } = await school.ask(USE_CASES.openAssignment, asAda(), { assignment: on.assignment });
		expect(remarks).toMatchObject([
			{ lesson: '41-back-neck-and-shoulder', step: 'K', text: 'Measure from O.', by: 'Ms Alder' },
			{ step: 'N', text: 'Shown to me.', mark: 0.5 }
		]);
		const bea = await school.learner(on.code, 'Bea');
		const other = await school.ask(USE_CASES.openAssignment, bea.secret, { assignment: on.assignment });
		expect(other.remarks).toEqual([]);
		const { handedIn } = await school.ask(USE_CASES.exportLearner, asAda(), {
			learner: on.learners['Ada']?.id
		});
		expect(handedIn[0]).toMatchObject({
			comments: [{ text: 'Measure from O.' }],
			marksGiven: [{ step: 'K' }, { step: 'N', mark: 0.5, reason: 'Shown to me.' }]
		});
	});

	it('is refused where it is no mark, has no reason, or is of no step that was set', async () => {
		const ask = (more: object): Promise<unknown> =>
			school.ask(USE_CASES.overrideMark, on.teacher, { ...step('K'), mark: 1, reason: 'So.', ...more });
		await expect(ask({ mark: 1.1 })).rejects.toThrow();
		await expect(ask({ mark: Number.NaN })).rejects.toThrow();
		await expect(ask({ reason: '  ' })).rejects.toThrow();
		await expect(ask({ step: 'H' })).rejects.toThrow('notThere');
		await expect(ask({ method: 'front-block' })).rejects.toThrow('notThere');
	});

	it('stays when the teacher goes, without a name', async () => {
		const birch = await school.teacher('Mr Birch');
		await school.ask(USE_CASES.addTeacher, on.teacher, { class: on.class, name: 'Mr Birch' });
		school.later(1000);
		await school.ask(USE_CASES.addComment, birch, { ...step('S'), text: 'Well drawn.' });
		await school.ask(USE_CASES.removeTeacher, birch, {});
		expect((await workOf()).comments.at(-1)).toMatchObject({ text: 'Well drawn.', by: null });
	});

	it('tells no mark of an exam before it is over', async () => {
		const closes = school.world.now() + 60_000;
		const other = await school.newAssignment(on.teacher, on.class, { mode: 'exam', closes });
		await remarked(school, on.teacher, { secret: asAda() ?? '', id: on.learners['Ada']?.id ?? '' }, other);
		const told = async () =>
			(await school.ask(USE_CASES.openAssignment, asAda(), { assignment: other })).remarks.map(
				({ mark: m }) => m
			);
		expect(await told()).toEqual([undefined]);
		school.later(61_000);
		expect(await told()).toEqual([undefined, 0.5]);
	});
});

onBoth('a class on the board and at its places', (newStorePlace) => {
	let school: School;
	let on: Awaited<ReturnType<typeof classOf>>;
	beforeAll(async () => {
		school = await newSchool(await newStorePlace());
		on = await classOf(school, {
			Ada: [mark('U', [500, 222]), mark('U', [260, 222]), mark('K', [95, 0])],
			Bea: [mark('U', [261, 222])],
			Cleo: [mark('U', [255, 222]), mark('U', [260, 223])],
			Dora: []
		});
	});
	afterAll(() => school.close());

	it('is where its answers lay, from their place, in no order of the learners', async () => {
		const { asked, body } = await school.ask(USE_CASES.readBoard, on.teacher, { assignment: on.assignment });
		expect(body).toBe('heron');
		const clouds = Object.assign({}, ...asked.map((each) => each.clouds)) as Record<
			string,
			readonly { readonly across: number; readonly down: number }[]
		>;
		expect(clouds['U']?.map(({ across, down }) => [across, down])).toEqual([
			[-5, 0],
			[0, 0],
			[0, 1],
			[1, 0],
			[240, 0]
		]);
		// One alone would be known.
		expect(clouds['K']).toEqual([]);
		expect(JSON.stringify(asked)).not.toContain('Ada');
	});

	it('is told who is where by the last thing that each handed in', async () => {
		const places = async () => {
			const { learners } = await school.ask(USE_CASES.classNow, on.teacher, { assignment: on.assignment });
			return learners.map(({ name, received, step, at }) => [name, received, step, at]);
		};
		const now = school.world.now();
		expect(await places()).toEqual([
			['Ada', 3, 'K', now],
			['Bea', 1, 'U', now],
			['Cleo', 2, 'U', now],
			['Dora', 0, undefined, null]
		]);
		school.later(5000);
		await on.hand('Dora', 1, [mark('C', [0, 25])]);
		expect((await places()).at(-1)).toEqual(['Dora', 1, 'C', now + 5000]);
	});
});
