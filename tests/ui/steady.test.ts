import { beforeEach, describe, expect, it, vi } from 'vitest';
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import { mm, px } from '#shared/units.ts';
import { evaluate, type Draft } from '#drafting/evaluate.ts';
import { isGiven } from '#drafting/steps/kinds.ts';
import { at, type SheetPoint } from '#geometry/point.ts';
import { Camera } from '#ui/desk/sheet/camera.svelte.ts';
import { Gestures } from '#ui/desk/sheet/gestures.svelte.ts';
import { areSeen, steadied, viewOf, wholeOf } from '#ui/desk/sheet/steady.ts';
import { arrowsOf, rightPlace, toBeSeen } from '#ui/desk/sheet/right-place.ts';
import { toScreen, type ScreenSize } from '#ui/drawing/view.ts';
import { lessonMethod } from '../drafting/lesson-method.ts';
import { lessonMethods } from '../lessons/lesson-files.ts';
import { line, point, toolAt } from './desk.ts';
import { freshStores } from './memory-store.ts';

freshStores();

const size = (width: number, height: number): ScreenSize => ({ width: px(width), height: px(height) });
/** The sheet in a window of 1440 x 900, of 1024 x 768, of 360 x 740, and of 1440 x 900 at 200 %. */
const SHEETS = [size(528, 740), size(353, 608), size(348, 254), size(457, 299)];

/** Every method of the course, worked for the first of the demo bodies that it can be drafted for. */
const DRAFTS = [...lessonMethods().values()].map((method) => {
	const draft = DEMO_BODIES.flatMap(({ body }): readonly Draft[] => {
		const evaluation = evaluate(method, body);
		return evaluation.kind === 'drafted' ? [evaluation.draft] : [];
	})[0];
	if (!draft) throw new Error(`no demo body can be drafted by ${method.id}`);
	return { method, draft };
});

/** Where a mark lies after a slip: beside its place, twice as far, the wrong way, crosswise, in inches, ten times as far. */
const SLIPS: readonly (readonly [string, (place: SheetPoint) => SheetPoint])[] = [
	['beside', ({ x, y }) => at(x + 9, y - 4)],
	['twice', ({ x, y }) => at(2 * x, 2 * y)],
	['the wrong way', ({ x, y }) => at(-x, -y)],
	['crosswise', ({ x, y }) => at(y, x)],
	['inches', ({ x, y }) => at(2.54 * x, 2.54 * y)],
	['ten times', ({ x, y }) => at(Math.min(5000, 10 * x), Math.min(5000, 10 * y))]
];

/** The places of a step: a point's, or all that tell the course of a line. */
const placesOf = ({ points, lines }: Draft, name: string): readonly SheetPoint[] => {
	const [place, path] = [points[name], lines[name]?.path];
	if (place) return [place];
	return (path ?? []).flatMap((piece) =>
		piece.kind === 'cubic' ? [piece.from, piece.leaving, piece.arriving, piece.to] : [piece.from, piece.to]
	);
};

