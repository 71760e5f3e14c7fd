import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Answered, ExerciseDone, Given } from '#shared/hand-in.ts';
import { doneSchema } from '#shared/hand-in.ts';
import { placeOfPoint } from '#checker/placed.ts';
import type { Exercise, ExerciseKey } from '#practice/exercises/exercise.ts';
import { EXERCISE_KINDS } from '#practice/exercises/exercise.ts';
import { exercise, judge } from '#practice/exercises/kinds.ts';
import { USE_CASES } from '#server/use-cases/all.ts';
import { PRACTISED } from '../practice/methods.ts';
import { newSchool, type School } from './school.ts';
import { onBoth } from './stores.ts';

const METHODS = ['back-block', 'front-block'];
const MINUTE = 60_000;

const made = (key: ExerciseKey): Exercise => exercise(key, (id) => PRACTISED.find((each) => each.id === id));

/** What is right, taken from the exercise itself; a point so many millimetres beside it. */
const right = (asked: Exercise, off = 0): Given => {
	switch (asked.kind) {
		case 'find-start':
			return { kind: 'find-start', answer: { point: asked.start } };
		case 'next-point': {
			const at = asked.draft.points[asked.step];
			if (!at) throw new Error('no such point');
			return { kind: 'next-point', answer: { kind: 'point', at: [at.x, at.y + off] } };
		}
		case 'find-wrong':
			return { kind: 'find-wrong', answer: { point: asked.slip.step, choice: asked.slip.note } };
		case 'work-number':
			return { kind: 'work-number', answer: { typed: String(asked.right), unit: 'mm' } };
		case 'true-seams': {
			const { difference } = asked;
			const longer = difference > 0 ? 'first' : 'second';
			const by = String(Math.abs(difference));
			const moved = placeOfPoint(asked.right);
			return { kind: 'true-seams', answer: { longer, by, unit: 'mm', moved: [...moved] } };
		}
	}
};

/** An answer that is wrong, whatever the exercise: another one for each `off`. */
const wrong = (asked: Exercise, off = 40): Given => {
	switch (asked.kind) {
		case 'find-start': {
			const others = Object.keys(asked.soFar.points).filter(
				(name) => name !== asked.start && !asked.used.includes(name)
			);
			return { kind: 'find-start', answer: { point: others[0] ?? '' } };
		}
		case 'next-point': {
			const at = asked.draft.points[asked.step];
			return { kind: 'next-point', answer: { kind: 'point', at: [(at?.x ?? 0) + off, (at?.y ?? 0) + off] } };
		}
		case 'find-wrong': {
			const other = asked.suspects.find(({ step }) => step !== asked.slip.step);
			return { kind: 'find-wrong', answer: { point: other?.step ?? '' } };
		}
		case 'work-number':
			return { kind: 'work-number', answer: { typed: String(asked.right + off), unit: 'mm' } };
		case 'true-seams':
			return {
				kind: 'true-seams',
				answer: { longer: 'first', by: String(Math.abs(asked.difference) + off), unit: 'mm' }
			};
	}
};

/** A class that was set a practice, with learners who have opened it. */
const classWith = async (school: School, names: readonly string[], task: object = {}) => {
	const teacher = await school.teacher(`Teacher ${names.join()}`);
	const { class: own, code } = await school.newClass(teacher, 'Alder');
	const practice = { methods: METHODS, kinds: [...EXERCISE_KINDS], count: 6 };
	const assignment = await school.newAssignment(teacher, own, { lessons: [], practice, ...task });
	const open = (secret: string) => school.ask(USE_CASES.openAssignment, secret, { assignment });
	let sequence = 0;
	const learners = [];
	for (const name of names) {
		const { secret, id } = await school.learner(code, name);
		const { exercises } = await open(secret);
		const hand = async (
			number: number,
			given?: Given,
			help = 0,
			attempt?: number
		): Promise<readonly Answered[]> => {
			sequence += 1;
			const key = { device: 'd'.repeat(16), tab: 'a'.repeat(16), sequence };
			const done: ExerciseDone = {
				...{ assignment, exercise: number, help },
				...(given && { given }),
				...(attempt !== undefined && { attempt })
			};
			return (await school.ask(USE_CASES.handIn, secret, { learner: id, events: [{ key, done }] })).answers;
		};
		learners.push({ name, secret, id, exercises, asked: exercises.map(made), hand });
	}
	const seen = async (learner: string) =>
		(await school.ask(USE_CASES.readWork, teacher, { assignment, learner })).seen;
	return { teacher, class: own, code, assignment, learners, open, seen };
};
type On = Awaited<ReturnType<typeof classWith>>;
const person = ({ learners }: On, at: number) => {
	const found = learners[at];
	if (!found) throw new Error('nobody');
	return found;
};
const askedAt = ({ asked }: { readonly asked: readonly Exercise[] }, number: number): Exercise => {
	const found = asked[number - 1];
	if (!found) throw new Error('no such exercise');
	return found;
};

