import { describe, expect, it } from 'vitest';
import { isGiven } from '#drafting/steps/kinds.ts';
import { english, speechFor } from '../support/speech.ts';
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import type { Entry } from '#shared/entry.ts';
import { savedKey } from '#ui/keeping/shelf.ts';
import { workSchema } from '#ui/keeping/schemas.ts';
import { backBlock } from '../drafting/lesson-method.ts';
import { arrive, FIRST_MARKS, line, point, takeUp, toldOf } from './desk.ts';
import { freshStores, MemoryStore, useStore } from './memory-store.ts';

freshStores();

const states = (work: ReturnType<typeof takeUp>): Readonly<Record<string, string>> =>
	Object.fromEntries(work.method.steps.map(({ name }) => [name, work.state(name)]));

describe('a fresh piece of work', () => {
	it('has the corner given, what starts from it open, and the rest locked', () => {
		expect(states(takeUp())).toEqual({
			O: 'right',
			A: 'open',
			levelA: 'locked',
			B: 'open',
			Q: 'locked',
			P: 'locked',
			slope: 'locked',
			bend: 'locked'
		});
	});

	it('names what a locked step waits for', () => {
		const work = takeUp();
		expect(work.blockers('Q')).toEqual(['B', 'A']);
		expect(work.blockers('A')).toEqual([]);
	});

	it('has nothing to undo or redo, and nothing in ink but the corner', () => {
		const work = takeUp();
		expect([work.canUndo, work.canRedo]).toEqual([false, false]);
		work.undo();
		work.redo();
		expect(work.entries).toEqual({});
		expect(work.inked).toEqual({ points: { O: { x: 0, y: 0 } }, lines: {} });
	});

	it('knows what each step is answered with', () => {
		const work = takeUp();
		expect(work.method.steps.map(({ name }) => work.makes(name))).toEqual([
			'point',
			'point',
			'line',
			'point',
			'point',
			'point',
			'line',
			'line'
		]);
	});
});

