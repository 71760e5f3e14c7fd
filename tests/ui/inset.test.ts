import { describe, expect, it } from 'vitest';
import { mm, px } from '#shared/units.ts';
import { at } from '#geometry/point.ts';
import { toScreen, type ScreenPoint } from '#ui/drawing/view.ts';
import { insetCorner, insetSide, insetView } from '#ui/desk/sheet/inset.ts';

const size = { width: px(350), height: px(240) };
const side = insetSide(size);

describe('an inset of the sheet', () => {
	it('shows all of what it is about, larger than the whole draft does', () => {
		const bounds = { left: mm(-30), top: mm(-20), right: mm(110), bottom: mm(60) };
		const view = insetView(bounds, side);
		for (const corner of [at(bounds.left, bounds.top), at(bounds.right, bounds.bottom)]) {
			const { left, top } = toScreen(view, corner);
			expect(left).toBeGreaterThanOrEqual(17);
			expect(left).toBeLessThanOrEqual(side - 17);
			expect(top).toBeGreaterThanOrEqual(17);
			expect(top).toBeLessThanOrEqual(side - 17);
		}
	});

	it('lies in the corner that hides the least, and of those furthest from the first place', () => {
		const place = (left: number, top: number): ScreenPoint => ({ left: px(left), top: px(top) });
		const { left, top } = insetCorner(size, side, [place(60, 60), place(300, 200)]);
		expect([left > 175, top < 120], 'the upper right: the lower right has a mark').toEqual([true, true]);
		const far = insetCorner(size, side, [place(60, 60)]);
		expect([far.left > 175, far.top > 100], 'the lower right').toEqual([true, true]);
	});

	it('is no wider than the sheet lets it be', () => {
		for (const width of [160, 350, 700, 1400]) {
			const sheet = { width: px(width), height: px(200) };
			expect(insetSide(sheet)).toBeLessThanOrEqual(Math.max(96, width / 2));
		}
	});
});
