import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { load, save, savedKey } from '#ui/saved/saved.ts';
import { ownBodiesSchema, settingsSchema, workSchema } from '#ui/saved/schemas.ts';
import { forbidStore, freshStores, MemoryStore, useStore } from './memory-store.ts';

freshStores();

const SCHEMA = z.object({ version: z.literal(1), marks: z.array(z.number()) });
const KEY = savedKey('work', 'back-block', 'heron');
const VALUE = { version: 1 as const, marks: [1, 2.5] };
const read = () => load(KEY, 'Your draft', SCHEMA);

/** The keys under which something was set aside. */
const aside = (store: MemoryStore): readonly string[] =>
	Object.keys(store.all).filter((key) => key.startsWith('square-across.set-aside.'));

describe('what is saved', () => {
	it('is read back as it was, under a key of this program’s own', () => {
		const store = useStore(new MemoryStore());
		expect(save(KEY, VALUE)).toBe(true);
		expect(Object.keys(store.all)).toEqual(['square-across.work.back-block.heron']);
		expect(read()).toEqual({ value: VALUE, setAside: undefined });
	});

	it('nothing saved is nothing, and nothing is set aside for it', () => {
		expect(read()).toEqual({ value: undefined, setAside: undefined });
	});

	it('is replaced by what is saved later', () => {
		save(KEY, VALUE);
		save(KEY, { ...VALUE, marks: [7] });
		expect(read().value?.marks).toEqual([7]);
	});
});

describe('damaged data', () => {
	it.each([
		['cut short', '{"version":1,"mar', /JSON/],
		['no JSON at all', 'hello', /JSON/],
		['empty', '', /JSON/],
		['of another shape', '{"version":1,"marks":[1,"two"]}', /^marks\.1: /],
		['of a later version', '{"version":2,"marks":[]}', /^version: /],
		['nothing where something should be', 'null', /^the whole: /],
		['a list', '[1]', /^the whole: /]
	])(
		'%s: is set aside under a name of its own, with the reason, and kept to the letter',
		(_, raw, reason) => {
			const store = useStore(new MemoryStore());
			store.setItem(KEY, raw);
			const { value, setAside } = read();
			expect(value).toBeUndefined();
			expect(setAside).toMatchObject({ what: 'Your draft', raw });
			expect(setAside?.reason).toMatch(reason);
			expect(setAside?.savedAs).toMatch(/^square-across\.set-aside\.\d+\.work\.back-block\.heron$/);
			expect(store.all).toEqual({ [setAside?.savedAs ?? '']: raw });
		}
	);

	it('is told of once: the next reading finds nothing', () => {
		useStore(new MemoryStore()).setItem(KEY, '{');
		expect(read().setAside).toBeDefined();
		expect(read()).toEqual({ value: undefined, setAside: undefined });
	});

	it('new work may be saved after it, and harms neither', () => {
		const store = useStore(new MemoryStore());
		store.setItem(KEY, '{');
		read();
		save(KEY, VALUE);
		expect(read().value).toEqual(VALUE);
		expect(aside(store).map((key) => store.getItem(key))).toEqual(['{']);
	});
});

describe('a full store', () => {
	it('keeps nothing new, and says so', () => {
		const store = useStore(new MemoryStore(60));
		expect(save(KEY, VALUE)).toBe(false);
		expect(store.length).toBe(0);
	});

	it('keeps what it had', () => {
		const store = useStore(new MemoryStore());
		save(KEY, VALUE);
		store.room = 0;
		expect(save(KEY, { ...VALUE, marks: [7] })).toBe(false);
		expect(read().value).toEqual(VALUE);
	});

	it('has room to set damaged data aside where it has none for a second copy', () => {
		const store = useStore(new MemoryStore());
		const raw = `{"version":1,${'x'.repeat(500)}`;
		store.setItem(KEY, raw);
		store.room = 700;
		const { value, setAside } = read();
		expect(value).toBeUndefined();
		expect(store.all).toEqual({ [setAside?.savedAs ?? '']: raw });
	});

	it('with no room even for a longer name, leaves damaged data where it was, and hands it over', () => {
		const store = useStore(new MemoryStore());
		store.setItem(KEY, 'damaged');
		store.room = KEY.length + 'damaged'.length;
		const { value, setAside } = read();
		expect(value).toBeUndefined();
		expect(setAside).toMatchObject({ savedAs: KEY, raw: 'damaged' });
		expect(store.all).toEqual({ [KEY]: 'damaged' });
	});
});

describe('no store', () => {
	it.each([
		['forbidden by the browser', forbidStore],
		['none at all', () => useStore(undefined)],
		['switched off', () => useStore(null)]
	])('%s: nothing is read or kept, and nothing breaks', (_, without) => {
		without();
		expect(read()).toEqual({ value: undefined, setAside: undefined });
		expect(save(KEY, VALUE)).toBe(false);
	});

	it('one that cannot be read is as none', () => {
		class Broken extends MemoryStore {
			override getItem(): string {
				throw new DOMException('the file is damaged', 'NS_ERROR_FILE_CORRUPTED');
			}
		}
		useStore(new Broken());
		expect(read()).toEqual({ value: undefined, setAside: undefined });
	});
});

describe('the shapes that are saved', () => {
	it('settings: everything has a default, and damage is seen', () => {
		expect(settingsSchema.parse({})).toEqual({
			version: 1,
			unit: 'cm',
			body: 'heron',
			snap: { cm: 1, in: 25.4 / 16 }
		});
		for (const bad of [
			{ unit: 'ell' },
			{ snap: { cm: 0, in: 1 } },
			{ snap: { cm: -1, in: 1 } },
			{ version: 2 }
		])
			expect(settingsSchema.safeParse(bad).success, JSON.stringify(bad)).toBe(false);
	});

	it('own bodies: one that the engine could not read is seen when it is loaded', () => {
		const bodies = (file: unknown) =>
			ownBodiesSchema.safeParse({ version: 1, bodies: [{ id: 'own-1', file }] });
		expect(bodies({ name: 'Mine', unit: 'cm', bust: 96, waist: '37 3/4"' }).success).toBe(true);
		expect(bodies({ bust: 'wide' }).error?.issues[0]?.message).toContain('bust');
		expect(bodies({ bust: 960 }).success).toBe(false);
		expect(bodies({ elbow: 30 }).success).toBe(false);
	});

	it('work: a placement that is none, or help beyond the third rung, is seen', () => {
		const work = (entry: unknown) =>
			workSchema.safeParse({ version: 1, method: 'm', body: 'b', steps: { A: entry } });
		expect(work({}).data?.steps['A']).toMatchObject({ checked: false, tries: 0, help: 0, shown: false });
		expect(work({ placement: { kind: 'point', at: [0, 222] } }).success).toBe(true);
		for (const bad of [{ placement: { kind: 'point', at: [0] } }, { help: 4 }, { tries: -1 }, { tries: 0.5 }])
			expect(work(bad).success, JSON.stringify(bad)).toBe(false);
	});
});
