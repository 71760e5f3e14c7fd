import { describe, expect, it } from 'vitest';
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import { mm, px } from '#shared/units.ts';
import { at, type SheetPoint } from '#geometry/point.ts';
import { boundsOf, polyline, type Path } from '#geometry/path.ts';
import { cubic } from '#geometry/segment.ts';
import { placeLabels } from '#ui/drawing/labels.ts';
import { leafFor } from '#ui/drawing/leaf.ts';
import { screenPath } from '#ui/drawing/screen-path.ts';
import type { ScreenPoint, SheetView } from '#ui/drawing/view.ts';
import { viewOf } from '#ui/desk/sheet/steady.ts';
import { backBlock } from '../drafting/lesson-method.ts';
import { draftOf } from '../drafting/small-method.ts';

const ONE: SheetView = { left: mm(0), top: mm(0), scale: 1 };
const gap = (a: ScreenPoint, b: ScreenPoint): number => Math.hypot(a.left - b.left, a.top - b.top);
const sideOf = (points: readonly SheetPoint[], paths: readonly Path[] = []): string => {
	const [label] = placeLabels(
		points.map((point, i) => ({ name: `P${i}`, at: point })),
		paths,
		ONE
	);
	if (!label) throw new Error('no label');
	const [x, y] = [label.at.left - label.point.left, label.at.top - label.point.top];
	const across = Math.abs(x) < 1e-9 ? '' : x > 0 ? 'right' : 'left';
	const down = Math.abs(y) < 1e-9 ? '' : y > 0 ? 'below' : 'above';
	return [down, across].filter(Boolean).join(' ');
};

describe('names of points', () => {
	it('stand above and to the right where nothing is in the way', () => {
		expect(sideOf([at(100, 100)])).toBe('above right');
	});

	it('prefer the free side: away from a line that runs off that way', () => {
		const spot = at(100, 100);
		expect(sideOf([spot], [polyline(spot, at(200, 0))])).not.toMatch(/above/);
		expect(sideOf([spot], [polyline(at(100, 0), spot, at(200, 100))])).toBe('below left');
		expect(sideOf([spot], [polyline(at(100, 0), spot, at(0, 100))])).toBe('below right');
		expect(sideOf([spot], [polyline(at(100, 200), spot, at(0, 100))])).toBe('above right');
	});

	it('keep off a curve as they do off a line', () => {
		const spot = at(100, 100);
		expect(sideOf([spot], [[cubic(spot, at(120, 80), at(140, 60), at(200, 0))]])).not.toMatch(/above/);
	});

	it('keep off other points and their names', () => {
		expect(sideOf([at(100, 100), at(110, 90)])).toMatch(/left/);
		const twins = placeLabels(
			['P', 'Q'].map((name) => ({ name, at: at(100, 100) })),
			[],
			ONE
		);
		const [first, second] = twins;
		expect(first && second && gap(first.at, second.at)).toBeGreaterThan(15);
	});

	it('keep their order and their points', () => {
		const labels = placeLabels(
			[
				{ name: 'A', at: at(10, 20) },
				{ name: 'B', at: at(30, 50) }
			],
			[],
			{ left: mm(10), top: mm(10), scale: 2 }
		);
		expect(labels.map(({ name, point }) => [name, point])).toEqual([
			['A', { left: 0, top: 20 }],
			['B', { left: 40, top: 80 }]
		]);
	});

	it('none for no points', () => {
		expect(placeLabels([], [polyline(at(0, 0), at(9, 9))], ONE)).toEqual([]);
	});

	it('of every body’s back, at every size: real places, near their points, apart from each other', () => {
		for (const { id, body } of DEMO_BODIES) {
			const draft = draftOf(backBlock(), body);
			const points = Object.entries(draft.points).map(([name, place]) => ({ name, at: place }));
			const paths = Object.values(draft.lines).map(({ path }) => path);
			for (const width of [320, 700, 1400]) {
				const view = viewOf(boundsOf(paths), { width: px(width), height: px(width) });
				const labels = placeLabels(points, paths, view);
				expect(labels).toHaveLength(points.length);
				for (const { name, at: place, point, led } of labels) {
					expect(gap(place, point), `${id} ${name}`).toBeCloseTo(led ? 30 : 15, 9);
					for (const other of labels)
						if (width > 320 && other.name !== name)
							expect(gap(place, other.at), `${id}: ${name} and ${other.name} at ${width}`).toBeGreaterThan(7);
				}
			}
		}
	});

	it('where there is no room beside the point, stand further off, and a line leads to them', () => {
		const crowd = ['D1', 'D', 'X', 'D2', 'E'].map((name, i) => ({ name, at: at(100, 100 + 4 * i) }));
		const labels = placeLabels(crowd, [polyline(at(100, 0), at(100, 300))], ONE);
		expect(labels.some(({ led }) => led)).toBe(true);
		for (const { name, at: place, point, led } of labels) {
			expect(gap(place, point), name).toBeCloseTo(led ? 30 : 15, 9);
			for (const other of labels)
				if (other.name !== name) expect(gap(place, other.at), `${name}, ${other.name}`).toBeGreaterThan(12);
		}
		expect(placeLabels([{ name: 'A', at: at(0, 0) }], [], ONE)).toMatchObject([{ led: false }]);
	});

	it('a line of no length is in nobody’s way', () => {
		expect(sideOf([at(100, 100)], [polyline(at(100, 100), at(100, 100))])).toBe('above right');
	});
});

describe('a line on the screen', () => {
	it('is moved and scaled to the view, straight and curved pieces alike', () => {
		const view: SheetView = { left: mm(10), top: mm(20), scale: 2 };
		const path: Path = [
			...polyline(at(10, 20), at(15, 30)),
			cubic(at(15, 30), at(16, 31), at(17, 33), at(20.125, 40))
		];
		expect(screenPath(view, path)).toBe('M0.00 0.00L10.00 20.00C12.00 22.00 14.00 26.00 20.25 40.00');
	});
});

describe('a figure’s leaf', () => {
	const box = (width: number, height: number) => ({
		left: mm(0),
		top: mm(10),
		right: mm(width),
		bottom: mm(10 + height)
	});

	it('fills its room with a broad draft, with room for names at every edge', () => {
		const { size, view } = leafFor(box(500, 300), 578);
		expect(size).toEqual({ width: 578, height: 368 });
		expect(view).toEqual({ scale: 1, left: -44, top: -24 });
	});

	it('is as narrow as a tall draft needs, and not taller than a phone can show', () => {
		for (const room of [300, 330, 442]) {
			const { size, view } = leafFor(box(265, 630), room);
			expect(size.width).toBeLessThan(room);
			expect(size.height).toBeLessThanOrEqual(Math.ceil(room * 1.7));
			expect(size.height).toBeGreaterThan(room * 1.6);
			expect(size.width - 44 - 34).toBeCloseTo(265 * view.scale, -0.5);
		}
	});

	it('shows at least 8 cm, however little is drawn', () => {
		expect(leafFor(box(0, 0), 438).view.scale).toBeCloseTo((438 - 78) / 80, 9);
	});
});
