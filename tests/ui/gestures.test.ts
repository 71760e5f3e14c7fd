import { describe, expect, it } from 'vitest';
import { mm, px } from '#shared/units.ts';
import { distance } from '#geometry/point.ts';
import { Gestures } from '#ui/desk/sheet/gestures.svelte.ts';
import { toSheet, type ScreenPoint, type SheetView } from '#ui/drawing/view.ts';
import { expectPlace } from '../geometry/close.ts';
import { line, point, toolAt } from './desk.ts';
import { freshStores } from './memory-store.ts';

freshStores();

/** Two pixels to the millimetre, the corner of the drawing at (-50, -30): A (0, 100) is seen at (100, 260). */
const VIEW: SheetView = { left: mm(-50), top: mm(-30), scale: 2 };
const screen = (left: number, top: number): ScreenPoint => ({ left: px(left), top: px(top) });
/** Where a place of the sheet is seen in VIEW. */
const seen = (x: number, y: number): ScreenPoint => screen((x + 50) * 2, (y + 30) * 2);
const by = (from: ScreenPoint, right: number, down: number): ScreenPoint =>
	screen(from.left + right, from.top + down);

const sheetAt = (step: string, snap = 1): Gestures => {
	const gestures = new Gestures(toolAt(step), () => mm(snap));
	gestures.view = VIEW;
	return gestures;
};
const placed = ({ tool }: Gestures) => tool.work.entry(tool.stepName).placement;

const tap = (gestures: Gestures, where: ScreenPoint, touch = false): void => {
	gestures.down(1, where, touch);
	gestures.up(1, where);
};
const drag = (gestures: Gestures, from: ScreenPoint, to: ScreenPoint, touch = false): void => {
	gestures.down(1, from, touch);
	gestures.move(1, screen((from.left + to.left) / 2, (from.top + to.top) / 2), touch);
	gestures.move(1, to, touch);
	gestures.up(1, to);
};

describe('a tap or a click', () => {
	it.each([true, false])('places, on the grid (touch: %s)', (touch) => {
		const gestures = sheetAt('A');
		tap(gestures, by(seen(3, 96), 0.9, -0.8), touch);
		expect(placed(gestures)).toEqual(point(3, 96));
	});

	it('settles on the snap that was chosen', () => {
		const gestures = sheetAt('A', 10);
		tap(gestures, seen(3, 96));
		expect(placed(gestures)).toEqual(point(0, 100));
	});

	it('with a hand that shakes by a few pixels is a tap still', () => {
		const gestures = sheetAt('A');
		gestures.down(1, seen(0, 90), true);
		gestures.move(1, by(seen(0, 90), 4, 4), true);
		gestures.up(1, by(seen(0, 90), 4, 4));
		expect(placed(gestures)).toEqual(point(2, 92));
		expect(gestures.view).toEqual(VIEW);
	});

	it('a second one moves the mark', () => {
		const gestures = sheetAt('A');
		tap(gestures, seen(0, 90));
		tap(gestures, seen(0, 100));
		expect(placed(gestures)).toEqual(point(0, 100));
		tap(gestures, by(seen(0, 100), 2, 0));
		expect(placed(gestures)).toEqual(point(1, 100));
	});

	it('places nothing where the step is locked', () => {
		const gestures = sheetAt('A');
		gestures.tool.take('slope');
		tap(gestures, seen(0, 0));
		expect(placed(gestures)).toBeUndefined();
		expect(gestures.tool.places).toEqual({});
	});
});

describe('a straight line', () => {
	it('two taps near named points join those points exactly', () => {
		const gestures = sheetAt('slope');
		tap(gestures, by(seen(0, 0), 11, 9));
		tap(gestures, by(seen(125, 50), -12, 8));
		expect(placed(gestures)).toEqual(line([0, 0], [125, 50]));
	});

	it('a tap far from any named point is on the grid', () => {
		const gestures = sheetAt('slope');
		tap(gestures, seen(40, 30));
		expect(gestures.tool.places).toEqual({ first: { x: 40, y: 30 } });
	});

	it('of two points near, the nearer', () => {
		const gestures = sheetAt('slope');
		gestures.view = { left: mm(0), top: mm(0), scale: 0.3 };
		// P (125, 50) and Q (125, 100) are 15 px apart here.
		tap(gestures, screen(125 * 0.3, 50 * 0.3 + 6));
		expect(gestures.tool.places['first']).toEqual({ x: 125, y: 50 });
		gestures.tool.cancel();
		tap(gestures, screen(125 * 0.3, 50 * 0.3 + 9));
		expect(gestures.tool.places['first']).toEqual({ x: 125, y: 100 });
	});
});

