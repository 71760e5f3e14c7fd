import { describe, expect, it } from 'vitest';
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import { mm, px } from '#shared/units.ts';
import { at, distance, type SheetPoint } from '#geometry/point.ts';
import { enclosedArea } from '#geometry/area.ts';
import { stepNamed } from '#drafting/method.ts';
import { stepAnswer } from '#drafting/steps/kinds.ts';
import type { OnItsWay } from '#drafting/steps/step-rules.ts';
import { movedAway, nameAtRest } from '#drafting/moved.ts';
import { inkOf } from '#ui/drawing/ink-of.ts';
import { placeLabels } from '#ui/drawing/labels.ts';
import { Gestures } from '#ui/desk/sheet/gestures.svelte.ts';
import { panelOf, type Panel } from '#ui/desk/sheet/panel.ts';
import type { Tool } from '#ui/desk/tool.svelte.ts';
import { toScreen, type SheetView } from '#ui/drawing/view.ts';
import type { Work } from '#ui/desk/work.svelte.ts';
import { lessonMethod } from '../drafting/lesson-method.ts';
import { draftOf } from '../drafting/small-method.ts';
import { expectPlace } from '../geometry/close.ts';
import { arrive, point, takeUp, toolAt } from './desk.ts';
import { freshStores } from './memory-store.ts';

freshStores();

const FRONT = lessonMethod('62-dress-front-top');
const BACK = lessonMethod('68-dress-back-waist');
/** The demo body that learners begin with. */
const HERON = DEMO_BODIES.find(({ id }) => id === 'heron')?.body;
const DRAFT = draftOf(FRONT, HERON);

const pointIn = (name: string, points: Readonly<Record<string, SheetPoint>> = DRAFT.points): SheetPoint => {
	const place = points[name];
	if (!place) throw new Error(`there is no ${name}`);
	return place;
};
const movedPoint = ({ places }: Tool): SheetPoint => pointIn('point', places);
const placedAt = (work: Work, name: string): SheetPoint => {
	const { placement } = work.entry(name);
	if (placement?.kind !== 'point') throw new Error(`${name} is not placed`);
	return at(placement.at[0], placement.at[1]);
};

describe('a turn', () => {
	it('waits for all that it moves, and has it drafted for who begins here', () => {
		const work = takeUp(FRONT);
		expect(work.blockers('G3')).toEqual(expect.arrayContaining(['G2', 'U1', 'F']));
		work.draftBefore('G3');
		expect(work.state('G3')).toBe('open');
		expect(Object.keys(work.inked.lines)).toEqual(expect.arrayContaining(['cutOut', 'waistOut', 'sideFoot']));
	});

	it('its point stands where it begins, unplaced, and goes on along its circle', () => {
		const tool = toolAt('G3', FRONT);
		const [pin, start] = [pointIn('T'), pointIn('G2')];
		expectPlace(movedPoint(tool), start.x, start.y);
		expect(tool.work.entry('G3').placement).toBeUndefined();
		tool.goOn(mm(-3));
		tool.goOn(mm(-1));
		expect(distance(movedPoint(tool), pin)).toBeCloseTo(distance(start, pin), 9);
		// Four millimetres of the circle, told in degrees of it.
		const degrees = ((4 / distance(start, pin)) * 180) / Math.PI;
		expect(tool.spoken).toContain(`G3: turned ${degrees.toFixed(1)}° anticlockwise; `);
		expect(tool.work.state('G3')).toBe('placed');
	});

	it('typed anywhere it stays where it was typed; a key takes it back to its circle', () => {
		const tool = toolAt('G3', FRONT);
		const typed = { form: 'coordinates', across: '15,5', down: '12,9', unit: 'cm' } as const;
		tool.put('point', at(155, 129), typed);
		expect(tool.work.entry('G3').placement).toEqual({ kind: 'point', at: [155, 129], typed });
		tool.goOn(mm(1));
		const pin = pointIn('T');
		expect(distance(movedPoint(tool), pin)).toBeCloseTo(distance(pointIn('G2'), pin), 9);
	});

	it('moves nothing once it is right', () => {
		const tool = toolAt('E3', FRONT);
		tool.put('point', pointIn('E3'));
		expect(tool.work.check('E3').answer).toBe('right');
		tool.goOn(mm(5));
		expectPlace(placedAt(tool.work, 'E3'), pointIn('E3').x, pointIn('E3').y);
	});
});