describe('placing and checking', () => {
	it('a placement is placed, and neither right nor wrong until it is checked', () => {
		const work = takeUp();
		work.place('A', point(0, 100));
		expect(work.state('A')).toBe('placed');
		expect(work.isRight('A')).toBe(false);
		expect(work.check('A').answer).toBe('right');
		expect(work.state('A')).toBe('right');
	});

	it('a right step unlocks what starts from it', () => {
		const work = takeUp();
		work.place('A', point(0, 100));
		work.check('A');
		expect(work.state('levelA')).toBe('open');
		expect(work.blockers('Q')).toEqual(['B']);
	});

	it('a wrong one costs a try, once for each placement, and locks nothing that was open', () => {
		const work = takeUp();
		work.place('A', point(0, 90));
		expect(work.check('A').answer).toBe('wrong');
		expect(work.state('A')).toBe('wrong');
		expect(work.entry('A').tries).toBe(1);
		work.check('A');
		expect(work.entry('A').tries).toBe(1);
		work.place('A', point(0, 95));
		expect(work.state('A')).toBe('placed');
		work.check('A');
		expect(work.entry('A').tries).toBe(2);
		expect(work.state('B')).toBe('open');
	});

	it('the same wrong one put down and checked again is no second try, though others came between', () => {
		const work = takeUp();
		for (const down of [90, 95, 90, 90]) {
			work.place('A', point(0, down));
			expect(work.check('A').answer).toBe('wrong');
		}
		expect(work.entry('A').tries).toBe(2);
	});

	it('an early mark that is put right takes along what was right from it, says so, and is undone with it', () => {
		const work = takeUp(backBlock());
		work.place('W', point(0, 647));
		work.check('W');
		work.keep('W');
		work.place('H', point(0, 852));
		expect(work.check('H').answer).toBe('right');
		expect(work.followsThrough('H')).toBe(true);
		work.reopen('W');
		expect(work.movedAlong).toEqual(['H']);
		work.place('W', point(0, 425));
		expect(work.check('W').answer).toBe('right');
		expect(work.isRight('H')).toBe(true);
		expect(work.followsThrough('H')).toBe(false);
		work.undo();
		work.undo();
		expect(work.entry('H').placement).toEqual(point(0, 852));
		expect(work.isRight('H')).toBe(true);
	});

	it('a right one costs nothing', () => {
		const work = takeUp();
		work.place('A', point(0, 100));
		work.check('A');
		expect(work.entry('A').tries).toBe(0);
	});

	it('nothing placed is unfinished: it costs nothing and is not even noted', () => {
		const work = takeUp();
		expect(work.check('A')).toEqual({ answer: 'unfinished' });
		expect(work.entries).toEqual({});
	});

	it('an entry that cannot be used costs nothing, and is not called wrong', () => {
		const work = takeUp();
		work.draftBefore('levelA');
		work.place('levelA', line([0, 100], [0, 100]));
		expect(work.check('levelA').answer).toBe('not-valid');
		expect(work.state('levelA')).toBe('placed');
		expect(work.entry('levelA')).toMatchObject({ checked: true, tries: 0 });
	});

	it('what was right and is moved must be checked again, and locks what starts from it', () => {
		const work = takeUp();
		work.place('A', point(0, 100));
		work.check('A');
		work.place('A', point(0, 100.5));
		expect(work.state('A')).toBe('placed');
		expect(work.state('levelA')).toBe('locked');
	});

	it('what is right stands in ink at its computed place, and not where the hand slipped', () => {
		const work = takeUp();
		work.place('A', point(1.2, 98.4));
		work.check('A');
		work.place('B', point(125, 0));
		work.place('levelA', line([0, 100], [60, 100]));
		work.check('levelA');
		expect(work.inked.points).toEqual({ O: { x: 0, y: 0 }, A: { x: 0, y: 100 } });
		expect(work.inked.lines).toEqual({});
		work.place('levelA', line([0, 100], [126, 100.4]));
		work.check('levelA');
		expect(work.inked.lines['levelA']?.length).toBe(125);
	});

	it('taken away again, it is open, and what it cost stays counted', () => {
		const work = takeUp();
		work.place('A', point(0, 90));
		work.check('A');
		work.help('A');
		work.clear('A');
		expect(work.state('A')).toBe('open');
		expect(work.verdict('A')).toEqual({ answer: 'unfinished' });
		expect(work.entry('A')).toMatchObject({ tries: 1, help: 1, checked: false });
		work.undo();
		expect(work.state('A')).toBe('wrong');
	});

	it('taking away nothing is nothing to undo', () => {
		const work = takeUp();
		work.clear('A');
		expect(work.canUndo).toBe(false);
	});
});

describe('help', () => {
	it('has three rungs, and cannot be undone', () => {
		const work = takeUp();
		for (const rung of [1, 2, 3, 3]) {
			work.help('A');
			expect(work.entry('A').help).toBe(rung);
		}
		expect(work.canUndo).toBe(false);
		expect(work.state('A')).toBe('open');
	});

	it('passes over which way and how far, where a verdict has told it', () => {
		const work = takeUp();
		work.place('A', point(0, 90));
		work.check('A');
		work.help('A', 1);
		expect(work.entry('A').help).toBe(2);
	});

	it('is worked for the chosen body and unit', () => {
		const learner = arrive();
		const work = takeUp(backBlock(), learner);
		expect(work.explain('W', english)?.worked).toBe('The back length = 42.5 cm, straight down from O.');
		learner.change({ unit: 'in' });
		expect(work.explain('W', speechFor('en', 'in'))?.worked).toBe(
			'The back length = 16 3/4″, straight down from O.'
		);
	});
});

