import { describe, expect, it } from 'vitest';
import { savedKey } from '#ui/keeping/shelf.ts';
import type { Learner } from '#ui/keeping/learner.svelte.ts';
import type { Work } from '#ui/desk/work.svelte.ts';
import { backBlock } from '../drafting/lesson-method.ts';
import { arrive, FIRST_MARKS, point, takeUp, toldOf } from './desk.ts';
import { forbidStore, freshStores, MemoryStore, useStore } from './memory-store.ts';

freshStores();

const KEY = savedKey('work', 'back-block', 'heron');
const stored = (): string | null => globalThis.localStorage.getItem(KEY);

/** A tab with the back block open, which hears of what the other tab keeps only when it is told. */
const openTab = (): { learner: Learner; work: Work } => {
	const learner = arrive();
	return { learner, work: takeUp(backBlock(), learner) };
};
/** Does something in one tab, and tells the other as a browser does. */
const telling = (other: Learner, act: () => void): void => {
	const old = stored();
	act();
	other.takeUp(KEY, old);
};
const placesOf = (work: Work): Record<string, unknown> =>
	Object.fromEntries(
		Object.entries(work.entries).flatMap(([name, { placement }]) =>
			placement?.kind === 'point' ? [[name, placement.at]] : []
		)
	);

describe('what could not be read back', () => {
	it('is never saved: a step keeps what it has cost, and every other step is there after a reload', () => {
		const { work, learner } = openTab();
		work.place('W', point(0, 425));
		work.place('A', point(0, 100));
		work.check('A');
		for (const far of [6300, NaN, Infinity]) {
			work.place('A', point(0, far));
			expect(work.entry('A').placement, 'it stays on the screen').toEqual(point(0, far));
			const again = openTab();
			expect(again.learner.setAside).toEqual([]);
			expect(placesOf(again.work)).toEqual({ W: [0, 425] });
			expect(again.work.entry('A')).toMatchObject({ tries: 1, checked: false });
		}
		expect(learner.keeps).toBe(true);
	});

	it('is set aside step by step and named, and the rest is kept', () => {
		const store = useStore(new MemoryStore());
		const damaged = { hem: { tries: -1 }, A: { placement: { kind: 'point', at: [0, 6300] } } };
		const sound = { W: { placement: { kind: 'point', at: [0, 425] }, checked: true } };
		const record = { version: 1, method: 'back-block', body: 'heron' };
		store.setItem(KEY, JSON.stringify({ ...record, steps: { ...damaged, ...sound } }));
		const { learner, work } = openTab();
		expect(placesOf(work)).toEqual({ W: [0, 425] });
		expect(work.state('W')).toBe('right');
		const [first, ...others] = learner.setAside;
		expect(others).toEqual([]);
		expect(toldOf(first)).toMatchObject({
			what: 'Your draft of The back block for Heron: the hem and A',
			partly: true,
			inPlace: false
		});
		expect(toldOf(first)?.reason).toMatch(/^tries: /);
		expect(JSON.parse(store.getItem(first?.savedAs ?? '') ?? '')).toEqual({ ...record, steps: damaged });
		const again = openTab();
		expect(again.learner.setAside).toEqual([]);
		expect(placesOf(again.work)).toEqual({ W: [0, 425] });
	});

	it('where there is no room to set it aside stays as it is, and the work goes on without being kept', () => {
		const store = useStore(new MemoryStore());
		const raw = JSON.stringify({ version: 1, method: 'back-block', body: 'heron', steps: { A: 7, W: {} } });
		store.setItem(KEY, raw);
		store.room = KEY.length + raw.length;
		const { learner, work } = openTab();
		expect(learner.setAside).toMatchObject([{ savedAs: KEY, inPlace: true, partly: true }]);
		work.place('A', point(0, 222));
		expect(stored()).toBe(raw);
		expect(learner.keeps).toBe(false);
		work.load();
		expect(placesOf(work)).toEqual({ A: [0, 222] });
		expect(learner.setAside).toHaveLength(1);
		store.room = Infinity;
		learner.discard(KEY);
		expect([learner.setAside, learner.keeps]).toEqual([[], true]);
		expect(placesOf(openTab().work)).toEqual({ A: [0, 222] });
	});
});