describe('dragging a mark', () => {
	it('moves it, and places it once it is let go', () => {
		const gestures = sheetAt('A');
		tap(gestures, seen(0, 90));
		gestures.down(1, seen(0, 90), false);
		gestures.move(1, seen(10, 95), false);
		expect(gestures.tool.places['point']).toEqual({ x: 10, y: 95 });
		expect(placed(gestures)).toEqual(point(0, 90));
		gestures.move(1, seen(4, 99), false);
		gestures.up(1, seen(4, 99));
		expect(placed(gestures)).toEqual(point(4, 99));
		expect(gestures.view).toEqual(VIEW);
	});

	it('taken hold of beside its middle, it is held there: it does not jump', () => {
		const gestures = sheetAt('A');
		tap(gestures, seen(0, 90));
		gestures.down(1, by(seen(0, 90), 10, -4), false);
		gestures.move(1, by(seen(0, 90), 10, 4), false);
		expectPlace(gestures.tool.places['point'], 0, 94);
	});

	it('by a finger, it is lifted only as far as the finger has moved, so that it does not jump', () => {
		const gestures = sheetAt('A');
		tap(gestures, seen(0, 90), true);
		gestures.down(1, seen(0, 90), true);
		gestures.move(1, by(seen(0, 90), 20, 0), true);
		expectPlace(gestures.tool.places['point'], 10, 80);
	});

	it('is as sure when it is a single quick move', () => {
		const gestures = sheetAt('A');
		tap(gestures, seen(0, 90));
		gestures.down(1, seen(0, 90), false);
		gestures.move(1, seen(40, 45), false);
		gestures.up(1, seen(40, 45));
		expect(placed(gestures)).toEqual(point(40, 45));
	});

	it('is one thing to undo, however far it went', () => {
		const gestures = sheetAt('A');
		tap(gestures, seen(0, 90));
		drag(gestures, seen(0, 90), seen(40, 40));
		gestures.tool.work.undo();
		expect(placed(gestures)).toEqual(point(0, 90));
	});

	it('by a finger, keeps it in sight above the finger: 44 px, 22 mm here', () => {
		const gestures = sheetAt('A');
		tap(gestures, seen(0, 90), true);
		drag(gestures, seen(0, 90), seen(10, 120), true);
		expect(placed(gestures)).toEqual(point(10, 98));
	});

	it('broken off, leaves it where it was', () => {
		const gestures = sheetAt('A');
		tap(gestures, seen(0, 90));
		gestures.down(1, seen(0, 90), false);
		gestures.move(1, seen(40, 40), false);
		gestures.end(1);
		expect(placed(gestures)).toEqual(point(0, 90));
		expect(gestures.tool.places['point']).toEqual({ x: 0, y: 90 });
		gestures.move(1, seen(60, 60), false);
		expect(gestures.tool.places['point']).toEqual({ x: 0, y: 90 });
	});

	it.each([
		[false, 13, true],
		[false, 15, false],
		[true, 23, true],
		[true, 25, false]
	])('touch %s: a press %d px away takes hold of it: %s', (touch, away, held) => {
		const gestures = sheetAt('A');
		tap(gestures, seen(0, 90));
		drag(gestures, by(seen(0, 90), -away, 0), seen(0, 60), touch);
		const moved = JSON.stringify(placed(gestures)) !== JSON.stringify(point(0, 90));
		expect(moved).toBe(held);
		expect(gestures.view.left !== VIEW.left).toBe(!held);
	});
});

describe('handles of a curve', () => {
	/** They begin at (41.7, 66.7) and (83.3, 33.3). */
	const FIRST = seen(125 / 3, 200 / 3);
	const SECOND = seen(250 / 3, 100 / 3);

	it('a tap within reach of one that is not chosen only chooses it', () => {
		const gestures = sheetAt('bend');
		expect(gestures.tool.target?.id).toBe('0:leaving');
		tap(gestures, by(SECOND, 5, 5));
		expect(gestures.tool.target?.id).toBe('0:arriving');
		expect(placed(gestures)).toBeUndefined();
		tap(gestures, by(FIRST, -5, 5));
		expect(gestures.tool.target?.id).toBe('0:leaving');
		expect(placed(gestures)).toBeUndefined();
	});

	it('a tap elsewhere moves the chosen one there', () => {
		const gestures = sheetAt('bend');
		tap(gestures, SECOND);
		tap(gestures, seen(125, 55));
		expectPlace(gestures.tool.places['0:arriving'], 125, 55);
		expectPlace(gestures.tool.places['0:leaving'], 125 / 3, 200 / 3);
	});

	it('a tap beside the chosen one moves it there', () => {
		const gestures = sheetAt('bend');
		tap(gestures, by(FIRST, 8, 0));
		expect(placed(gestures)).toBeDefined();
		expectPlace(gestures.tool.places['0:leaving'], 46, 67);
	});

	it('a drag takes the nearest, chosen or not', () => {
		const gestures = sheetAt('bend');
		drag(gestures, by(SECOND, 4, 4), seen(120, 60));
		expect(gestures.tool.target?.id).toBe('0:arriving');
		// Held 2 mm beside its middle, and still so when it is let go.
		expectPlace(gestures.tool.places['0:arriving'], 118, 58);
	});
});