describe('undo and redo', () => {
	it('go through placements one at a time, and back', () => {
		const work = takeUp();
		const placed = [point(0, 90), point(0, 95), point(0, 100)];
		for (const each of placed) work.place('A', each);
		work.undo();
		expect(work.entry('A').placement).toEqual(placed[1]);
		work.undo();
		expect(work.entry('A').placement).toEqual(placed[0]);
		work.undo();
		expect(work.entry('A').placement).toBeUndefined();
		expect([work.canUndo, work.canRedo]).toEqual([false, true]);
		for (const each of placed) {
			work.redo();
			expect(work.entry('A').placement).toEqual(each);
		}
		expect([work.canUndo, work.canRedo]).toEqual([true, false]);
	});

	it('keep the tries and the help that there have been', () => {
		const work = takeUp();
		work.place('A', point(0, 90));
		work.check('A');
		work.help('A');
		work.place('A', point(0, 95));
		work.check('A');
		expect(work.entry('A')).toMatchObject({ tries: 2, help: 1 });
		work.undo();
		expect(work.entry('A')).toMatchObject({ tries: 2, help: 1, placement: point(0, 90) });
		work.undo();
		expect(work.entry('A')).toMatchObject({ tries: 2, help: 1 });
		expect(work.entry('A').placement).toBeUndefined();
		work.redo();
		work.redo();
		expect(work.entry('A')).toMatchObject({ tries: 2, help: 1, placement: point(0, 95) });
	});

	it('bring a checked placement back as checked', () => {
		const work = takeUp();
		work.place('A', point(0, 100));
		work.check('A');
		work.place('A', point(0, 55));
		work.undo();
		expect(work.state('A')).toBe('right');
		work.redo();
		expect(work.state('A')).toBe('placed');
		work.undo();
		work.undo();
		work.redo();
		expect(work.state('A')).toBe('right');
	});

	it('touch only the step that was changed', () => {
		const work = takeUp();
		work.place('A', point(0, 100));
		work.place('B', point(125, 0));
		work.undo();
		expect(work.entry('A').placement).toEqual(point(0, 100));
		expect(work.entry('B').placement).toBeUndefined();
	});

	it('a new placement ends what could be redone', () => {
		const work = takeUp();
		work.place('A', point(0, 90));
		work.undo();
		work.place('A', point(0, 95));
		expect(work.canRedo).toBe(false);
		work.redo();
		expect(work.entry('A').placement).toEqual(point(0, 95));
	});
});

describe('the earlier steps, drafted for the learner', () => {
	it('are all that the step leans on, right, and noted as shown; the step itself is left to do', () => {
		const work = takeUp();
		work.draftBefore('slope');
		expect(states(work)).toMatchObject({ A: 'right', B: 'right', Q: 'right', P: 'right', slope: 'open' });
		expect(states(work)).toMatchObject({ levelA: 'open', bend: 'open' });
		expect(work.entry('P')).toMatchObject({ shown: true, checked: true, tries: 0 });
		expect(work.entry('levelA').placement).toBeUndefined();
	});

	it('leave alone what the learner had right', () => {
		const work = takeUp();
		work.place('A', point(0, 101));
		work.check('A');
		work.draftBefore('Q');
		expect(work.entry('A')).toMatchObject({ placement: point(0, 101), shown: false });
		expect(work.entry('B').shown).toBe(true);
	});

	it('take the place of what was wrong, whose tries stay counted', () => {
		const work = takeUp();
		work.place('A', point(0, 55));
		work.check('A');
		work.draftBefore('levelA');
		expect(work.entry('A')).toMatchObject({ placement: point(0, 100), shown: true, tries: 1 });
	});

	it('are one thing to undo', () => {
		const work = takeUp();
		work.draftBefore('slope');
		work.undo();
		expect(states(work)).toEqual(states(takeUp()));
		work.redo();
		expect(work.state('slope')).toBe('open');
	});

	it('where none are missing, are nothing to undo', () => {
		const work = takeUp();
		work.draftBefore('A');
		expect(work.canUndo).toBe(false);
	});

	it('of a whole block are enough for its last line, for every demo body', () => {
		const learner = arrive();
		for (const { id } of DEMO_BODIES) {
			learner.change({ body: id });
			const work = takeUp(backBlock(), learner);
			work.draftBefore('armhole');
			expect(work.state('armhole'), id).toBe('open');
			work.place('armhole', work.answer('armhole'));
			expect(work.check('armhole').answer, id).toBe('right');
		}
	});

	it('placed again by the learner, a step is no longer noted as shown', () => {
		const work = takeUp();
		work.draftBefore('levelA');
		work.place('A', point(0, 100));
		expect(work.entry('A').shown).toBe(false);
	});
});