describe('two tabs', () => {
	it('that know nothing of each other lose nothing', () => {
		const [one, two] = [openTab().work, openTab().work];
		one.place('A', point(0, 222));
		two.place('W', point(0, 425));
		one.place('N', point(71, 0));
		expect(placesOf(openTab().work)).toEqual({ A: [0, 222], W: [0, 425], N: [71, 0] });
		expect(placesOf(one)).toEqual({ A: [0, 222], W: [0, 425], N: [71, 0] });
	});

	it('one sees at once what the other does, and its own steps stay', () => {
		const [one, two] = [openTab(), openTab()];
		telling(two.learner, () => one.work.place('A', point(0, 222)));
		telling(two.learner, () => one.work.check('A'));
		expect(two.work.state('A')).toBe('right');
		telling(one.learner, () => two.work.place('W', point(0, 425)));
		expect(placesOf(one.work)).toEqual(placesOf(two.work));
	});

	it('undo takes back what its own tab did, and nothing of the other’s', () => {
		const [one, two] = [openTab(), openTab()];
		telling(two.learner, () => one.work.place('A', point(0, 90)));
		telling(one.learner, () => two.work.place('W', point(0, 425)));
		telling(two.learner, () => one.work.undo());
		expect(placesOf(one.work)).toEqual({ W: [0, 425] });
		expect(placesOf(two.work)).toEqual({ W: [0, 425] });
		telling(two.learner, () => one.work.redo());
		expect(placesOf(openTab().work)).toEqual({ A: [0, 90], W: [0, 425] });
	});

	it('that write at the same moment both have everything in the end', () => {
		const [one, two] = [openTab(), openTab()];
		one.work.place('A', point(0, 222));
		const onesOwn = stored() ?? '';
		// The other tab had not seen it yet, and wrote over it.
		globalThis.localStorage.removeItem(KEY);
		two.work.place('W', point(0, 425));
		const twosOwn = stored() ?? '';
		one.learner.takeUp(KEY, null);
		expect(placesOf(one.work)).toEqual({ A: [0, 222], W: [0, 425] });
		expect(onesOwn).not.toBe(stored());
		two.learner.takeUp(KEY, twosOwn);
		expect(placesOf(two.work)).toEqual({ A: [0, 222], W: [0, 425] });
		expect(placesOf(openTab().work)).toEqual({ A: [0, 222], W: [0, 425] });
	});

	it('that try the same step have both their tries counted', () => {
		const [one, two] = [openTab().work, openTab().work];
		for (const work of [one, two]) {
			work.place('A', point(0, 90));
			work.check('A');
			work.help('A');
		}
		expect(openTab().work.entry('A')).toMatchObject({ tries: 2, help: 2, placement: point(0, 90) });
	});

	it('that try the same step at the same moment have both their tries counted, and the placement of one', () => {
		const [one, two] = [openTab(), openTab()];
		telling(two.learner, () => one.work.place('A', point(0, 90)));
		const before = stored() ?? '';
		one.work.check('A');
		one.work.help('A');
		globalThis.localStorage.setItem(KEY, before);
		two.work.place('A', point(0, 80));
		two.work.check('A');
		const twosOwn = stored();
		one.learner.takeUp(KEY, before);
		expect(one.work.entry('A')).toMatchObject({ tries: 2, help: 1, placement: point(0, 90) });
		two.learner.takeUp(KEY, twosOwn);
		expect(two.work.entries).toEqual(one.work.entries);
	});

	it('do not answer each other for ever: what is known to both is not written again', () => {
		const [one, two] = [openTab(), openTab()];
		telling(two.learner, () => one.work.place('A', point(0, 222)));
		const now = stored();
		globalThis.localStorage.setItem = () => {
			throw new Error('nothing is to be written');
		};
		two.learner.takeUp(KEY, null);
		one.learner.takeUp(KEY, now);
		expect(placesOf(one.work)).toEqual(placesOf(two.work));
	});

	it('a store that was emptied elsewhere does not empty the page', () => {
		const { learner, work } = openTab();
		work.place('A', point(0, 222));
		globalThis.localStorage.clear();
		learner.takeUp(KEY, null);
		work.place('W', point(0, 425));
		expect(placesOf(openTab().work)).toEqual({ A: [0, 222], W: [0, 425] });
	});
});

describe('a browser that keeps nothing', () => {
	it('the work is there in the next lesson, for as long as the page is open', () => {
		forbidStore();
		const { learner, work } = openTab();
		work.place('A', point(0, 222));
		work.check('A');
		expect(learner.keeps).toBe(false);
		const next = takeUp(backBlock(), learner);
		expect(next.state('A')).toBe('right');
		learner.change({ body: 'wren' });
		next.load();
		expect(next.entries).toEqual({});
		learner.change({ body: 'heron' });
		next.load();
		expect(next.state('A')).toBe('right');
	});
});

describe('a method that needs no measurement', () => {
	const OLD = savedKey('work', 'first-marks', 'heron');
	const old = (place: readonly [number, number]): string =>
		JSON.stringify({
			version: 1,
			method: 'first-marks',
			body: 'heron',
			steps: { A: { placement: { kind: 'point', at: place }, checked: true } }
		});

	it('is drafted once for every body', () => {
		const learner = arrive();
		takeUp(FIRST_MARKS, learner).place('A', point(0, 100));
		learner.change({ body: 'wren' });
		expect(takeUp(FIRST_MARKS, learner).entry('A').placement).toEqual(point(0, 100));
	});

	it('what an earlier program kept for one body is found, and stays where it was', () => {
		globalThis.localStorage.setItem(OLD, old([0, 100]));
		const work = takeUp(FIRST_MARKS);
		expect(work.state('A')).toBe('right');
		work.place('B', point(125, 0));
		expect(globalThis.localStorage.getItem(OLD)).toBe(old([0, 100]));
		const learner = arrive();
		learner.change({ body: 'wren' });
		expect(takeUp(FIRST_MARKS, learner).state('A')).toBe('right');
	});

	it('a newer placement goes before the earlier one', () => {
		globalThis.localStorage.setItem(OLD, old([0, 90]));
		takeUp(FIRST_MARKS).place('A', point(0, 100));
		expect(takeUp(FIRST_MARKS).entry('A').placement).toEqual(point(0, 100));
	});
});
