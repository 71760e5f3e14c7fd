import { describe, expect, it } from 'vitest';
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import { Learner } from '#ui/learner/learner.svelte.ts';
import { savedKey } from '#ui/saved/shelf.ts';
import { arrive } from './desk.ts';
import { forbidStore, freshStores, MemoryStore, useStore } from './memory-store.ts';

freshStores();

const SETTINGS = savedKey('settings');
const BODIES = savedKey('bodies');
/** A learner's own numbers, as they were written. */
const MINE = { name: 'Mine', unit: 'in' as const, allowances: {}, bust: '37 3/4', waist: 30 };

describe('a learner', () => {
	it('before the store is read drafts for Heron, in centimetres', () => {
		const learner = new Learner();
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
		expect(learner.own).toEqual([{ id, file: { name: 'My measurements', unit: 'in', allowances: {} } }]);
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
		expect(learner.setAside.map(({ what }) => what)).toEqual(['Your settings']);
	});

	it('an own body with a measurement that is none is set aside, and not shown as a body', () => {
		const store = useStore(new MemoryStore());
		const raw = JSON.stringify({ version: 1, bodies: [{ id: 'own-1', file: { ...MINE, bust: 'wide' } }] });
		store.setItem(BODIES, raw);
		const learner = arrive();
		expect(learner.bodies).toHaveLength(DEMO_BODIES.length);
		expect(learner.setAside).toMatchObject([{ what: 'Your own measurements', raw }]);
		expect(learner.setAside[0]?.reason).toContain('bust');
	});
});

describe('a browser that keeps nothing', () => {
	it('is found out at the first thing to keep, and the learner goes on', () => {
		forbidStore();
		const learner = arrive();
		expect(learner.keeps).toBe(true);
		learner.change({ unit: 'in' });
		expect(learner.keeps).toBe(false);
		expect(learner.unit).toBe('in');
	});

	it('because it is full, is no different', () => {
		useStore(new MemoryStore(10));
		const learner = arrive();
		learner.saveBody('own-1', MINE);
		expect(learner.keeps).toBe(false);
		expect(learner.own).toHaveLength(1);
	});
});
