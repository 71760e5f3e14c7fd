import { describe, expect, it } from 'vitest';
import { mm } from '#shared/units.ts';
import { chordMeets } from '#geometry/chord.ts';
import { at } from '#geometry/point.ts';

const BOX = { left: mm(10), top: mm(20), right: mm(40), bottom: mm(30) };

describe('a chord and a rectangle from (10, 20) to (40, 30)', () => {
	it.each<[string, readonly [number, number], readonly [number, number], boolean]>([
		['through it, both ends outside', [0, 25], [50, 25], true],
		['all within', [12, 22], [14, 24], true],
		['one end within', [12, 22], [0, 0], true],
		['across a corner', [5, 23], [15, 18], true],
		['past a corner', [0, 23], [14, 18], false],
		['beside it', [0, 0], [9, 50], false],
		['below it', [10, 31], [40, 31], false],
		['along its rim', [0, 20], [50, 20], true],
		['in line with it and short of it', [0, 25], [9, 25], false],
		['a place within', [20, 25], [20, 25], true],
		['a place outside', [20, 35], [20, 35], false]
	])('%s', (_, [ax, ay], [bx, by], meets) => {
		expect(chordMeets(at(ax, ay), at(bx, by), BOX)).toBe(meets);
		expect(chordMeets(at(bx, by), at(ax, ay), BOX)).toBe(meets);
	});
});
