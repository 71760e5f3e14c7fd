import { describe, expect, it } from 'vitest';
import { BadInput, slipWords } from '#shared/bad-input.ts';
import { placementSchema } from '#shared/placement.ts';
import type { Speech } from '#shared/speech/speech.ts';
import { mm } from '#shared/units.ts';
import { at } from '#geometry/point.ts';
import { isOpenHandle, nextOpenHandle, settleHandle } from '#ui/desk/dock/open-handles.ts';
import { roughly } from '#ui/desk/dock/roughly.ts';
import { readEnds, readHandles, readPlace, saidOf, type Around } from '#ui/desk/dock/spoken.ts';
import { freeName } from '#ui/keeping/names.ts';
import { english, speechFor } from '../support/speech.ts';
import { takeUp, toolAt } from './desk.ts';
import { freshStores } from './memory-store.ts';

freshStores();

const SPANISH = speechFor('es');
const AROUND: Around = {
	unit: 'cm',
	points: { O: at(0, 0), W: at(0, 425), W2: at(260, 425), A: at(0, 222) },
	origin: undefined,
	go: undefined
};
const said = (text: string, around: Partial<Around> = {}, speech: Speech = english) =>
	readPlace(text, { ...AROUND, ...around }, speech);
const complaint = (text: string, around: Partial<Around> = {}): string => {
	try {
		said(text, around);
	} catch (error) {
		if (error instanceof BadInput) return slipWords(error, english);
		throw error;
	}
	throw new Error('it was accepted');
};

describe('a place as a drafter says it', () => {
	// 38.4 / 2 + 3 is 22.2; W lies 42.5 down, and 20.5 below it is 63.
	it.each([
		['from O down 38.4/2+3', [0, 222]],
		['O down 38.4/2+3', [0, 222]],
		['down 38.4/2 + 3 from O', [0, 222]],
		['38,4/2+3 down from o', [0, 222]],
		['from W below 20.5', [0, 630]],
		['from W up 4', [0, 385]],
		['from W2 in 5.4/3', [242, 425]],
		['5.4/3 in from W2', [242, 425]],
		['from O across 2 in', [50.8, 0]],
		['from W across 20.5, down 3', [205, 455]],
		['across 12.5, down 10', [125, 100]],
		['12.5 across 10 down', [125, 100]],
		['in 1.5; up 2', [-15, -20]]
	] as const)('%s', (text, [x, y]) => {
		const { place } = said(text);
		expect(place.x).toBeCloseTo(x, 9);
		expect(place.y).toBeCloseTo(y, 9);
	});

	it.each([
		['desde O abajo 38,4/2+3', [0, 222]],
		['de O hacia abajo 38,4/2+3', [0, 222]],
		['desde W2 dentro 5,4/3', [242, 425]],
		['fuera 12,5; abajo 10', [125, 100]],
		['12,5 hacia fuera, 10 hacia abajo', [125, 100]]
	] as const)('in Spanish: %s', (text, [x, y]) => {
		const { place } = said(text, {}, SPANISH);
		expect(place.x).toBeCloseTo(x, 9);
		expect(place.y).toBeCloseTo(y, 9);
	});

	it('a level and a handle are measured from their own point, and a level goes across', () => {
		expect(said('20.5', { origin: 'W', go: 'across' }).place).toEqual(at(205, 425));
		expect(said('in 3, down 1', { origin: 'W2' }).place).toEqual(at(230, 435));
	});

	it('handles are said one after the other, each from its own end, and no more than there are', () => {
		const ends = [
			['0:leaving', 'W2'],
			['0:arriving', 'A']
		] as const;
		for (const [text, speech] of [
			['in 3, down 1 then up 2', english],
			['dentro 3; abajo 1 y luego arriba 2', SPANISH],
			['dentro 3, abajo 1 después arriba 2', SPANISH]
		] as const)
			expect(readHandles(text, ends, AROUND, speech)).toEqual({
				'0:leaving': at(230, 435),
				'0:arriving': at(0, 202)
			});
		expect(readHandles('in 3, down 1', ends, AROUND, english)).toEqual({ '0:leaving': at(230, 435) });
		expect(() => readHandles('in 3 then up 2 then up 1', ends, AROUND, english)).toThrow(BadInput);
	});

	it.each([
		['from O down', 'write a number, or a sum such as 38.4/2+3'],
		['down 22.2', 'say from which point, such as “from B”'],
		['from O 22.2', 'say which way it goes: down, up, across or in'],
		['from O down 1 up 2 in 3', 'say which way it goes: down, up, across or in'],
		['from K down 3', 'no point K stands on the sheet yet'],
		['from O down 630', 'that is 6.3 m: did you mean mm?'],
		['from W down 480', 'that lies further off than the sheet goes']
	])('%s is refused: %s', (text, told) => {
		expect(complaint(text)).toContain(told);
	});

	it('is kept as it was written, and said again in the learner’s language and unit', () => {
		const { typed } = said('from W down 20.5');
		if (!typed) throw new Error('nothing is kept');
		expect(placementSchema.parse({ kind: 'point', at: [0, 630], typed })).toMatchObject({ typed });
		expect(saidOf(typed, 'cm', english)).toBe('from W down 20.5');
		expect(saidOf(typed, 'in', english)).toBe('from W down 20.5 cm');
		expect(saidOf(typed, 'cm', SPANISH)).toBe('desde W abajo 20.5');
		for (const speech of [english, SPANISH]) {
			const pair = said(
				saidOf({ form: 'coordinates', across: '-(3)', down: '7', unit: 'cm' }, 'cm', speech),
				{},
				speech
			);
			expect(pair.place).toEqual(at(-30, 70));
			expect(pair.typed).toEqual({ form: 'coordinates', across: '-(3)', down: '7', unit: 'cm' });
		}
	});
});

describe('the ends of a line', () => {
	it.each([
		['W to A', english],
		['from W to A', english],
		['w a', english],
		['W–A', english],
		['de W a A', SPANISH],
		['W hasta A', SPANISH]
	] as const)('%s', (text, speech) => {
		expect(readEnds(text, AROUND.points, speech)).toEqual([at(0, 425), at(0, 222)]);
	});

	it.each(['W', 'W to K', 'W to A to O', ''])('%s is refused', (text) => {
		expect(() => readEnds(text, AROUND.points, english)).toThrow(BadInput);
	});
});

describe('about how far', () => {
	it('is told so coarsely that it gives nothing away', () => {
		expect([222, 425, 71.7, 25, 4].map((each) => roughly(mm(each), 'cm'))).toEqual([200, 450, 70, 25, 5]);
		expect([222, 71.7, 12].map((each) => Math.round((roughly(mm(each), 'in') / 25.4) * 100) / 100)).toEqual([
			8, 3, 0.5
		]);
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
