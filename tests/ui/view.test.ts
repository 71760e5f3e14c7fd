import { describe, expect, it } from 'vitest';
import { mm, px } from '#shared/units.ts';
import { at, distance } from '#geometry/point.ts';
import { panned, toScreen, toSheet, zoomed, type ScreenPoint, type SheetView } from '#ui/drawing/view.ts';
import { expectPlace } from '../geometry/close.ts';
import { chances } from '../reference/random-bodies.ts';

const screen = (left: number, top: number): ScreenPoint => ({ left: px(left), top: px(top) });
const view = (left: number, top: number, scale: number): SheetView => ({
	left: mm(left),
	top: mm(top),
	scale
});
describe('screen and sheet', () => {
	it('with 4 pixels to the millimetre and the corner at (10, 20)', () => {
		expect(toScreen(view(10, 20, 4), at(15, 22))).toEqual({ left: 20, top: 8 });
		expectPlace(toSheet(view(10, 20, 4), screen(20, 8)), 15, 22);
	});

	it('there and back is where it was, for any view', () => {
		const chance = chances(11);
		for (let i = 0; i < 500; i++) {
			const any = view((chance() - 0.5) * 900, (chance() - 0.5) * 900, 0.15 + chance() * 29);
			const place = at((chance() - 0.5) * 900, (chance() - 0.5) * 900);
			expect(distance(toSheet(any, toScreen(any, place)), place)).toBeLessThan(1e-9);
		}
	});
});

describe('a drag of the paper', () => {
	it('moves the paper as far as the hand: 40 px right at 4 px to the mm is 10 mm', () => {
		const before = view(10, 20, 4);
		expect(panned(before, 40, -8)).toEqual({ left: 0, top: 22, scale: 4 });
		const place = at(33, 44);
		const [was, is] = [toScreen(before, place), toScreen(panned(before, 40, -8), place)];
		expect([is.left - was.left, is.top - was.top]).toEqual([40, -8]);
	});
});

describe('zoom', () => {
	it('twice as near about a place keeps that place', () => {
		expect(zoomed(view(10, 20, 4), 2, screen(40, 80))).toEqual({ left: 15, top: 30, scale: 8 });
	});

	it('keeps the place under the pointer, at the ends of the zoom too', () => {
		const chance = chances(12);
		let ends = 0;
		for (let i = 0; i < 500; i++) {
			const before = view((chance() - 0.5) * 900, (chance() - 0.5) * 900, 0.15 + chance() * 29);
			const pointer = screen(chance() * 1400, chance() * 900);
			const after = zoomed(before, Math.exp((chance() - 0.5) * 8), pointer);
			expect(distance(toSheet(after, pointer), toSheet(before, pointer))).toBeLessThan(1e-9);
			expect(after.scale).toBeGreaterThanOrEqual(0.15);
			expect(after.scale).toBeLessThanOrEqual(30);
			if (after.scale === 0.15 || after.scale === 30) ends += 1;
		}
		expect(ends).toBeGreaterThan(20);
	});

	it('in and out again is where it began', () => {
		const before = view(10, 20, 4);
		const after = zoomed(zoomed(before, 1.25, screen(70, 90)), 0.8, screen(70, 90));
		expect(after.scale).toBeCloseTo(4, 12);
		expect(after.left).toBeCloseTo(10, 12);
		expect(after.top).toBeCloseTo(20, 12);
	});
});
