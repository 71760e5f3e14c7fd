import { describe, expect, it } from 'vitest';
import { mm, px } from '#shared/units.ts';
import { at, distance } from '#geometry/point.ts';
import type { Bounds } from '#geometry/path.ts';
import {
	fitted,
	panned,
	toScreen,
	toSheet,
	zoomed,
	type ScreenPoint,
	type SheetView
} from '#ui/drawing/view.ts';
import { expectPlace } from '../geometry/close.ts';
import { chances } from '../reference/random-bodies.ts';

const screen = (left: number, top: number): ScreenPoint => ({ left: px(left), top: px(top) });
const view = (left: number, top: number, scale: number): SheetView => ({
	left: mm(left),
	top: mm(top),
	scale
});
const bounds = (left: number, top: number, right: number, bottom: number): Bounds => ({
	left: mm(left),
	top: mm(top),
	right: mm(right),
	bottom: mm(bottom)
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

describe('a fit', () => {
	const size = (width: number, height: number) => ({ width: px(width), height: px(height) });

	it('200 by 100 mm with a tenth all round fills 480 px at 2 to the mm, in the middle', () => {
		expect(fitted(bounds(0, 0, 200, 100), size(480, 400), 0.1)).toEqual({ left: -20, top: -50, scale: 2 });
	});

	it('shows all of what it is asked to, on any screen', () => {
		const chance = chances(13);
		for (let i = 0; i < 500; i++) {
			const [left, top] = [(chance() - 0.3) * 300, (chance() - 0.3) * 300];
			const all = bounds(left, top, left + chance() * 900, top + chance() * 900);
			const on = size(320 + chance() * 1200, 180 + chance() * 900);
			const seen = fitted(all, on, chance() * 0.3);
			const [from, to] = [toScreen(seen, at(all.left, all.top)), toScreen(seen, at(all.right, all.bottom))];
			expect(from.left).toBeGreaterThan(-1e-6);
			expect(from.top).toBeGreaterThan(-1e-6);
			expect(to.left).toBeLessThan(on.width + 1e-6);
			expect(to.top).toBeLessThan(on.height + 1e-6);
			// In the middle, both ways.
			expect(from.left).toBeCloseTo(on.width - to.left, 6);
			expect(from.top).toBeCloseTo(on.height - to.top, 6);
		}
	});

	it('spends no more than it may beside the centre line, and still shows all that lies outward', () => {
		const chance = chances(14);
		let held = 0;
		for (let i = 0; i < 300; i++) {
			const all = bounds(0, 0, chance() * 300, chance() * 900);
			const on = size(320 + chance() * 1200, 180 + chance() * 900);
			const seen = fitted(all, on, 0.1, 64);
			const centre = toScreen(seen, at(0, 0)).left;
			expect(centre).toBeLessThan(64 + 1e-6);
			expect(centre).toBeGreaterThan(-1e-6);
			expect(toScreen(seen, at(all.right, 0)).left).toBeLessThan(on.width + 1e-6);
			if (Math.abs(centre - 64) < 1e-6) held += 1;
		}
		expect(held).toBeGreaterThan(30);
	});

	it('of one place, shows some 80 mm round it, so that the scale is not lost', () => {
		const seen = fitted(bounds(7, 9, 7, 9), size(400, 400), 0);
		expect(seen.scale).toBe(5);
		expect(toScreen(seen, at(7, 9))).toEqual({ left: 200, top: 200 });
	});
});
