import { describe, expect, it } from 'vitest';
import { toldOf } from './desk.ts';
import { mm } from '#shared/units.ts';
import { choicesSlot, type SavedChoices } from '#ui/keeping/choices.ts';
import { Saved } from '#ui/keeping/saved.ts';
import { garmentOf } from '../garment/garment-files.ts';
import { freshStores, MemoryStore, useStore } from './memory-store.ts';

freshStores();

const GARMENT = garmentOf('course-dress');
const SLOT = choicesSlot(GARMENT, { id: 'heron', name: 'Heron' });
const KEY = 'square-across.choices.course-dress.heron';
const CHOSEN: SavedChoices = {
	allowances: { skirtLength: mm(700), bustEase: mm(-10) },
	edges: { 'front.side': mm(25), 'skirt.hem': mm(0) },
	cloth: mm(1150)
};

describe('what a maker chose', () => {
	it('is kept for one garment and body, and read back as it was', () => {
		const store = useStore(new MemoryStore());
		expect(new Saved().keep(SLOT, CHOSEN)).toMatchObject({ value: CHOSEN, kept: true });
		expect(Object.keys(store.all)).toEqual([KEY]);
		expect(new Saved().load(SLOT)).toEqual({ value: CHOSEN, setAside: undefined });
		const other = choicesSlot(GARMENT, { id: 'wren', name: 'Wren' });
		expect(new Saved().load(other).value).toBeUndefined();
	});

	it.each([
		[
			'an allowance that the garment does not have',
			{ allowances: { skirtLenght: 700 } },
			'skirtLenght',
			/skirtLength/
		],
		['one out of its range', { allowances: { skirtLength: 7000 } }, 'skirtLength', /from 30 cm to 120 cm/],
		['one that is no number', { allowances: { skirtLength: '70' } }, 'skirtLength', /number/],
		['an edge that no piece has', { edges: { 'front.sied': 10 } }, 'front.sied', /front\.side/],
		['an allowance at the fold', { edges: { 'back.centre': 10 } }, 'back.centre', /no edge of this name/],
		['one below nothing', { edges: { 'front.side': -1 } }, 'front.side', /from 0 cm to 10 cm/],
		['cloth as narrow as a ribbon', { cloth: 30 }, 'cloth', /from 60 cm to 320 cm/]
	])('%s is set aside by its name, and the rest is kept', (_, bad, name, reason) => {
		const store = useStore(new MemoryStore());
		const sound = { allowances: { flare: 60 }, edges: { 'back.side': 20 } };
		const saved = {
			version: 1,
			allowances: { ...sound.allowances, ...('allowances' in bad ? bad.allowances : {}) },
			edges: { ...sound.edges, ...('edges' in bad ? bad.edges : {}) },
			...('cloth' in bad ? { cloth: bad.cloth } : {})
		};
		store.setItem(KEY, JSON.stringify(saved));
		const { value, setAside } = new Saved().load(SLOT);
		expect(value).toEqual(sound);
		expect(toldOf(setAside)).toMatchObject({
			what: `Your choices for The course dress, for Heron: ${name}`,
			partly: true
		});
		expect(toldOf(setAside)?.reason).toMatch(reason);
		expect(JSON.parse(setAside?.raw ?? '')).toMatchObject(bad);
		expect(new Saved().load(SLOT), 'it is told of once').toEqual({ value: sound, setAside: undefined });
	});

	it('of two tabs is put together: each keeps what only it changed', () => {
		const [one, other] = [new Saved(), new Saved()];
		one.keep(SLOT, { allowances: { flare: mm(60) }, edges: {} });
		const begun = other.load(SLOT).value;
		expect(begun).toEqual({ allowances: { flare: 60 }, edges: {} });
		one.keep(SLOT, { allowances: { flare: mm(70) }, edges: {}, cloth: mm(900) });
		const { value } = other.keep(SLOT, { allowances: { flare: mm(60) }, edges: { 'front.side': mm(20) } });
		expect(value).toEqual({ allowances: { flare: 70 }, edges: { 'front.side': 20 }, cloth: 900 });
		expect(new Saved().load(SLOT).value).toEqual(value);
	});
});

describe('a named value', () => {
	const skirt = garmentOf('circle-skirt');
	const slot = choicesSlot(skirt, { id: 'heron', name: 'Heron' });

	it('is kept by its share, and read back', () => {
		useStore(new MemoryStore());
		const chosen: SavedChoices = { allowances: { fullness: 0.75, skirtLength: mm(700) }, edges: {} };
		new Saved().keep(slot, chosen);
		expect(new Saved().load(slot)).toEqual({ value: chosen, setAside: undefined });
	});

	it('that there is not is set aside, and all that there are are named', () => {
		const store = useStore(new MemoryStore());
		store.setItem(
			'square-across.choices.circle-skirt.heron',
			JSON.stringify({ version: 1, allowances: { fullness: 0.3, skirtLength: 700 } })
		);
		const { value, setAside } = new Saved().load(slot);
		expect(value).toEqual({ allowances: { skirtLength: 700 }, edges: {} });
		expect(toldOf(setAside)?.reason).toMatch(/quarter, half, threeQuarter, full/);
	});
});
