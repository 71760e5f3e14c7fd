import { describe, expect, it } from 'vitest';
import { toldOf } from './desk.ts';
import { message } from '#shared/speech/message.ts';
import { z } from 'zod';
import { entrySchema } from '#shared/entry.ts';
import { alike, mergedByName } from '#ui/keeping/merge.ts';
import { Saved, whole, type Loaded } from '#ui/keeping/saved.ts';
import { ownBodySchema, settingsSchema } from '#ui/keeping/schemas.ts';
import { savedKey } from '#ui/keeping/shelf.ts';
import { forbidStore, freshStores, MemoryStore, useStore } from './memory-store.ts';

freshStores();

const SCHEMA = z.object({ version: z.literal(1), marks: z.array(z.number()) });
const KEY = savedKey('work', 'back-block', 'heron');
const SLOT = whole(KEY, message('keeping', 'settings'), SCHEMA);
const VALUE = { version: 1 as const, marks: [1, 2.5] };
/** What a page finds that is opened now. */
const read = (): Loaded<z.infer<typeof SCHEMA>> => new Saved().load(SLOT);
const save = (value: unknown): boolean => new Saved().keepWhole(KEY, value);
const NONE = { value: undefined, setAside: undefined };

/** The keys under which something was set aside. */
const aside = (store: MemoryStore): readonly string[] =>
	Object.keys(store.all).filter((key) => key.startsWith('square-across.set-aside.'));

describe('what is saved', () => {
	it('is read back as it was, under a key of this program’s own', () => {
		const store = useStore(new MemoryStore());
		expect(save(VALUE)).toBe(true);
		expect(Object.keys(store.all)).toEqual(['square-across.work.back-block.heron']);
		expect(read()).toEqual({ value: VALUE, setAside: undefined });
	});

	it('nothing saved is nothing, and nothing is set aside for it', () => {
		expect(read()).toEqual(NONE);
	});

	it('is replaced by what is saved later', () => {
		save(VALUE);
		save({ ...VALUE, marks: [7] });
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
			expect(toldOf(setAside)).toMatchObject({ what: 'Your settings', raw, inPlace: false, partly: false });
			expect(toldOf(setAside)?.reason).toMatch(reason);
			expect(setAside?.savedAs).toMatch(/^square-across\.set-aside\.\d+\.work\.back-block\.heron$/);
			expect(store.all).toEqual({ [setAside?.savedAs ?? '']: raw });
		}
	);

	it('is told of once: the next reading finds nothing', () => {
		useStore(new MemoryStore()).setItem(KEY, '{');
		expect(read().setAside).toBeDefined();
		expect(read()).toEqual(NONE);
	});

	it('new work may be saved after it, and harms neither', () => {
		const store = useStore(new MemoryStore());
		store.setItem(KEY, '{');
		read();
		save(VALUE);
		expect(read().value).toEqual(VALUE);
		expect(aside(store).map((key) => store.getItem(key))).toEqual(['{']);
	});

	it('that another tab left behind is set aside before anything is saved over it', () => {
		const store = useStore(new MemoryStore());
		const page = new Saved();
		page.load(SLOT);
		store.setItem(KEY, 'damaged');
		const { value, kept, setAside } = page.keep(SLOT, VALUE);
		expect([value, kept, setAside?.raw]).toEqual([VALUE, true, 'damaged']);
		expect(store.getItem(setAside?.savedAs ?? '')).toBe('damaged');
		expect(read().value).toEqual(VALUE);
	});
});

describe('a full store', () => {
	it('keeps nothing new, and says so', () => {
		const store = useStore(new MemoryStore(60));
		expect(save(VALUE)).toBe(false);
		expect(store.length).toBe(0);
	});

	it('keeps what it had', () => {
		const store = useStore(new MemoryStore());
		save(VALUE);
		store.room = 0;
		expect(save({ ...VALUE, marks: [7] })).toBe(false);
		expect(read().value).toEqual(VALUE);
	});

	/** A store that has no room for a second copy of its one damaged record. */
	const full = (raw = `{"version":1,${'x'.repeat(500)}`): MemoryStore => {
		const store = useStore(new MemoryStore());
		store.setItem(KEY, raw);
		store.room = 700;
		return store;
	};

	it('with no room to set damaged data aside leaves it where it is, and hands it over', () => {
		const store = full();
		const raw = store.getItem(KEY);
		const { value, setAside } = read();
		expect(value).toBeUndefined();
		expect(setAside).toMatchObject({ savedAs: KEY, raw, inPlace: true });
		expect(store.all).toEqual({ [KEY]: raw });
	});

	it('is not written over either, however often one saves: the work is held by the page', () => {
		const store = full();
		const before = store.all;
		const page = new Saved();
		page.load(SLOT);
		for (const marks of [[7], [8]])
			expect(page.keep(SLOT, { ...VALUE, marks })).toMatchObject({ kept: false });
		expect(page.keepWhole(KEY, { ...VALUE, marks: [9] })).toBe(false);
		expect(store.all).toEqual(before);
		expect(page.load(SLOT)).toEqual({ value: { ...VALUE, marks: [9] }, setAside: undefined });
		expect(page.keepsAll).toBe(false);
	});

	it('once the damaged data is removed, keeps what the page held', () => {
		full();
		const page = new Saved();
		page.load(SLOT);
		page.keep(SLOT, VALUE);
		page.remove(KEY);
		expect(page.keepsAll).toBe(true);
		expect(read()).toEqual({ value: VALUE, setAside: undefined });
	});

	it('that even refuses what it held before loses nothing', () => {
		class Shut extends MemoryStore {
			shut = false;
			override setItem(key: string, value: string): void {
				if (this.shut) throw new DOMException('the store is full', 'QuotaExceededError');
				super.setItem(key, value);
			}
		}
		const store = useStore(new Shut());
		store.setItem(KEY, 'damaged');
		store.shut = true;
		expect(read().setAside).toMatchObject({ savedAs: KEY, raw: 'damaged', inPlace: true });
		expect(store.all).toEqual({ [KEY]: 'damaged' });
	});

	it('that has room again is given everything that it would not keep', () => {
		const store = useStore(new MemoryStore(0));
		const page = new Saved();
		page.keep(SLOT, VALUE);
		store.room = Infinity;
		expect(page.keepWhole(savedKey('other'), 1)).toBe(true);
		expect(page.keepsAll).toBe(true);
		expect(read().value).toEqual(VALUE);
	});
});