describe('a turn by hand', () => {
	/** Two pixels to the millimetre. */
	const VIEW: SheetView = { left: mm(-20), top: mm(-20), scale: 2 };
	const handAt = (step: string): Gestures => {
		const gestures = new Gestures(toolAt(step, FRONT), () => mm(10));
		gestures.view = VIEW;
		return gestures;
	};
	const pull = (
		gestures: Gestures,
		from: SheetPoint,
		to: SheetPoint,
		onPanel: boolean,
		touch = false
	): void => {
		gestures.down(1, toScreen(VIEW, from), touch, onPanel);
		gestures.move(1, toScreen(VIEW, to), touch);
		gestures.up(1, toScreen(VIEW, to));
	};
	/** The place turned about T by so many degrees, clockwise. */
	const turned = (place: SheetPoint, degrees: number): SheetPoint => {
		const [pin, angle] = [pointIn('T'), (degrees * Math.PI) / 180];
		const [x, y] = [place.x - pin.x, place.y - pin.y];
		return at(
			pin.x + x * Math.cos(angle) - y * Math.sin(angle),
			pin.y + x * Math.sin(angle) + y * Math.cos(angle)
		);
	};

	it.each([true, false])(
		'the panel, taken anywhere, turns by as much as the hand does (touch: %s)',
		(touch) => {
			const gestures = handAt('E3');
			const grip = at(180, 400);
			pull(gestures, grip, turned(grip, -6), true, touch);
			const wanted = turned(pointIn('E2'), -6);
			expect(distance(placedAt(gestures.tool.work, 'E3'), wanted)).toBeLessThan(0.06);
			expect(distance(placedAt(gestures.tool.work, 'E3'), pointIn('T'))).toBeCloseTo(
				distance(pointIn('E2'), pointIn('T')),
				9
			);
			expect(gestures.view).toEqual(VIEW);
		}
	);

	it('its handle is taken hold of as any mark is; the grid does not hold it, and neither does the goal', () => {
		const gestures = handAt('E3');
		pull(gestures, pointIn('E2'), turned(pointIn('E3'), 0.5), false);
		const placed = placedAt(gestures.tool.work, 'E3');
		expect(distance(placed, turned(pointIn('E3'), 0.5))).toBeLessThan(0.06);
	});

	it('a tap on the panel moves nothing; one beside it turns the panel that way', () => {
		const gestures = handAt('E3');
		pull(gestures, at(180, 400), at(180, 400), true);
		expect(gestures.tool.work.entry('E3').placement).toBeUndefined();
		const there = turned(at(250, 310), -20);
		pull(gestures, there, there, false);
		const placed = placedAt(gestures.tool.work, 'E3');
		const way = (place: SheetPoint): number => Math.atan2(place.y - pointIn('T').y, place.x - pointIn('T').x);
		expect(way(placed)).toBeCloseTo(way(there), 3);
	});

	it('a hand that hovers places nothing to be seen', () => {
		const gestures = handAt('E3');
		gestures.move(1, toScreen(VIEW, at(100, 100)), false);
		expect(gestures.hover).toBeUndefined();
	});
});