it('what stands in the answers of this test is judged as it says, for every kind', () => {
	const method = PRACTISED.find(({ id }) => id === 'front-block');
	if (!method) throw new Error('no front');
	const steps = { 'true-seams': method.seams[0]?.name ?? '' } as Readonly<Record<string, string>>;
	for (const kind of EXERCISE_KINDS) {
		const asked = made({ kind, seed: 7, method: method.id, step: steps[kind] ?? 'U' });
		expect([
			kind,
			judge(asked, right(asked).answer).answer,
			judge(asked, wrong(asked).answer).answer
		]).toEqual([kind, 'right', 'wrong']);
		for (const given of [right(asked), wrong(asked)])
			expect(doneSchema.safeParse({ assignment: 'a', exercise: 1, help: 0, given }).success).toBe(true);
	}
});

onBoth('a practice that a class was set', (newStorePlace) => {
	let school: School;
	let on: On;
	beforeAll(async () => {
		school = await newSchool(await newStorePlace());
		on = await classWith(school, ['Ada', 'Bea']);
	});
	afterAll(() => school.close());

	it('asks each learner other exercises, the same whenever it is opened, and none twice in a row', async () => {
		const [ada, bea] = [person(on, 0), person(on, 1)];
		expect(ada.exercises).toHaveLength(6);
		expect((await on.open(ada.secret)).exercises).toEqual(ada.exercises);
		expect(bea.exercises).not.toEqual(ada.exercises);
		for (const { exercises } of [ada, bea])
			for (const [i, { kind, step }] of exercises.entries()) {
				const before = exercises[i - 1];
				expect(before?.step === step || before?.kind === kind).toBe(false);
			}
		const { practice, lessons, body } = await on.open(ada.secret);
		expect({ practice, lessons, body }).toEqual({
			practice: { methods: METHODS },
			lessons: [],
			body: undefined
		});
	});

	it('is marked by the judge: wrong tries and help cost, the same wrong answer once, and what is right stays', async () => {
		const ada = person(on, 0);
		const at = (number: number) => askedAt(ada, number);
		await ada.hand(1, right(at(1)));
		await ada.hand(2, wrong(at(2)));
		await ada.hand(2, wrong(at(2)));
		await ada.hand(2, right(at(2)));
		await ada.hand(2, wrong(at(2)));
		await ada.hand(3, undefined, 1);
		await ada.hand(3, right(at(3)));
		await ada.hand(4, wrong(at(4)));
		const seen = await on.seen(ada.id);
		expect(
			seen?.steps.map(({ step, mark, tries, help, verdict }) => [step, verdict.answer, mark, tries, help])
		).toEqual([
			['1', 'right', 1, 0, 0],
			['2', 'right', 0.9, 1, 0],
			['3', 'right', 0.95, 0, 1],
			['4', 'wrong', 0, 1, 0],
			['5', 'unfinished', 0, 0, 0],
			['6', 'unfinished', 0, 0, 0]
		]);
		expect(seen?.total).toMatchObject({ mark: 2.85, outOf: 6, mistakes: 1 });
		const [own] = await school.ask(USE_CASES.ownAssignments, ada.secret, {});
		expect(own?.total).toEqual(seen?.total);
		const { learners, exercises, lessons } = await school.ask(USE_CASES.readAssignment, on.teacher, {
			assignment: on.assignment
		});
		expect({ exercises, lessons }).toEqual({ exercises: 6, lessons: [] });
		expect(learners.find(({ name }) => name === 'Ada')?.seen?.total).toEqual(seen?.total);
	});

	it('asks for places as near as it was set: 1, 2 or 4 mm', async () => {
		const placed = { lessons: [], practice: { methods: METHODS, kinds: ['next-point'], count: 1 } };
		const answers = await Promise.all(
			(['strict', 'normal', 'beginner'] as const).map(async (level) => {
				const { learners, seen } = await classWith(school, [`Cy ${level}`], { ...placed, policy: { level } });
				const [own] = learners;
				if (!own) throw new Error('nobody');
				for (const off of [5, 3, 1.5, 0.5]) {
					await own.hand(1, right(askedAt(own, 1), off));
					if ((await seen(own.id))?.steps[0]?.verdict.answer === 'right') return [level, off];
				}
				return [level, 0];
			})
		);
		expect(answers).toEqual([
			['strict', 0.5],
			['normal', 1.5],
			['beginner', 3]
		]);
	});

	it('never trusts the browser: an answer of another kind, to no exercise, or of a step changes nothing', async () => {
		const ada = person(on, 0);
		const before = await on.seen(ada.id);
		const first = askedAt(ada, 5);
		const other = ada.asked.find(({ kind }) => kind !== first.kind);
		await ada.hand(5, other && right(other));
		await ada.hand(40, right(first));
		expect((await on.seen(ada.id))?.steps).toEqual(before?.steps);
		expect(
			await ada.hand(5, { kind: 'work-number', answer: { typed: '9'.repeat(101), unit: 'cm' } })
		).toEqual([{ refused: 'unreadable' }]);
		const [refused] = await ada.hand(41, right(first));
		expect(refused).toEqual({ refused: 'unreadable' });
	});

	it('goes on from what was judged before to the same marks as from the beginning', async () => {
		const bea = person(on, 1);
		for (const number of [1, 2, 3]) {
			const asked = askedAt(bea, number);
			await bea.hand(number, wrong(asked));
			await on.seen(bea.id);
			await bea.hand(number, right(asked), number === 3 ? 1 : 0);
			await on.seen(bea.id);
		}
		const portions = await on.seen(bea.id);
		await school.world.store.db.deleteFrom('verdicts').execute();
		const whole = await on.seen(bea.id);
		expect(whole?.steps).toEqual(portions?.steps);
		expect(whole?.steps.slice(0, 3).map(({ mark }) => mark)).toEqual([0.9, 0.9, 0.85]);
	});

	it('shows who is at which exercise, and takes marks and words of the teacher at one', async () => {
		const ada = person(on, 0);
		const { learners } = await school.ask(USE_CASES.classNow, on.teacher, { assignment: on.assignment });
		expect(learners.find(({ name }) => name === 'Bea')).toMatchObject({ exercise: 3, received: 6 });
		const at = { assignment: on.assignment, learner: ada.id, method: 'practice', step: '4' };
		const reason = 'She said it aloud.';
		await school.ask(USE_CASES.overrideMark, on.teacher, { ...at, mark: 1, reason });
		await school.ask(USE_CASES.addComment, on.teacher, { ...at, text: 'Half of it.' });
		expect((await on.seen(ada.id))?.total.mark).toBe(3.85);
		const { remarks } = await on.open(ada.secret);
		expect(remarks.map(({ step, text, mark }) => [step, text, mark])).toEqual([
			['4', 'Half of it.', undefined],
			['4', reason, 1]
		]);
		for (const step of ['0', '7', 'U'])
			await expect(
				school.ask(USE_CASES.overrideMark, on.teacher, { ...at, step, mark: 1, reason })
			).rejects.toThrow('notThere');
	});

	it('has no board, and no sheets; the plan counts who has begun', async () => {
		const { assignment } = on;
		await expect(school.ask(USE_CASES.readBoard, on.teacher, { assignment })).rejects.toThrow('notThere');
		const sheets = await school.ask(USE_CASES.classSheets, on.teacher, { assignment });
		expect(sheets).toMatchObject({ methods: [], learners: [] });
		const plan = await school.ask(USE_CASES.lessonPlan, on.teacher, { class: on.class });
		expect(plan.assignments).toEqual([{ id: assignment, name: 'The back', practice: { begun: 2, done: 0 } }]);
		const preview = await school.ask(USE_CASES.previewAssignment, on.teacher, { assignment });
		expect(preview.exercises).toHaveLength(6);
	});

	it('is exported with its exercises and every answer', async () => {
		const ada = person(on, 0);
		const found = await school.ask(USE_CASES.exportLearner, ada.secret, { learner: ada.id });
		const [handed] = found.handedIn;
		expect(handed).toMatchObject({ attempt: 1, exercises: ada.exercises });
		expect(handed?.events[0]?.done).toMatchObject({ exercise: 1, given: right(askedAt(ada, 1)) });
	});

	it('is refused with nothing in it, with a draft that is not practised, or with lessons beside it', async () => {
		const practice = { methods: METHODS, kinds: ['next-point'], count: 3 };
		for (const task of [
			{ lessons: [], practice: null },
			{ lessons: ['40-back-levels'], practice },
			{ lessons: [], practice: { ...practice, methods: ['nothing'] } },
			{ lessons: [], practice: { ...practice, methods: [] } },
			{ lessons: [], practice: { ...practice, count: 41 } },
			// The back is sewn to nothing that is drafted before it.
			{ lessons: [], practice: { ...practice, methods: ['back-block'], kinds: ['true-seams'] } }
		])
			await expect(school.newAssignment(on.teacher, on.class, task)).rejects.toThrow();
	});
});

