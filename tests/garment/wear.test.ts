import { describe, expect, it } from 'vitest';
import { mm } from '#shared/units.ts';
import { cured, cureOf } from '#garment/cure.ts';
import type { Choices, Pattern } from '#garment/pattern.ts';
import { readGarment } from '#garment/read-garment.ts';
import type { WearReport } from '#garment/wear.ts';
import { cureWords } from '#garment/wear-words.ts';
import { pathEnd, pathStart } from '#geometry/path.ts';
import { BODY } from '../drafting/small-method.ts';
import { english, speechFor } from '../support/speech.ts';
import { madeFor } from './garment-files.ts';
import { findSmall, SMALL_GARMENT, type Written } from './small-garment.ts';

const choices = (allowances: Choices['allowances'] = {}): Choices => ({ allowances, edges: {} });
const withWear = (...wear: readonly Written[]) =>
	readGarment({ ...SMALL_GARMENT, wear }, 'garment.yaml', findSmall);
const check = (more: Written): Written => ({
	name: 'stride',
	label: 'The room for a stride',
	kind: 'length',
	number: '4 * length(skirt.hem)',
	...more
});
const reportOf = ({ wear }: Pattern, name = 'stride'): WearReport => {
	const found = wear.find((each) => each.name === name);
	if (!found) throw new Error(`there is no check "${name}"`);
	return found;
};

// The bust of 96 cm gives a waist of 240 mm and, with the flare of 50, a hem of 290: 1160 round. The back of 42 cm is the length.
describe('a wear check', () => {
	it('holds on its bounds', () => {
		const garment = withWear(check({ least: '116 cm', most: '116 cm' }));
		expect(reportOf(madeFor(garment, BODY))).toMatchObject({
			value: 1160,
			state: 'holds',
			because: undefined
		});
	});
	it('fails with its reason: too little, too much', () => {
		const low = withWear(check({ least: '120 cm', low: 'It binds', high: 'It drags' }));
		expect(reportOf(madeFor(low, BODY))).toMatchObject({ state: 'fails', because: 'It binds' });
		const high = withWear(check({ most: '110 cm', low: 'It binds', high: 'It drags' }));
		expect(reportOf(madeFor(high, BODY))).toMatchObject({ state: 'fails', because: 'It drags' });
	});
	it('measures widths, rises, ways across, angles, turns and edges', () => {
		const value = (number: string, kind = 'length'): number | undefined =>
			reportOf(madeFor(withWear(check({ number, kind, least: kind === 'length' ? '0 cm' : '0' })), BODY))
				.value;
		expect(value('widthAt(front, skirt.V)')).toBeCloseTo(240, 5);
		expect(value('widthAt(front, skirt.L)')).toBeCloseTo(290, 9);
		expect(value('widthAt(front, skirt.L, 0.5 * rise(skirt.L, skirt.V))')).toBeCloseTo(265, 9);
		expect(value('rise(skirt.K, skirt.V)')).toBe(420);
		expect(value('across(skirt.V, skirt.K)')).toBe(50);
		expect(value('angle(skirt.K, skirt.V) - 90', 'angle')).toBeCloseTo(
			(Math.atan(50 / 420) * 180) / Math.PI,
			9
		);
		expect(value('turn(skirt.waist, skirt.side)', 'angle')).toBeCloseTo(
			90 - (Math.atan(50 / 420) * 180) / Math.PI,
			9
		);
		expect(value('sewn(back.centre)')).toBe(420);
	});
	it('is drawn where it is made', () => {
		const garment = withWear(check({ least: '0 cm', at: { piece: 'back', level: 'L' } }));
		const { place } = reportOf(madeFor(garment, BODY));
		expect(place?.piece).toBe('back');
		expect(place && [pathStart(place.path), pathEnd(place.path)]).toEqual([
			{ x: 0, y: 420 },
			{ x: 290, y: 420 }
		]);
	});
	it('names what is wrong in its file', () => {
		expect(() => withWear(check({}))).toThrow('garment.yaml: wear stride');
		expect(() => withWear(check({ least: '1 cm', cure: ['flair'] }))).toThrow('flare');
		expect(() => withWear(check({ least: '1 cm', number: 'widthAt(frnt, skirt.V)' }))).toThrow('front');
		expect(() => withWear(check({ least: '1 cm', at: { piece: 'front', level: 'X' } }))).toThrow('X');
	});
});

describe('a cure', () => {
	it('is the least change in whole millimetres with which the check holds, and holds when it is drafted', () => {
		const garment = withWear(check({ least: '121.1 cm', cure: ['flare'] }));
		const cure = cureOf(garment, BODY, choices(), 'stride');
		// 1211 round asks for a flare of 62.75.
		expect(cure).toMatchObject({ kind: 'cure', changes: [{ from: 50, to: 63 }] });
		if (cure.kind !== 'cure') return;
		const made = madeFor(garment, BODY, cured(choices(), cure.changes));
		expect(reportOf(made)).toMatchObject({ state: 'holds', value: 4 * 303 });
	});
	it('starts from what was chosen', () => {
		const garment = withWear(check({ most: '116 cm', cure: ['flare'] }));
		const cure = cureOf(garment, BODY, choices({ flare: mm(151) }), 'stride');
		expect(cure).toMatchObject({ kind: 'cure', changes: [{ from: 151, to: 50 }] });
	});
	it('that would break another check names it', () => {
		const garment = withWear(
			check({ least: '124 cm', cure: ['flare'] }),
			check({ name: 'hem', label: 'The weight of the hem', most: '120 cm' })
		);
		expect(cureOf(garment, BODY, choices(), 'stride')).toMatchObject({
			kind: 'odds',
			spoilt: { kind: 'wear', label: 'The weight of the hem' }
		});
	});
	it('that would break a bound of a number names that', () => {
		const garment = withWear(check({ least: '131 cm', cure: ['flare'] }));
		expect(cureOf(garment, BODY, choices(), 'stride')).toMatchObject({
			kind: 'odds',
			spoilt: { kind: 'number', label: 'The hem all round' }
		});
	});
	it('that the range does not hold says how far it goes', () => {
		const garment = withWear(check({ least: '200 cm', cure: ['flare'] }));
		expect(cureOf(garment, BODY, choices(), 'stride')).toMatchObject({
			kind: 'too-far',
			changes: [{ to: 200 }]
		});
	});
	it('that the range does not hold names the two measurements that disagree, in both languages', () => {
		const garment = withWear(check({ least: '200 cm', cure: ['flare'], odds: ['hip', 'waist'] }));
		const cure = cureOf(garment, BODY, choices(), 'stride');
		const said = [english, speechFor('es')].map((speech) => cureWords(cure, { label: '' }, speech));
		expect(said[0]).toMatch(/and that is not enough\. The hip and the waist disagree: measure both again\.$/);
		expect(said[1]).toMatch(
			/y no basta\. El contorno de cadera y el contorno de cintura no concuerdan: vuelve a tomar las dos medidas\.$/
		);
	});
	it('is none where no allowance moves it', () => {
		const garment = withWear(check({ least: '200 cm', cure: ['bustEase'] }));
		expect(cureOf(garment, BODY, choices(), 'stride')).toEqual({ kind: 'none' });
	});
});
