import { describe, expect, it } from 'vitest';
import { at } from '#geometry/point.ts';
import { mm, px } from '#shared/units.ts';
import { toScreen } from '#ui/drawing/view.ts';
import { endView, notchTicks } from '#ui/garments/seam-ink.ts';

const VIEW = { scale: 2, left: mm(0), top: mm(0) };

describe('the strokes of a notch', () => {
	it('run from the seam into the piece: one for a front', () => {
		const notch = { at: at(50, 30), inward: { dx: -1, dy: 0 }, style: 'single' as const };
		expect(notchTicks(VIEW, notch)).toBe('M100.0 60.0l-11.0 0.0');
	});

	it('are two for a back, a little apart along the seam', () => {
		const notch = { at: at(50, 30), inward: { dx: 1, dy: 0 }, style: 'double' as const };
		expect(notchTicks(VIEW, notch)).toBe('M100.0 57.5l11.0 0.0M100.0 62.5l11.0 0.0');
	});
});

describe("the picture of a seam's end", () => {
	it('has the end in its middle', () => {
		const view = endView({ at: at(123, -45) }, px(96));
		const { left, top } = toScreen(view, at(123, -45));
		expect(left).toBeCloseTo(48, 9);
		expect(top).toBeCloseTo(48, 9);
	});
});
