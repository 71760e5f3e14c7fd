import { describe, expect, it } from 'vitest';
import { readBody } from '#shared/body.ts';
import { evaluate, outlineOf, type Draft } from '#drafting/evaluate.ts';
import { selfCrossings } from '#geometry/kernel/crossings.ts';
import type { SheetPoint } from '#geometry/point.ts';
import { lessonMethod } from '../drafting/lesson-method.ts';
import type { Numbers, Spot } from './back-block.ts';
import { HERON } from './front-block-bodies.ts';
import {
	ACROSS,
	angleAt,
	apart,
	byThirds,
	DOWN,
	gone,
	lengthTo,
	square,
	turned,
	way
} from './dress-curves.ts';
import { figureOf, surveyFigures, surveyRows } from './survey-bodies.ts';

const FRONT = lessonMethod('80-straight-skirt-front');
const BACK = lessonMethod('82-straight-skirt-back');
/** A hundredth of a millimetre, in cm. */
const AGREES = 0.001;
/** Simpson's steps: ten times finer than a thousandth of a millimetre asks for. */
const PARTS = 40;

/** The numbers that the drafter chooses, in cm, where none is given. */
const USUAL: Numbers = {
	...{
		bandEase: 1,
		hipEase: 6,
		sideTake: 2.5,
		sideAlone: 3,
		hipBack: 1,
		dartLeast: 1,
		dartMost: 4,
		frontDart: 10
	},
	...{ backDartMore: 3, zipLength: 20, slitLength: 15, skirtLength: 60 }
};
const CHOSEN = Object.keys(USUAL);

const bodyOf = (numbers: Numbers) => {
	const of = (chosen: boolean): Numbers =>
		Object.fromEntries(Object.entries(numbers).filter(([key]) => CHOSEN.includes(key) === chosen));
	return readBody({ ...of(false), allowances: of(true) }, '', 'body', BACK.allowances);
};

/** The sharing out of one quarter, worked by hand in cm from the lesson's rule. */
const sharedOut = (numbers: Numbers) => {
	const of = (key: string): number => numbers[key] ?? USUAL[key] ?? NaN;
	const waist = (of('waist') + of('bandEase')) / 4;
	const hip = (of('hip') + of('hipEase')) / 4;
	const rest = hip - waist - of('hipBack') - of('sideTake');
	const darted = hip - waist > of('sideAlone') + 1e-9;
	const dart = darted ? Math.max(of('dartLeast'), Math.min(rest, 2 * of('dartMost'))) : 0;
	const twice = dart > of('dartMost') + 1e-9;
	const shift = darted ? of('hipBack') : 0;
	return { waist, hip, darted, twice, dart, shift, side: hip - shift - waist - dart };
};

/** The pairs at odds that must be named for a quarter so shared out. */
const oddsOf = (numbers: Numbers): readonly string[] => {
	const { side } = sharedOut(numbers);
	const length = numbers['skirtLength'] ?? 60;
	return [
		...(side < -2 - 1e-9 || side > 8 + 1e-9 ? ['waist hip'] : []),
		...(length - (numbers['waistToHip'] ?? NaN) < 5 - 1e-9 ? ['waistToHip hip'] : [])
	];
};

interface Worked {
	readonly numbers: Numbers;
	readonly front: Draft;
	readonly back: Draft;
}

const draftsOf = (numbers: Numbers): Worked | readonly string[] => {
	const work = evaluate(BACK, bodyOf(numbers));
	if (work.kind === 'refused') return work.refusals.map(({ odds }) => odds.join(' '));
	const front = work.draft.uses['front'];
	if (!front) throw new Error('the back leans on no front');
	return { numbers, front, back: work.draft };
};

/** One allowance at a time at each end of its range, for the invented body of the lessons. */
const atEnds: readonly Numbers[] = BACK.allowances
	.filter((each) => 'range' in each)
	.filter(({ key }) => CHOSEN.includes(key))
	.flatMap(({ key, range }) => range.map((end) => ({ ...HERON, [key]: end / 10 })));
const PEOPLE = [...surveyFigures(), ...surveyRows('men').map(figureOf)];
const ALL: readonly Numbers[] = [HERON, ...PEOPLE.map((figure) => ({ ...figure })), ...atEnds];
const WORK = ALL.map((numbers) => ({ numbers, work: draftsOf(numbers) }));
const DRAWN = WORK.flatMap(({ work }) => ('front' in work ? [work] : []));

const spot = ({ points }: Draft, name: string): Spot => {
	const found: SheetPoint | undefined = points[name];
	if (!found) throw new Error(`no ${name} is drafted`);
	return [found.x / 10, found.y / 10];
};

/** A part of the waist, worked anew from where it begins and ends and the ways in which it does. */
const part = (p: Spot, u: Spot, q: Spot, v: Spot): number => lengthTo(byThirds(p, u, q, v), 1, PARTS);
const squareTo = (a: Spot, b: Spot): Spot => square(way(a, b), ACROSS);

