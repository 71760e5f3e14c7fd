import { describe, expect, it } from 'vitest';
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import { Learner } from '#ui/keeping/learner.svelte.ts';
import { savedKey } from '#ui/keeping/shelf.ts';
import { english } from '../support/speech.ts';
import { arrive, toldOf } from './desk.ts';
import { forbidStore, freshStores, MemoryStore, useStore } from './memory-store.ts';

freshStores();

const SETTINGS = savedKey('settings');
const BODIES = savedKey('bodies');
/** A learner's own numbers, as they were written. */
const MINE = { name: 'Mine', unit: 'in' as const, allowances: {}, bust: '37 3/4', waist: 30 };

describe('a learner', () => {
	it('before the store is read drafts for Heron, in centimetres', () => {
		const learner = new Learner(() => english.words.site.unnamed);
		expect(learner.loaded).toBe(false);
		expect(learner.unit).toBe('cm');
		expect(learner.current).toMatchObject({ id: 'heron', own: false, body: { name: 'Heron' } });
		expect(learner.bodies.map(({ id }) => id)).toEqual(DEMO_BODIES.map(({ id }) => id));
	});

	it('finds settings again after a reload', () => {
		arrive().change({ unit: 'in', body: 'wren' });
		const again = arrive();
		expect(again.unit).toBe('in');
		expect(again.current.body.name).toBe('Wren');
		expect(again.settings.snap).toEqual({ cm: 1, in: 25.4 / 16 });
	});

	it('changing one setting leaves the others', () => {
		const learner = arrive();
		learner.change({ unit: 'in' });
		learner.change({ body: 'lark' });
		expect(arrive().settings).toMatchObject({ unit: 'in', body: 'lark' });
	});

	it('whose chosen body is gone drafts for the first', () => {
		arrive().change({ body: 'own-long-gone' });
		expect(arrive().current.id).toBe('heron');
	});

	it('reads the store once', () => {
		const learner = arrive();
		learner.change({ unit: 'in' });
		learner.saveBody('own-1', MINE);
		useStore(new MemoryStore());
		learner.load();
		expect(learner.unit).toBe('in');
		expect(learner.own).toHaveLength(1);
	});
});

describe('own bodies', () => {
	it('are read in their own unit, after the demo bodies, and come back after a reload', () => {
		arrive().saveBody('own-1', MINE);
		const learner = arrive();
		expect(learner.bodies).toHaveLength(DEMO_BODIES.length + 1);
		learner.change({ body: 'own-1' });
		expect(learner.current).toMatchObject({ id: 'own-1', own: true });
		expect(learner.current.body.name).toBe('Mine');
		expect(learner.current.body.measurements.bust).toBeCloseTo(37.75 * 25.4, 9);
		expect(learner.current.body.measurements.hip).toBeUndefined();
	});

	it('saved again are changed and not doubled', () => {
		const learner = arrive();
		learner.saveBody('own-1', MINE);
		learner.saveBody('own-1', { ...MINE, bust: '38' });
		expect(arrive().own).toEqual([{ id: 'own-1', file: { ...MINE, bust: '38' } }]);
	});

	it('a new one has no measurements yet, and the unit of the screen', () => {
		const learner = arrive();
		learner.change({ unit: 'in' });
		const id = learner.newBody();
		expect(learner.own).toEqual([{ id, file: { unit: 'in', allowances: {} } }]);
		expect(learner.bodies.at(-1)?.body.name).toBe('My measurements');
		expect(arrive().own).toHaveLength(1);
	});

	it('a measuring lesson writes to the chosen one, else to the first', () => {
		const learner = arrive();
		expect(learner.ownBody()).toBeUndefined();
		learner.saveBody('own-1', MINE);
		learner.saveBody('own-2', { ...MINE, name: 'Hers' });
		expect(learner.ownBody()?.id).toBe('own-1');
		learner.change({ body: 'own-2' });
		expect(learner.ownBody()?.id).toBe('own-2');
	});

	it('one that could not be read back is not taken', () => {
		const learner = arrive();
		expect(learner.saveBody('own-1', MINE)).toBe(true);
		expect(learner.saveBody('own-1', { ...MINE, bust: 'wide' })).toBe(false);
		expect(learner.saveBody('own-2', { ...MINE, name: 'x'.repeat(201) })).toBe(false);
		expect(learner.own).toEqual([{ id: 'own-1', file: MINE }]);
		expect(arrive().own).toEqual([{ id: 'own-1', file: MINE }]);
	});

	it('two that are begun in one moment are two', () => {
		const learner = arrive();
		expect(learner.newBody()).not.toBe(learner.newBody());
		expect(arrive().own).toHaveLength(2);
	});

	it('one that is removed is forgotten, and no longer chosen', () => {
		const learner = arrive();
		learner.saveBody('own-1', MINE);
		learner.saveBody('own-2', MINE);
		learner.change({ body: 'own-1' });
		learner.removeBody('own-1');
		expect(learner.current.id).toBe('heron');
		expect(arrive().own.map(({ id }) => id)).toEqual(['own-2']);
		expect(arrive().settings.body).toBe('heron');
	});
});