onBoth('what a class got wrong in a practice', (newStorePlace) => {
	let school: School;
	beforeAll(async () => {
		school = await newSchool(await newStorePlace());
	});
	afterAll(() => school.close());

	it('is told by rule where one explains it, else by what was asked; each learner once', async () => {
		// One step of one draft in one kind: all are asked for numbers at it.
		const kinds = ['work-number'];
		const on = await classWith(school, ['Ada', 'Bea', 'Cleo', 'Dora', 'Ebba', 'Fay', 'Gwen'], {
			practice: { methods: ['back-block'], kinds, count: 40 }
		});
		// What is drawn for a learner has the step more often than not.
		const drawn = on.learners.flatMap(({ asked, hand, name }) => {
			const number = asked.findIndex((each) => each.kind === 'work-number' && each.step === 'U') + 1;
			return number > 0 ? [{ asked, hand, name, number }] : [];
		});
		const two = drawn.slice(0, 2);
		expect(two).toHaveLength(2);
		for (const { asked, hand, number } of two) {
			const own = askedAt({ asked }, number);
			// Half of the bust in the place of a quarter, with the ease of the rule: worked by hand from the method's formula.
			const { bust = 0 } = own.body.measurements;
			const rest = own.kind === 'work-number' ? own.right - bust / 4 : 0;
			await hand(number, { kind: 'work-number', answer: { typed: String(bust / 2 + rest), unit: 'mm' } });
			await hand(number, {
				kind: 'work-number',
				answer: { typed: String(bust / 2 + rest + 0.2), unit: 'mm' }
			});
			await hand(number, wrong(own, 1234));
		}
		const found = await school.ask(USE_CASES.classMissteps, on.teacher, { assignment: on.assignment });
		const who = two.map(({ name }) => name);
		expect(
			found.map(({ method, step, slips, exercise: asked, learners, of }) => ({
				...{ method, step, of },
				slips: slips.map(({ key }) => key),
				asked: asked && `${asked.kind} ${asked.note}`,
				who: learners.map(({ name }) => name)
			}))
		).toEqual([
			{ method: 'back-block', step: 'U', of: 2, slips: ['fraction'], asked: undefined, who },
			{ method: 'back-block', step: 'U', of: 2, slips: [], asked: 'work-number number', who }
		]);
	});

	it('is told to nobody in an exam before it is handed in; there the last answer counts and none costs', async () => {
		const on = await classWith(school, ['Dora'], { mode: 'exam' });
		const dora = person(on, 0);
		await dora.hand(1, right(askedAt(dora, 1)));
		await dora.hand(1, wrong(askedAt(dora, 1)));
		await dora.hand(2, wrong(askedAt(dora, 2)));
		await dora.hand(2, right(askedAt(dora, 2)), 2);
		const listed = async () => (await school.ask(USE_CASES.ownAssignments, dora.secret, {}))[0]?.total;
		expect(await listed()).toBeUndefined();
		await school.ask(USE_CASES.endExam, dora.secret, { assignment: on.assignment });
		school.later(MINUTE);
		await dora.hand(1, right(askedAt(dora, 1)));
		expect(await listed()).toMatchObject({ mark: 1, outOf: 6, mistakes: 1 });
		expect(await on.seen(dora.id)).toMatchObject({ late: 1 });
	});
});
