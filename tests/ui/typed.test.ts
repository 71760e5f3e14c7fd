import { describe, expect, it } from 'vitest';
import { BadInput, slipWords } from '#shared/bad-input.ts';
import { english } from '../support/speech.ts';
import { placementSchema } from '#shared/placement.ts';
import { at } from '#geometry/point.ts';
import { isOpenHandle, nextOpenHandle, settleHandle } from '#ui/desk/dock/open-handles.ts';
import {
	firstFields,
	inOtherUnit,
	isPending,
	typedOf,
	typedPlace,
	type Around,
	type Fields
} from '#ui/desk/dock/typed.ts';
import { freeName } from '#ui/keeping/names.ts';
import { FIRST_MARKS, takeUp, toolAt } from './desk.ts';
import { freshStores } from './memory-store.ts';

freshStores();

const EMPTY: Fields = { form: 'distance', sum: '', from: 'O', go: 'down', across: '', down: '' };
const AROUND: Around = {
	unit: 'cm',
	points: { O: at(0, 0), W: at(0, 425) },
	zero: at(0, 0),
	standing: undefined
};
const placed = (fields: Partial<Fields>, around: Partial<Around> = {}) =>
	typedPlace({ ...EMPTY, ...fields }, { ...AROUND, ...around });
const complaint = (fields: Partial<Fields>, around: Partial<Around> = {}): string => {
	try {
		placed(fields, around);
	} catch (error) {
		if (error instanceof BadInput) return slipWords(error, english);
		throw error;
	}
	throw new Error('it was accepted');
};

describe('a typed place', () => {
	it('is laid off from a point, or counted from the corner', () => {
		expect(placed({ sum: '20.5', from: 'W' })).toEqual(at(0, 630));
		expect(placed({ sum: '4', from: 'W', go: 'up' })).toEqual(at(0, 385));
		expect(placed({ form: 'coordinates', across: '7', down: '3' })).toEqual(at(70, 30));
		expect(placed({ form: 'coordinates', across: '7', down: '3' }, { zero: at(100, 50) })).toEqual(
			at(170, 80)
		);
	});

	it('stays where the mark stands in the direction that was left empty', () => {
		const standing = at(33.3, 44.4);
		expect(placed({ form: 'coordinates', across: '7' }, { standing })).toEqual(at(70, 44.4));
		expect(placed({ form: 'coordinates', down: '7' }, { standing })).toEqual(at(33.3, 70));
		expect(placed({ form: 'coordinates' }, { standing })).toEqual(standing);
		expect(placed({ form: 'coordinates', across: '7' })).toEqual(at(70, 0));
	});

	it.each<[fields: Partial<Fields>, complaint: string]>([
		[{}, 'sum: write a number, or a sum such as 38.4/2+3'],
		[{ sum: '630' }, 'sum: that is 6.3 m: did you mean mm?'],
		[{ sum: '480', from: 'W' }, 'sum: that lies further off than the sheet goes'],
		[{ sum: '4', from: 'K' }, 'sum: choose the point that it starts from'],
		[{ form: 'coordinates' }, 'across: write how far across, and how far down'],
		[{ form: 'coordinates', across: '7', down: '2 3' }, 'down: write a sign (+ − × ÷) between "2" and "3"'],
		[{ form: 'coordinates', across: '7 cm x', down: '2 3' }, 'across: a number is missing after "x"']
	])('%j is refused at its field: %s', (fields, said) => {
		expect(complaint(fields)).toBe(said);
	});

	it('is kept as it was written', () => {
		const fields: Fields = { ...EMPTY, sum: '38.4/2+3', across: '7' };
		for (const form of ['distance', 'coordinates'] as const) {
			const typed = typedOf({ ...fields, form }, 'cm');
			expect(placementSchema.parse({ kind: 'point', at: [0, 222], typed })).toMatchObject({ typed });
		}
	});
});

describe('the fields', () => {
	const mark = FIRST_MARKS.steps.find(({ name }) => name === 'A');
	const meeting = FIRST_MARKS.steps.find(({ name }) => name === 'Q');
	if (!mark || !meeting) throw new Error('first-marks has changed');

	it('begin with what suits the step, or with what was typed before', () => {
		expect(firstFields(mark, 'O', undefined, 'cm')).toEqual(EMPTY);
		expect(firstFields(meeting, 'B', undefined, 'cm')).toMatchObject({ form: 'coordinates', from: 'B' });
		const typed = typedOf({ ...EMPTY, sum: '20.5', from: 'W' }, 'cm');
		expect(firstFields(mark, 'O', typed, 'cm')).toMatchObject({ sum: '20.5', from: 'W' });
	});

	it('name the unit of what was typed in another', () => {
		const typed = typedOf({ ...EMPTY, sum: '20.5' }, 'cm');
		expect(firstFields(mark, 'O', typed, 'in').sum).toBe('20.5 cm');
		const coordinates = typedOf({ ...EMPTY, form: 'coordinates', across: '7', down: '1+2' }, 'cm');
		expect(firstFields(mark, 'O', coordinates, 'in')).toMatchObject({ across: '7 cm', down: '(1+2) cm' });
		expect(inOtherUnit({ ...EMPTY, sum: '3/4' }, 'in')).toEqual({ ...EMPTY, sum: '3/4 in' });
	});

	it('are pending where something is written that is not settled', () => {
		expect(isPending(EMPTY, EMPTY)).toBe(false);
		expect(isPending({ ...EMPTY, go: 'across' }, EMPTY)).toBe(false);
		const settled = { ...EMPTY, sum: '22.2' };
		expect(isPending(settled, EMPTY)).toBe(true);
		expect(isPending(settled, settled)).toBe(false);
		expect(isPending({ ...settled, go: 'across' }, settled)).toBe(true);
		expect(isPending({ ...settled, sum: ' ' }, settled)).toBe(false);
		expect(isPending({ ...settled, form: 'coordinates' }, settled)).toBe(false);
		expect(isPending({ ...settled, form: 'coordinates', down: '4' }, settled)).toBe(true);
	});
});

describe('the handles of a curve', () => {
	it('are asked for one after the other, until each was given a place', () => {
		const tool = toolAt('bend');
		const [first = '', second = ''] = tool.targets.map(({ id }) => id);
		expect([first, second].map((id) => isOpenHandle(tool, id))).toEqual([true, true]);
		expect(nextOpenHandle(tool)).toBe(second);
		tool.put(first, at(60, 100));
		expect(isOpenHandle(tool, first)).toBe(false);
		expect(nextOpenHandle(tool)).toBe(second);
		tool.choose(second);
		tool.put(second, at(125, 50));
		expect(nextOpenHandle(tool)).toBeUndefined();
	});

	it('one that was typed where it stood is not asked for again', () => {
		const tool = toolAt('bend');
		const [first = '', second = ''] = tool.targets.map(({ id }) => id);
		settleHandle(tool, first);
		tool.choose(second);
		expect(nextOpenHandle(tool)).toBeUndefined();
	});

	it('a step that is no curve has none', () => {
		const tool = toolAt('A', takeUp().method);
		expect(isOpenHandle(tool, 'point')).toBe(false);
		expect(nextOpenHandle(tool)).toBeUndefined();
	});
});

describe('the names of own bodies', () => {
	it('no two are alike, and none goes without', () => {
		expect(freeName('Ana', ['Heron', 'Bea'])).toBe('Ana');
		expect(freeName(' ana ', ['Ana', 'ANA 2'])).toBe('ana 3');
	});
});