describe('dragging the paper', () => {
	it('pans, and places nothing', () => {
		const gestures = sheetAt('A');
		drag(gestures, seen(60, 60), by(seen(60, 60), 40, -20));
		expect(placed(gestures)).toBeUndefined();
		expect(gestures.view).toEqual({ left: -70, top: -20, scale: 2 });
	});

	it('keeps the place under the hand, however quick the drag: one move is enough', () => {
		const gestures = sheetAt('A');
		gestures.down(1, seen(60, 60), true);
		gestures.move(1, screen(37, 41), true);
		gestures.up(1, screen(37, 41));
		expectPlace(toSheet(gestures.view, screen(37, 41)), 60, 60);
	});

	it('with a mark placed elsewhere, leaves the mark', () => {
		const gestures = sheetAt('A');
		tap(gestures, seen(0, 90));
		drag(gestures, seen(60, 60), seen(90, 90));
		expect(placed(gestures)).toEqual(point(0, 90));
	});
});

describe('two fingers', () => {
	const pinch = (gestures: Gestures, to: readonly [ScreenPoint, ScreenPoint]): void => {
		gestures.down(1, screen(100, 200), true);
		gestures.down(2, screen(200, 200), true);
		gestures.move(1, to[0], true);
		gestures.move(2, to[1], true);
	};

	it('spread to twice as far zoom twice as near, about their middle', () => {
		const gestures = sheetAt('A');
		const middle = toSheet(VIEW, screen(150, 200));
		pinch(gestures, [screen(50, 200), screen(250, 200)]);
		expect(gestures.view.scale).toBeCloseTo(4, 9);
		expect(distance(toSheet(gestures.view, screen(150, 200)), middle)).toBeLessThan(1e-9);
	});

	it('keep the places under them, as they move and spread', () => {
		const gestures = sheetAt('A');
		const [first, second] = [toSheet(VIEW, screen(100, 200)), toSheet(VIEW, screen(200, 200))];
		pinch(gestures, [screen(130, 240), screen(380, 240)]);
		expect(distance(toSheet(gestures.view, screen(130, 240)), first)).toBeLessThan(1e-9);
		expect(distance(toSheet(gestures.view, screen(380, 240)), second)).toBeLessThan(1e-9);
	});

	it('place nothing, neither as they come nor as they go', () => {
		const gestures = sheetAt('A');
		pinch(gestures, [screen(90, 200), screen(210, 200)]);
		gestures.up(1, screen(90, 200));
		gestures.up(2, screen(210, 200));
		expect(placed(gestures)).toBeUndefined();
	});

	it('the one that stays, after the other is lifted, neither pans nor places', () => {
		const gestures = sheetAt('A');
		pinch(gestures, [screen(90, 200), screen(210, 200)]);
		gestures.up(1, screen(90, 200));
		const { view } = gestures;
		gestures.move(2, screen(300, 300), true);
		gestures.up(2, screen(300, 300));
		expect(gestures.view).toEqual(view);
		expect(placed(gestures)).toBeUndefined();
	});

	it('a second finger breaks a drag off', () => {
		const gestures = sheetAt('A');
		tap(gestures, seen(0, 90), true);
		gestures.down(1, seen(0, 90), true);
		gestures.move(1, seen(30, 90), true);
		gestures.down(2, seen(80, 90), true);
		expect(gestures.tool.places['point']).toEqual({ x: 0, y: 90 });
		gestures.up(2, seen(80, 90));
		gestures.up(1, seen(30, 90));
		expect(placed(gestures)).toEqual(point(0, 90));
	});

	it('a third finger changes nothing', () => {
		const gestures = sheetAt('A');
		pinch(gestures, [screen(90, 200), screen(210, 200)]);
		gestures.down(3, screen(150, 300), true);
		gestures.up(3, screen(150, 300));
		expect(placed(gestures)).toBeUndefined();
		gestures.up(2, screen(210, 200));
		gestures.up(1, screen(90, 200));
		expect(placed(gestures)).toBeUndefined();
	});

	it('after all are lifted a tap places again', () => {
		const gestures = sheetAt('A');
		pinch(gestures, [screen(100, 200), screen(200, 200)]);
		gestures.up(1, screen(100, 200));
		gestures.up(2, screen(200, 200));
		tap(gestures, seen(0, 100), true);
		expect(placed(gestures)).toEqual(point(0, 100));
	});
});