describe('the straight skirt', () => {
	it('Heron: a quarter of 79 and 108; the side takes 2.5, the front dart 3.75, the two back darts 5.75', () => {
		expect(sharedOut(HERON)).toEqual({
			...{ waist: 19.75, hip: 27, darted: true, twice: false, dart: 3.75, shift: 1, side: 2.5 }
		});
		const heron = DRAWN[0];
		if (!heron) throw new Error('Heron is not drafted');
		expect(spot(heron.front, 'J')).toEqual([26, 20.5]);
		expect(spot(heron.back, 'J')).toEqual([28, 20.5]);
		expect(spot(heron.front, 'B')).toEqual([23.5, 0]);
		// 23.5 x 2.5 / 20.5 / 2.
		expect(spot(heron.front, 'R')[1]).toBeCloseTo(-29.375 / 20.5, 9);
	});

	it('every woman and man of the survey has one, and a body is refused only for the pair that is at odds by hand', () => {
		for (const { numbers, work } of WORK) {
			const odds = 'front' in work ? [] : [...new Set(work)];
			expect(odds, JSON.stringify(numbers)).toEqual(oddsOf(numbers));
		}
		expect(WORK.slice(1, 601).filter(({ work }) => 'front' in work)).toHaveLength(600);
	});

	it('hips of front and back together are half of the hip and its ease', () => {
		for (const { numbers, front, back } of DRAWN) {
			const { hip, waist, dart, shift } = sharedOut(numbers);
			expect(spot(front, 'J')[0]).toBeCloseTo(hip - shift, 9);
			expect(spot(back, 'J')[0]).toBeCloseTo(hip + shift, 9);
			expect(spot(front, 'B')[0]).toBeCloseTo(waist + dart, 9);
		}
	});

	it('darts are there where enough is left for them, front and back alike', () => {
		for (const { numbers, front, back } of DRAWN) {
			const { darted } = sharedOut(numbers);
			expect('D1' in front.points, JSON.stringify(numbers)).toBe(darted);
			expect('E2' in back.points, JSON.stringify(numbers)).toBe(darted);
			expect('E2' in front.points, JSON.stringify(numbers)).toBe(sharedOut(numbers).twice);
		}
		expect(DRAWN.filter(({ numbers }) => !sharedOut(numbers).darted).length).toBeGreaterThan(5);
		expect(DRAWN.filter(({ numbers }) => sharedOut(numbers).twice).length).toBeGreaterThan(50);
	});

	it('the waist, darts closed, is a quarter of the waist and its ease, in equal parts between the darts', () => {
		for (const { numbers, front, back } of DRAWN) {
			const { waist, darted, twice } = sharedOut(numbers);
			const at = (name: string) => spot(front, name);
			const behind = (name: string) => spot(back, name);
			const [atSide, backAtSide] = [squareTo(at('V'), at('J')), squareTo(behind('V'), behind('J'))];
			if (!darted) {
				expect(Math.abs(part(at('O'), ACROSS, at('V'), atSide) - waist)).toBeLessThan(AGREES);
				expect(Math.abs(part(behind('O'), ACROSS, behind('V'), backAtSide) - waist)).toBeLessThan(AGREES);
				continue;
			}
			const leg = (name: string, tip: string) => squareTo(at(tip), at(name));
			const backLeg = (name: string, tip: string) => squareTo(behind(tip), behind(name));
			const inner = part(at('O'), ACROSS, at('D1'), leg('D1', 'T'));
			const fronts = twice
				? [
						inner,
						part(at('D2'), leg('D2', 'T'), at('E1'), leg('E1', 'T2')),
						part(at('E2'), leg('E2', 'T2'), at('V'), atSide)
					]
				: [inner, part(at('D2'), leg('D2', 'T'), at('V'), atSide)];
			const thirds = [
				part(behind('O'), ACROSS, behind('D1'), backLeg('D1', 'T1')),
				part(behind('D2'), backLeg('D2', 'T1'), behind('E1'), backLeg('E1', 'T2')),
				part(behind('E2'), backLeg('E2', 'T2'), behind('V'), backAtSide)
			];
			for (const each of fronts) expect(Math.abs(each - waist / fronts.length)).toBeLessThan(AGREES);
			for (const third of thirds) expect(Math.abs(third - waist / 3)).toBeLessThan(AGREES);
		}
	});

	it('both legs of every dart are one length, the front’s the shorter', () => {
		for (const { numbers, front, back } of DRAWN) {
			if (!sharedOut(numbers).darted) continue;
			const depth = numbers['waistToHip'] ?? NaN;
			const short = Math.min(numbers['frontDart'] ?? 10, 0.6 * depth);
			const more = numbers['backDartMore'] ?? 3;
			const long = Math.min((numbers['frontDart'] ?? 10) + more, 0.75 * depth);
			for (const leg of ['D1', 'D2', 'X'])
				expect(apart(spot(front, 'T'), spot(front, leg))).toBeCloseTo(short, 6);
			for (const leg of sharedOut(numbers).twice ? ['E1', 'E2', 'X2'] : [])
				expect(apart(spot(front, 'T2'), spot(front, leg))).toBeCloseTo(short, 6);
			for (const [tip, ...legs] of [
				['T1', 'D1', 'D2', 'X1'],
				['T2', 'E1', 'E2', 'X2']
			] as const)
				for (const leg of legs) expect(apart(spot(back, tip), spot(back, leg))).toBeCloseTo(long, 6);
			expect(short).toBeLessThanOrEqual(long);
		}
	});

	it('with its darts closed the front’s waist runs on as one: the outer part, turned about the tip, meets the inner', () => {
		for (const { numbers, front } of DRAWN) {
			const { darted, twice } = sharedOut(numbers);
			const darts = [...(darted ? [['T', 'D1', 'D2']] : []), ...(twice ? [['T2', 'E1', 'E2']] : [])];
			for (const [tip, inner, outer] of darts.map((names) => names.map((name) => spot(front, name)))) {
				if (!tip || !inner || !outer) throw new Error('a dart has three points');
				const closing = angleAt(tip, outer, inner);
				const leaving = gone(outer, squareTo(tip, outer), 1);
				expect(apart(turned(tip, closing, outer), inner)).toBeLessThan(1e-6);
				expect(apart(turned(tip, closing, leaving), gone(inner, squareTo(tip, inner), 1))).toBeLessThan(1e-6);
			}
		}
	});

	it('the darts take what they were given, half each where there are two, but for what the bend of the waist adds', () => {
		for (const { numbers, front } of DRAWN) {
			const { darted, twice, dart } = sharedOut(numbers);
			if (!darted) continue;
			const first = apart(spot(front, 'D1'), spot(front, 'D2'));
			const widths = twice ? [first, apart(spot(front, 'E1'), spot(front, 'E2'))] : [first];
			for (const width of widths) expect(Math.abs(width - dart / widths.length)).toBeLessThan(0.5);
		}
	});

	it('front and back have one side seam, straight down from the hip', () => {
		for (const { front, back, numbers } of DRAWN) {
			const across = spot(back, 'J')[0] - spot(front, 'J')[0];
			for (const name of ['V', 'J', 'K'])
				expect(apart(gone(spot(front, name), ACROSS, across), spot(back, name))).toBeLessThan(1e-9);
			const [v, j] = [spot(front, 'V'), spot(front, 'J')];
			const side =
				part(v, way(v, j), j, DOWN) + (numbers['skirtLength'] ?? 60) - (numbers['waistToHip'] ?? NaN);
			expect(Math.abs((front.lines['side']?.length ?? NaN) / 10 - side)).toBeLessThan(AGREES);
			expect(back.lines['side']?.length).toBeCloseTo(front.lines['side']?.length ?? NaN, 9);
		}
	});

	it('no outline crosses itself', () => {
		for (const { front, back, numbers } of DRAWN) {
			for (const [method, draft] of [
				[FRONT, front],
				[BACK, back]
			] as const) {
				const outline = outlineOf(method, draft);
				expect(outline && selfCrossings(outline), JSON.stringify(numbers)).toEqual([]);
			}
		}
	});
});