describe('the computed answer', () => {
	it('of every step is right', () => {
		for (const method of [FIRST_MARKS, backBlock()]) {
			const work = takeUp(method);
			for (const step of method.steps) {
				const { name } = step;
				if (isGiven(step)) continue;
				work.place(name, work.answer(name));
				expect(work.check(name).answer, name).toBe('right');
			}
			expect(new Set(Object.values(states(work)))).toEqual(new Set(['right']));
		}
	});
});

describe('saving', () => {
	it('every change is kept, and found again by whoever opens the page next', () => {
		const work = takeUp();
		work.place('A', point(0, 90));
		work.check('A');
		work.help('A');
		work.place('B', point(120, 3));
		const again = takeUp();
		expect(again.entries).toEqual(work.entries);
		expect(again.state('A')).toBe('wrong');
		expect(again.state('B')).toBe('placed');
		expect(again.entry('A')).toMatchObject({ tries: 1, help: 1 });
	});

	it('what was typed is kept as it was written', () => {
		const typed = { form: 'distance', sum: '20/2', from: 'O', go: 'down', unit: 'cm' } as const;
		takeUp().place('A', { kind: 'point', at: [0, 100], typed });
		expect(takeUp().entry('A').placement).toEqual({ kind: 'point', at: [0, 100], typed });
	});

	it('undo and redo are kept too, but not what they could take back', () => {
		const work = takeUp();
		work.place('A', point(0, 90));
		work.place('A', point(0, 100));
		work.undo();
		const again = takeUp();
		expect(again.entry('A').placement).toEqual(point(0, 90));
		expect([again.canUndo, again.canRedo]).toEqual([false, false]);
	});

	it('a curve is kept with its handles', () => {
		const work = takeUp();
		work.draftBefore('bend');
		work.place('bend', work.answer('bend'));
		work.check('bend');
		expect(takeUp().state('bend')).toBe('right');
	});

	it('each method and each body has its own; one that needs no measurement is the same for every body', () => {
		const store = useStore(new MemoryStore());
		const learner = arrive();
		takeUp(FIRST_MARKS, learner).place('A', point(0, 90));
		takeUp(backBlock(), learner).place('A', point(0, 91));
		learner.change({ body: 'wren' });
		takeUp(backBlock(), learner).place('A', point(0, 92));
		expect(takeUp(FIRST_MARKS, learner).entry('A').placement).toEqual(point(0, 90));
		const kept = Object.entries(store.all).filter(([key]) => key.startsWith(savedKey('work')));
		const places = kept.map(([key, text]) => {
			const { steps, method, body } = workSchema.parse(JSON.parse(text));
			expect(key).toBe(savedKey('work', method, ...(body === undefined ? [] : [body])));
			return [method, body, (steps['A'] as Entry).placement];
		});
		expect(places).toEqual([
			['first-marks', undefined, point(0, 90)],
			['back-block', 'heron', point(0, 91)],
			['back-block', 'wren', point(0, 92)]
		]);
	});

	it('damaged work is set aside by name, and the page works on', () => {
		const store = useStore(new MemoryStore());
		const raw = '{"version":1,"method":"first-marks","body":"heron","steps":{"A":{"placement":7}}}';
		store.setItem(savedKey('work', 'first-marks', 'heron'), raw);
		const learner = arrive();
		const work = takeUp(FIRST_MARKS, learner);
		expect(work.entries).toEqual({});
		expect(learner.setAside.map(toldOf)).toMatchObject([
			{ what: 'Your draft of First marks for Heron: A', raw }
		]);
		work.place('A', point(0, 100));
		expect(takeUp().entry('A').placement).toEqual(point(0, 100));
		expect(store.getItem(learner.setAside[0]?.savedAs ?? '')).toBe(raw);
	});

	it('a step that the method no longer has does no harm, and is not lost', () => {
		const work = takeUp();
		work.place('A', point(0, 100));
		const key = savedKey('work', 'first-marks');
		const text = globalThis.localStorage.getItem(key) ?? '';
		globalThis.localStorage.setItem(
			key,
			text.replace('"A":', '"Z":{"placement":{"kind":"point","at":[1,2]}},"A":')
		);
		const again = takeUp();
		expect(again.state('A')).toBe('placed');
		again.check('A');
		expect(again.state('A')).toBe('right');
		expect(takeUp().entry('Z').placement).toEqual(point(1, 2));
	});

	it('a full store is noticed, and nothing on the screen is lost', () => {
		useStore(new MemoryStore(150));
		const learner = arrive();
		const work = takeUp(FIRST_MARKS, learner);
		for (let i = 0; i < 5; i++) work.place('A', { ...point(0, 90 + i) });
		work.draftBefore('bend');
		expect(learner.keeps).toBe(false);
		expect(work.state('bend')).toBe('open');
	});
});