describe('what a turn moves', () => {
	const wayIn = (name: string): OnItsWay => {
		const answer = stepAnswer(stepNamed(FRONT, name));
		if (answer.put !== 'way') throw new Error(`${name} has no way`);
		return answer;
	};
	const panel = (name: 'G3' | 'E3'): Panel => {
		const found = panelOf(FRONT, DRAFT, name, wayIn(name));
		if (!found) throw new Error(`${name} moves nothing`);
		return found;
	};
	const area = ({ faces }: Panel): number => faces.reduce((sum, face) => sum + enclosedArea(face), 0);
	const triangle = (...names: readonly [string, string, string]): number => {
		const [a, b, c] = names.map((name) => pointIn(name));
		return a && b && c ? Math.abs((b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x)) / 2 : NaN;
	};

	it('is covered whole, and the mouth of its own dart left open', () => {
		expect(area(panel('E3'))).toBeCloseTo(triangle('T', 'E2', 'V2') + triangle('T', 'V2', 'F2'), 6);
		expect(panel('E3').faces.every((face) => enclosedArea(face) > 0)).toBe(true);
		// Above: the armhole, and the side as far as the dart. Below: the side after the dart, and the waist.
		expect(panel('G3').faces).toHaveLength(4);
	});

	it('opens where the cut is, counted from where the cut was first made', () => {
		for (const name of ['G3', 'E3'] as const) {
			const { opening } = panel(name);
			expect(opening?.name).toBe('F');
			expect(opening?.stays).toEqual(pointIn('F'));
		}
		expect(panel('E3').opening?.goes).toEqual(pointIn('F2'));
		expect(panel('E3').onto).toEqual(pointIn('D3'));
		expect(nameAtRest(FRONT, 'F1')).toBe('F');
	});

	it('closes no dart and opens at its own point where it is told by a width', () => {
		const way = { ...wayIn('G3'), turns: { onto: undefined } };
		expect(panelOf(FRONT, DRAFT, 'G3', way)).toMatchObject({ onto: undefined, opening: { name: 'G2' } });
	});
});

describe('the tone of a line', () => {
	const tones = (upto: string): Readonly<Record<string, string>> => {
		const names = FRONT.steps.map(({ name }) => name);
		const last = names.indexOf(upto);
		const { points, lines } = inkOf(FRONT, DRAFT, (name) => names.indexOf(name) <= last);
		return Object.fromEntries([...points, ...lines].map(({ name, tone }) => [name, tone]));
	};

	it('what is traced is pale, until a line of its own stands on it', () => {
		expect(tones('N1')).toMatchObject({ blockNeck: 'traced', blockWaist: 'traced', N: 'traced', N1: 'ink' });
		expect(tones('N1')['T']).toBe('traced');
		expect(tones('cut')['T']).toBe('ink');
	});

	it('what was moved is pale where it lay before, and inked where it lies now', () => {
		expect(tones('cutOut')).toMatchObject({ sideFoot: 'ink', E: 'ink', U1: 'ink' });
		expect(tones('cutOut2')).toMatchObject({ sideFoot: 'before', sideFoot2: 'ink', U1: 'before', U2: 'ink' });
		expect(tones('cutOut1')).toMatchObject({
			sideFoot2: 'before',
			sideFoot1: 'ink',
			E2: 'before',
			E3: 'ink'
		});
	});

	it('a line of which a part was moved, and points that lean only on what was moved, are pale too', () => {
		expect(tones('cutOut2')).toMatchObject({ armholeBelow: 'before', D: 'before', D2: 'before' });
		expect(tones('cutOut1')).toMatchObject({ sideStart2: 'before', sideTop2: 'ink' });
	});

	it('the inner edge of a slash stays, and with it the point at its mouth', () => {
		expect(tones('cutOut1')).toMatchObject({
			cut: 'ink',
			waistWithin: 'ink',
			F: 'ink',
			F2: 'before',
			F1: 'ink'
		});
	});

	it('nothing is pale that a block draws', () => {
		for (const lesson of ['40-back-levels', '50-front-levels']) {
			const block = lessonMethod(lesson);
			expect(movedAway(block, draftOf(block)).size).toBe(0);
			const { points, lines } = inkOf(block, draftOf(block));
			for (const { name, tone } of [...points, ...lines])
				expect(tone, name).toBe(stepNamed(block, name).kind === 'level' ? 'level' : 'ink');
		}
	});

	it('what is just being moved away is pale already', () => {
		const { lines } = inkOf(FRONT, DRAFT, (name) => name === 'cutOut', ['cutOut']);
		expect(lines).toMatchObject([{ name: 'cutOut', tone: 'before' }]);
	});
});