describe('no store', () => {
	it.each([
		['forbidden by the browser', forbidStore],
		['none at all', () => useStore(undefined)],
		['switched off', () => useStore(null)]
	])('%s: the page holds what it is given, and the next page knows nothing of it', (_, without) => {
		without();
		expect(read()).toEqual(NONE);
		const page = new Saved();
		expect(page.keepsAll).toBe(true);
		expect(page.keep(SLOT, VALUE)).toMatchObject({ value: VALUE, kept: false });
		expect(page.load(SLOT)).toEqual({ value: VALUE, setAside: undefined });
		expect(page.keepsAll).toBe(false);
		expect(read()).toEqual(NONE);
	});

	it('one that cannot be read is as none', () => {
		class Broken extends MemoryStore {
			override getItem(): string {
				throw new DOMException('the file is damaged', 'NS_ERROR_FILE_CORRUPTED');
			}
		}
		useStore(new Broken());
		expect(read()).toEqual(NONE);
	});
});

describe('two tabs, put together', () => {
	const base = { A: 1, B: 2, C: 3 };

	it.each([
		[
			'what only one of them changed is as that one has it',
			{ ...base, A: 7 },
			{ ...base, B: 8 },
			{ A: 7, B: 8, C: 3 }
		],
		[
			'what both changed is this one’s, unless it is settled',
			{ ...base, A: 7 },
			{ ...base, A: 9 },
			{ A: 7, B: 2, C: 3 }
		],
		['what one added is there', { ...base, D: 4 }, { ...base, E: 5 }, { A: 1, B: 2, C: 3, D: 4, E: 5 }],
		['what one took away is gone', { A: 1, B: 2 }, { B: 2, C: 3 }, { B: 2 }],
		[
			'what one took away and the other changed is kept',
			{ A: 7, B: 2 },
			{ B: 2, C: 9 },
			{ A: 7, B: 2, C: 9 }
		],
		['what both did alike is done once', { ...base, A: 7 }, { ...base, A: 7 }, { A: 7, B: 2, C: 3 }]
	])('%s', (_, ours, theirs, together) => {
		expect(mergedByName<number>(base, ours, theirs)).toEqual(together);
	});

	it('a name that every object has is a name like another', () => {
		expect(mergedByName<number>({}, { constructor: 1 }, { toString: 2 })).toEqual({
			constructor: 1,
			toString: 2
		});
	});

	it('values are alike whatever the order of their keys, and what is not defined is not there', () => {
		expect(alike({ a: 1, b: [1, { c: null }] }, { b: [1, { c: null }], a: 1, d: undefined })).toBe(true);
		for (const [a, b] of [
			[{ a: 1 }, { a: 2 }],
			[{ a: 1 }, { a: 1, b: 2 }],
			[{ a: 1 }, { b: 1 }],
			[
				[1, 2],
				[2, 1]
			],
			[[], {}],
			[null, {}],
			['1', 1]
		])
			expect(alike(a, b), JSON.stringify([a, b])).toBe(false);
	});
});

describe('the shapes that are saved', () => {
	it('settings: everything has a default, and damage is seen', () => {
		expect(settingsSchema.parse({})).toEqual({
			version: 1,
			unit: 'cm',
			body: 'heron',
			goesOn: true,
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
		const body = (file: unknown) => ownBodySchema.safeParse({ id: 'own-1', file });
		expect(body({ name: 'Mine', unit: 'cm', bust: 96, waist: '37 3/4"' }).success).toBe(true);
		expect(body({ bust: 'wide' }).error?.issues[0]?.message).toContain('bust');
		expect(body({ bust: 960 }).success).toBe(false);
		expect(body({ elbow: 30 }).success).toBe(false);
		expect(ownBodySchema.safeParse({ id: '', file: {} }).success).toBe(false);
	});

	it('a step: a placement that is none, or help beyond the third rung, is seen', () => {
		expect(entrySchema.parse({})).toMatchObject({ checked: false, tries: 0, help: 0, shown: false });
		expect(entrySchema.safeParse({ placement: { kind: 'point', at: [0, 222] } }).success).toBe(true);
		for (const bad of [{ placement: { kind: 'point', at: [0] } }, { help: 4 }, { tries: -1 }, { tries: 0.5 }])
			expect(entrySchema.safeParse(bad).success, JSON.stringify(bad)).toBe(false);
	});
});