describe('a mouse that hovers', () => {
	it('shows where it would place, on the grid', () => {
		const gestures = sheetAt('A');
		gestures.move(1, by(seen(3, 96), 0.9, 0), false);
		expectPlace(gestures.hover, 3, 96);
		expect(placed(gestures)).toBeUndefined();
		gestures.leave();
		expect(gestures.hover).toBeUndefined();
	});

	it('shows the named point on which an end would settle', () => {
		const gestures = sheetAt('slope');
		gestures.move(1, by(seen(125, 50), 12, 3), false);
		expect(gestures.hover).toEqual({ x: 125, y: 50 });
	});

	it('fingers do not hover', () => {
		const gestures = sheetAt('A');
		gestures.move(1, seen(3, 96), true);
		expect(gestures.hover).toBeUndefined();
	});

	it('hovers no longer once it pans', () => {
		const gestures = sheetAt('A');
		gestures.move(1, seen(60, 60), false);
		drag(gestures, seen(60, 60), seen(90, 90));
		expect(gestures.hover).toBeUndefined();
	});
});

describe('a pointer let go that was not pressed here', () => {
	it('places nothing', () => {
		const gestures = sheetAt('A');
		gestures.up(7, seen(0, 100));
		expect(placed(gestures)).toBeUndefined();
	});

	it('does not end what another one does', () => {
		const gestures = sheetAt('A');
		gestures.down(1, seen(0, 100), true);
		gestures.up(7, seen(50, 50));
		expect(placed(gestures)).toBeUndefined();
		gestures.up(1, seen(0, 100));
		expect(placed(gestures)).toEqual(point(0, 100));
	});
});

describe('the wheel', () => {
	it('zooms about the pointer', () => {
		const gestures = sheetAt('A');
		const under = toSheet(VIEW, screen(300, 120));
		gestures.zoom(1.25, screen(300, 120));
		expect(gestures.view.scale).toBe(2.5);
		expect(distance(toSheet(gestures.view, screen(300, 120)), under)).toBeLessThan(1e-9);
	});
});

describe('a drag from a named point', () => {
	it.each([true, false])(
		'rules the line that is asked for, from there to the point that it ends at (touch: %s)',
		(touch) => {
			const gestures = sheetAt('slope');
			// Whoever drags with a finger has the mark above it.
			drag(gestures, by(seen(0, 0), 5, 4), by(seen(125, 50), 3, touch ? 44 : -4), touch);
			expect(placed(gestures)).toEqual(line([0, 0], [125, 50]));
			expect(gestures.view).toEqual(VIEW);
			expect(gestures.tool.drawn).toBe(true);
		}
	);

	it('moves the paper where nothing lies near', () => {
		const gestures = sheetAt('slope');
		drag(gestures, seen(60, -20), seen(80, 0));
		expect(placed(gestures)).toBeUndefined();
		expect(gestures.view).not.toEqual(VIEW);
	});

	it('moves the paper where no line is asked for', () => {
		const points = sheetAt('A');
		drag(points, seen(0, 0), seen(40, 0));
		expect(placed(points)).toBeUndefined();
		expect(points.view.left).not.toBe(VIEW.left);
	});

	it('moves the paper where a line lies already', () => {
		const ruled = sheetAt('slope');
		drag(ruled, seen(0, 0), seen(125, 50));
		drag(ruled, seen(125, 0), seen(165, 0));
		expect(placed(ruled)).toEqual(line([0, 0], [125, 50]));
		expect(ruled.view.left).not.toBe(VIEW.left);
	});

	it('begins anew once the line was found wrong, though an end of it stands there', () => {
		const gestures = sheetAt('slope');
		drag(gestures, seen(125, 100), seen(125, 50));
		gestures.tool.work.check('slope');
		drag(gestures, seen(125, 50), by(seen(0, 0), 4, 4));
		expect(placed(gestures)).toEqual(line([125, 50], [0, 0]));
	});

	it('moves an end that stands beside every named point, after a verdict too', () => {
		const gestures = sheetAt('slope');
		drag(gestures, seen(0, 0), seen(60, 25));
		gestures.tool.work.check('slope');
		drag(gestures, seen(60, 25), seen(125, 50));
		expect(placed(gestures)).toEqual(line([0, 0], [125, 50]));
	});

	it('that leads to another point than the right one is no right line, and waits to be checked', () => {
		const gestures = sheetAt('slope');
		drag(gestures, seen(0, 0), seen(125, 100));
		expect(placed(gestures)).toEqual(line([0, 0], [125, 100]));
		expect(gestures.tool.drawn).toBe(false);
	});
});