describe('names where there is no room for all', () => {
	const view: SheetView = { left: mm(0), top: mm(0), scale: 1 };
	const heap = Array.from({ length: 9 }, (_, i) => at(100 + 5 * (i % 3), 100 + 5 * Math.floor(i / 3)));

	it('the needed ones are written, and first; others are left out', () => {
		const named = heap.map((place, i) => ({
			name: `P${i}`,
			at: place,
			want: i === 4 ? ('needed' as const) : ('passing' as const)
		}));
		const labels = placeLabels(named, [], view);
		expect(labels.map(({ name }) => name)).toEqual(named.map(({ name }) => name));
		expect(labels[4]?.left).toBe(false);
		expect(labels.some(({ left }) => left)).toBe(true);
		expect(
			placeLabels(
				named.map(({ name, at: place }) => ({ name, at: place })),
				[],
				view
			).every(({ left }) => !left)
		).toBe(true);
	});

	it('of the finished dress front, no two that are written stand on each other', () => {
		for (const { id, body } of DEMO_BODIES) {
			const { points, lines } = inkOf(FRONT, draftOf(FRONT, body));
			const named = points.map(({ name, at: place, tone }) => ({
				name,
				at: place,
				want: tone === 'before' ? ('passing' as const) : ('usual' as const)
			}));
			const labels = placeLabels(
				named,
				lines.map(({ path }) => path),
				{
					left: mm(-40),
					top: mm(-40),
					scale: px(0.6)
				}
			).filter(({ left }) => !left);
			expect(labels.length, id).toBeGreaterThan(points.length / 3);
			for (const one of labels)
				for (const other of labels)
					if (one !== other)
						expect(
							Math.hypot(one.at.left - other.at.left, one.at.top - other.at.top),
							`${id}: ${one.name}, ${other.name}`
						).toBeGreaterThan(11);
		}
	});
});

describe('a wrong turn that is kept', () => {
	const kept = (): Work => {
		const work = takeUp(FRONT);
		work.draftBefore('G3');
		// Half of the armhole dart, and more: what follows starts from there.
		const [start, goal] = [pointIn('G2'), pointIn('G1')];
		work.place('G3', point((start.x * 3 + goal.x) / 4 + 3, (start.y * 3 + goal.y) / 4));
		expect(work.check('G3').answer).toBe('wrong');
		work.keep('G3');
		return work;
	};

	it('carries the panel as far as it went, and what follows is judged from there', () => {
		const work = kept();
		const own = work.own.points;
		expect(distance(pointIn('U2', own), pointIn('U2'))).toBeGreaterThan(2);
		expect(distance(pointIn('U2', own), pointIn('T'))).toBeCloseTo(distance(pointIn('U1'), pointIn('T')), 9);
		work.draftBefore('E3');
		const goal = pointIn('E3', own);
		expect(distance(goal, pointIn('E3'))).toBeGreaterThan(2);
		work.place('E3', point(goal.x, goal.y));
		expect(work.check('E3').answer).toBe('right');
		expect(work.followsThrough('E3')).toBe(true);
		expect(distance(pointIn('V1', work.own.points), pointIn('V1'))).toBeGreaterThan(2);
	});

	it('comes back after a reload, and can be undone and done again', () => {
		const work = kept();
		const u2 = pointIn('U2', work.own.points);
		const again = takeUp(FRONT, arrive());
		expect(again.state('G3')).toBe('kept');
		expectPlace(again.own.points['U2'], u2.x, u2.y);
		expect(work.undo()).toBe('G3');
		expect(work.state('G3')).toBe('wrong');
		expect(work.inked.points['U2']).toBeUndefined();
		expect(work.redo()).toBe('G3');
		expectPlace(work.inked.points['U2'], u2.x, u2.y);
	});
});

describe('a point that goes on until its curve is long enough', () => {
	it('slides on its way, and is right where the curve is as long as it must be', () => {
		const tool = toolAt('V1', BACK);
		const truth = tool.work.draft?.points['V1'];
		if (!truth) throw new Error('Heron has no V1');
		expect(tool.way?.about).toEqual(tool.work.own.points['U1']);
		tool.goOn(tool.way?.gone(movedPoint(tool), truth) ?? mm(0));
		expectPlace(movedPoint(tool), truth.x, truth.y);
		expect(tool.work.check('V1').answer).toBe('right');
	});

	it('whatever tells of it is asked for its words', () => {
		const tool = toolAt('V1', BACK);
		tool.tell = (place) => `tried at ${place.x.toFixed(0)}`;
		tool.put('point', at(210, 420));
		expect(tool.spoken).toBe('V1: tried at 210; 21 cm across, 42 cm down');
	});
});