describe('the view of a draft', () => {
	it.each(DRAFTS)('$method.id: all of it is seen, in the middle of the sheet', ({ draft }) => {
		for (const sheet of SHEETS) {
			const view = viewOf(wholeOf(draft), sheet);
			for (const name of [...Object.keys(draft.points), ...Object.keys(draft.lines)])
				expect(areSeen(placesOf({ ...draft, lines: {} }, name), view, sheet), name).toBe(true);
		}
	});

	it.each(DRAFTS)(
		'$method.id: after any slip both the mark and its place are seen, in every window',
		({ method, draft }) => {
			let checked = 0;
			const whole = wholeOf(draft);
			for (const sheet of SHEETS) {
				for (const step of method.steps.filter((each) => !isGiven(each))) {
					const right = placesOf(draft, step.name);
					for (const [slip, put] of SLIPS) {
						const must = [...right, ...right.map(put)];
						const after = steadied(whole, sheet, must);
						expect(areSeen(must, after, sheet), `${step.name}, ${slip}`).toBe(true);
						checked += must.length;
					}
				}
			}
			expect(checked).toBeGreaterThan(0);
		}
	);

	it('does not move for a mark that is seen already', () => {
		for (const { method, draft } of DRAFTS) {
			const [sheet, whole] = [size(528, 740), wholeOf(draft)];
			const view = viewOf(whole, sheet);
			for (const { name } of method.steps.filter((each) => draft.points[each.name]))
				expect(steadied(whole, sheet, placesOf(draft, name)), name).toEqual(view);
		}
	});

	it('a tall draft stands in the middle of a wide sheet', () => {
		const [sheet, whole] = [size(1000, 400), { left: 0, top: 0, right: 300, bottom: 650 }];
		const view = viewOf(whole as never, sheet);
		const [left, right] = [toScreen(view, at(0, 0)).left, toScreen(view, at(300, 0)).left];
		// 46 px are the ruler's side, 26 the other's.
		expect(left - 46).toBeCloseTo(1000 - 26 - right, 6);
	});
});

describe('what a verdict shows', () => {
	it('nothing of the right place before it; then mark and place, with an arrow between them', () => {
		const tool = toolAt('A');
		tool.put('point', at(0, 60));
		expect(rightPlace(tool)).toBeUndefined();
		expect(toBeSeen(tool)).toEqual([at(0, 60)]);
		expect(arrowsOf(tool)).toEqual([]);
		tool.work.check('A');
		expect(toBeSeen(tool)).toEqual([at(0, 60), at(0, 100)]);
		expect(arrowsOf(tool)).toEqual([{ from: at(0, 60), to: at(0, 100) }]);
	});

	it('the place with the last rung of help, before anything is put down', () => {
		const tool = toolAt('A');
		for (let i = 0; i < 3; i++) tool.work.help('A');
		expect(rightPlace(tool)?.point).toEqual(at(0, 100));
	});

	it('of a line an arrow from each end, whichever way it was ruled', () => {
		const tool = toolAt('slope');
		tool.work.place('slope', line([125, 50], [0, 30]));
		tool.work.check('slope');
		expect(arrowsOf(tool)).toContainEqual({ from: at(0, 30), to: at(0, 0) });
	});

	it('none where it is right', () => {
		const tool = toolAt('A');
		tool.work.place('A', point(0, 100));
		tool.work.check('A');
		expect(arrowsOf(tool)).toEqual([]);
	});
});

describe('a step that is looked at from nearer', () => {
	beforeEach(() => {
		vi.stubGlobal('cancelAnimationFrame', () => undefined);
	});

	const back = lessonMethod('40-back-levels');
	const scaleOf = (tool: ReturnType<typeof toolAt>, sheet: ScreenSize, closer: boolean): number => {
		const gestures = new Gestures(tool, () => mm(1));
		const camera = new Camera(tool, gestures, () => true);
		Object.assign(camera, { size: sheet, closer });
		camera.home();
		return gestures.view.scale;
	};

	it('is seen so where it is small', () => {
		const tool = toolAt('G1', back);
		for (const sheet of SHEETS)
			expect(scaleOf(tool, sheet, true)).toBeGreaterThan(scaleOf(tool, sheet, false));
	});

	it.each(['A', 'H', 'U', 'G1'])('is never seen from further away, wherever the mark of %s lies', (name) => {
		const tool = toolAt(name, back);
		const place = tool.work.draft?.points[name] ?? at(NaN, NaN);
		for (const [slip, put] of SLIPS) {
			const { x, y } = put(place);
			tool.work.place(name, point(x, y));
			tool.work.check(name);
			for (const sheet of SHEETS)
				expect(scaleOf(tool, sheet, true), slip).toBeGreaterThanOrEqual(scaleOf(tool, sheet, false));
		}
	});
});