describe('another body', () => {
	it('has other answers, its own work, and nothing to undo of the other’s', () => {
		const learner = arrive();
		const work = takeUp(backBlock(), learner);
		const heron = work.answer('A');
		work.place('A', heron);
		expect(work.check('A').answer).toBe('right');

		learner.change({ body: 'wren' });
		work.load();
		expect(work.body.name).toBe('Wren');
		expect(work.entries).toEqual({});
		expect(work.canUndo).toBe(false);
		work.place('A', heron);
		expect(work.check('A').answer).toBe('wrong');

		learner.change({ body: 'heron' });
		work.load();
		expect(work.state('A')).toBe('right');
		learner.change({ body: 'wren' });
		work.load();
		expect(work.state('A')).toBe('wrong');
	});
});

describe('a body that cannot be drafted', () => {
	const own = (numbers: Readonly<Record<string, number>>) => {
		const learner = arrive();
		learner.saveBody('own-1', { name: 'Mine', unit: 'cm', allowances: {}, ...numbers });
		learner.change({ body: 'own-1' });
		return takeUp(backBlock(), learner);
	};
	const ALL = {
		bust: 96,
		waist: 78,
		hip: 102,
		neck: 37,
		shoulderWidth: 38.4,
		backLength: 42.5,
		waistToHip: 20.5
	};

	it('because measurements are missing: they are named, and nothing is worked or lost', () => {
		const { neck: _, hip: __, ...rest } = ALL;
		const work = own(rest);
		expect([...work.missing].sort()).toEqual(['hip', 'neck']);
		expect(work.draft).toBeUndefined();
		expect(work.verdict('A')).toEqual({ answer: 'unfinished' });
		expect(work.explain('A', english)).toBeUndefined();
		expect(work.inked.points).toEqual({});
	});

	it('because two disagree: the refusal names them', () => {
		const work = own({ ...ALL, bust: 60 });
		expect(work.missing).toEqual([]);
		expect(work.evaluation).toMatchObject({
			kind: 'refused',
			refusals: [{ odds: ['bust', 'shoulderWidth'] }]
		});
	});

	it('can be once all is measured and agrees', () => {
		expect(own(ALL).draft?.points['A']).toEqual({ x: 0, y: 222 });
	});
});

describe('an outline that closes', () => {
	const method = backBlock();
	const left = (name: string): ReturnType<typeof takeUp> => {
		const work = takeUp(method);
		for (const each of method.outline.filter((line) => line !== name)) work.draftBefore(each);
		for (const each of method.steps.filter(
			({ name: other }) => other !== name && method.outline.includes(other)
		))
			if (!work.isDrafted(each.name)) {
				work.place(each.name, work.answer(each.name));
				work.check(each.name);
			}
		work.draftBefore(name);
		return work;
	};

	it('is closed by the check of its last line, and of no other', () => {
		const work = left('hem');
		expect([work.closed, work.closedNow]).toEqual([false, false]);
		work.place('hem', line([0, 630], [200, 630]));
		work.check('hem');
		expect([work.closed, work.closedNow]).toEqual([false, false]);
		work.place('hem', work.answer('hem'));
		work.check('hem');
		expect([work.closed, work.closedNow]).toEqual([true, true]);
		work.place('G', point(96, 425));
		expect([work.closed, work.closedNow]).toEqual([true, false]);
	});

	it('is no news when it is read back, and none where a method has no outline', () => {
		const work = left('hem');
		work.place('hem', work.answer('hem'));
		work.check('hem');
		const again = takeUp(method);
		expect([again.closed, again.closedNow]).toEqual([true, false]);
		expect(takeUp().closed).toBe(false);
	});
});