describe('straight figures, and hips far wider than the waist', () => {
	// With eases of 1 and 6 the quarters are (waist + 1) / 4 and (hip + 6) / 4: the differences are of the eased girths.
	it.each([
		['a difference of 12 is 3 a quarter, exactly what the side may take in alone: none', 85, 'none'],
		['a millimetre more of hip: the smallest dart', 85.1, 'dart'],
		// (4 + 2.5 + 1) x 4 = 30.
		['a difference of 30: exactly the widest dart', 103, 'dart'],
		['a millimetre more of hip: two', 103.1, 'two'],
		['no difference: no dart, and a side that falls straight', 73, 'none'],
		['a hip 8 narrower: still drafted', 65, 'none'],
		['a hip 8.1 narrower: refused', 64.9, 'refused'],
		// 78 + 1 + 4 x (8 + 8 + 1) - 6.
		['a difference of 68: the side takes 8, the darts 4 each, and the back 1 more', 141, 'two'],
		['a difference of 68.1: refused', 141.1, 'refused']
	])('%s', (_, hip, what) => {
		const work = draftsOf({ ...HERON, hip });
		if (!('front' in work)) {
			expect([work, what]).toEqual([['waist hip'], 'refused']);
			return;
		}
		const { points } = work.front;
		expect('E1' in points ? 'two' : 'D1' in points ? 'dart' : 'none').toBe(what);
	});

	it('an eased hip as wide as the eased waist has its side straight down', () => {
		const work = draftsOf({ ...HERON, hip: 73 });
		if (!('front' in work)) throw new Error('it is refused');
		expect(spot(work.front, 'V')[0]).toBeCloseTo(19.75, 6);
		expect(spot(work.front, 'V')[1]).toBeCloseTo(0, 9);
	});
});