describe('what cannot be read back', () => {
	it('is told of by name, and the rest is kept', () => {
		const store = useStore(new MemoryStore());
		store.setItem(SETTINGS, '{"unit":"ell"}');
		store.setItem(BODIES, JSON.stringify({ version: 1, bodies: [{ id: 'own-1', file: MINE }] }));
		const learner = arrive();
		expect(learner.unit).toBe('cm');
		expect(learner.own).toHaveLength(1);
		expect(learner.setAside.map((each) => toldOf(each)?.what)).toEqual(['Your settings']);
	});

	const keepBodies = (...bodies: readonly unknown[]): MemoryStore => {
		const store = useStore(new MemoryStore());
		store.setItem(BODIES, JSON.stringify({ version: 1, bodies }));
		return store;
	};

	it('an own body with a measurement that is none is set aside by name, and the others are kept', () => {
		const bad = { id: 'own-2', file: { ...MINE, name: 'Hers', bust: 'wide' } };
		const store = keepBodies({ id: 'own-1', file: MINE }, bad, 'no body', { id: 'own-3', file: MINE });
		const learner = arrive();
		expect(learner.own.map(({ id }) => id)).toEqual(['own-1', 'own-3']);
		expect(learner.setAside.map(toldOf)).toMatchObject([
			{ what: 'Your own measurements: Hers and number 3', partly: true }
		]);
		const [aside] = learner.setAside;
		expect(toldOf(aside)?.reason).toContain('bust');
		expect(JSON.parse(store.getItem(aside?.savedAs ?? '') ?? '')).toEqual({
			version: 1,
			bodies: [bad, 'no body']
		});
		const again = arrive();
		expect(again.setAside).toEqual([]);
		expect(again.own).toEqual(learner.own);
	});

	it('own bodies of one id, or with the id of an invented body, each have an id of their own', () => {
		keepBodies(...['own-1', 'own-1', 'heron', 'own-1', 'own-1-2'].map((id) => ({ id, file: MINE })));
		const learner = arrive();
		const ids = ['own-1', 'own-1-2', 'own-heron', 'own-1-3', 'own-1-2-2'];
		expect(learner.own.map(({ id }) => id)).toEqual(ids);
		expect(new Set(learner.bodies.map(({ id }) => id)).size).toBe(DEMO_BODIES.length + ids.length);
		expect(learner.current).toMatchObject({ id: 'heron', own: false });
		learner.saveBody('own-heron', { ...MINE, name: 'Ours' });
		expect(arrive().own.map(({ id }) => id)).toEqual(ids);
	});

	it('a message is closed, and the others stay', () => {
		const store = keepBodies('no body');
		store.setItem(SETTINGS, '{');
		const learner = arrive();
		expect(learner.setAside).toHaveLength(2);
		learner.dismiss(learner.setAside[0]?.savedAs ?? '');
		expect(learner.setAside.map((each) => toldOf(each)?.what)).toEqual(['Your own measurements: number 1']);
	});
});

describe('two tabs', () => {
	/** Does something in one tab, and tells the other of one key as a browser does. */
	const telling = (key: string, other: Learner, act: () => void): void => {
		const old = globalThis.localStorage.getItem(key);
		act();
		other.takeUp(key, old);
	};

	it('that know nothing of each other lose no body and no setting', () => {
		const [one, two] = [arrive(), arrive()];
		one.saveBody('own-1', MINE);
		two.saveBody('own-2', { ...MINE, name: 'Hers' });
		one.change({ unit: 'in' });
		two.change({ body: 'wren' });
		const again = arrive();
		expect(again.own.map(({ id }) => id)).toEqual(['own-1', 'own-2']);
		expect(again.settings).toMatchObject({ unit: 'in', body: 'wren' });
	});

	it('one takes up what the other measured, changed, chose and removed', () => {
		const [one, two] = [arrive(), arrive()];
		telling(BODIES, two, () => one.saveBody('own-1', MINE));
		expect(two.own).toEqual(one.own);
		telling(BODIES, one, () => two.saveBody('own-1', { ...MINE, bust: '38' }));
		expect(one.own[0]?.file['bust']).toBe('38');
		telling(SETTINGS, two, () => one.change({ body: 'own-1', unit: 'in' }));
		expect(two.current.id).toBe('own-1');
		expect(two.unit).toBe('in');
		telling(BODIES, two, () => one.removeBody('own-1'));
		expect(two.own).toEqual([]);
		expect(two.current.id).toBe('heron');
	});

	it('what is not this program’s, and what comes before the store is read, changes nothing', () => {
		const [one, two] = [arrive(), new Learner(() => english.words.site.unnamed)];
		telling(SETTINGS, two, () => one.change({ unit: 'in' }));
		expect(two.unit).toBe('cm');
		const before = JSON.stringify(one.settings);
		one.takeUp('somebody.else', null);
		expect(JSON.stringify(one.settings)).toBe(before);
	});
});

describe('a browser that keeps nothing', () => {
	it('is found out at the first thing to keep, and the learner goes on', () => {
		forbidStore();
		const learner = arrive();
		expect(learner.keeps).toBe(true);
		expect(learner.change({ unit: 'in' })).toBe(false);
		expect(learner.keeps).toBe(false);
		expect(learner.unit).toBe('in');
	});

	it('because it is full, is no different; with room again it keeps all of it', () => {
		const store = useStore(new MemoryStore(10));
		const learner = arrive();
		expect(learner.saveBody('own-1', MINE)).toBe(false);
		expect(learner.keeps).toBe(false);
		expect(learner.own).toHaveLength(1);
		store.room = Infinity;
		expect(learner.change({ unit: 'in' })).toBe(true);
		expect(learner.keeps).toBe(true);
		expect(arrive().own).toHaveLength(1);
	});
});
