import { describe, expect, it } from 'vitest';
import { readBody } from '#shared/body.ts';
import { evaluate, outlineOf, type Draft } from '#drafting/evaluate.ts';
import { selfCrossings } from '#geometry/kernel/crossings.ts';
import { lessonMethod } from '../drafting/lesson-method.ts';
import { handBack, type Numbers, type Spot } from './back-block.ts';
import { handFront } from './front-block.ts';
import { HERON } from './front-block-bodies.ts';
import {
	ACROSS,
	apart,
	byCorner,
	byThirds,
	DOWN,
	firstPassing,
	lengthTo,
	onTheWay,
	square,
	way,
	type Curve
} from './dress-curves.ts';
import { surveyFigures } from './survey-bodies.ts';

const METHOD = lessonMethod('90-sleeve-frame');
/** A hundredth of a millimetre, in cm. */
const AGREES = 0.001;
const PARTS = 40;

const USUAL: Numbers = {
	...{ capChange: -1, capEase: 2, capRound: 2, capHollowFront: 1.5, capHollowBack: 0.8 },
	...{ sleeveLength: 58, wristWidth: 24 }
};
const CHOSEN = Object.keys(USUAL);

const lengthOf = (curve: Curve): number => curve.reduce((sum, each) => sum + lengthTo(each, 1, PARTS), 0);
const mirrored = ([x, y]: Spot): Spot => [-x, y];
const at = (points: Readonly<Record<string, Spot>>, name: string): Spot => {
	const found = points[name];
	if (!found) throw new Error(`no ${name} by hand`);
	return found;
};

/** An armhole that runs square to the shoulder at S, straight down through M and square to the side at U, in cm. */
const armholeOf = (points: Readonly<Record<string, Spot>>): number => {
	const [N, S, M] = ['N', 'S', 'M'].map((name) => at(points, name)) as [Spot, Spot, Spot];
	// The underarm of a front that is shorter than the back comes up.
	const U = points['U1'] ?? at(points, 'U');
	// With a dart the side runs to the end of its upper leg.
	const V = points['L'] ?? at(points, 'V');
	return lengthOf([
		byCorner(S, square(way(N, S), DOWN), M, DOWN),
		byCorner(M, DOWN, U, square(way(U, V), ACROSS))
	]);
};

interface HandHalf {
	readonly cap: number;
	/** The underarm, as if this half lay on the positive side. */
	readonly underarm: Spot | undefined;
}

/** One half of the cap worked by hand, laid out on the positive side. */
const halfOf = (armhole: number, depth: number, hollow: number, of: (key: string) => number): HandHalf => {
	const guideEnd: Spot = [Math.sqrt(armhole * armhole - depth * depth), depth];
	const along = way([0, 0], guideEnd);
	const [first, last] = [
		onTheWay([0, 0], guideEnd, armhole / 4),
		onTheWay([0, 0], guideEnd, (3 * armhole) / 4)
	];
	const round: Spot = [first[0], first[1] - of('capRound')];
	const low: Spot = [last[0], last[1] + hollow];
	const wrist: Spot = [of('wristWidth') / 2, of('sleeveLength')];
	const upTo = lengthOf([byThirds([0, 0], ACROSS, round, along), byThirds(round, along, low, along)]);
	const lengthWith = (x: number): number => {
		const end: Spot = [x, depth];
		return upTo + lengthTo(byThirds(low, along, end, square(way(end, wrist), ACROSS)), 1, PARTS);
	};
	const wanted = armhole + of('capEase') / 2;
	const found = firstPassing((x) => lengthWith(x) - wanted, low[0], low[0] + 60, 60);
	return { cap: wanted, underarm: found === undefined ? undefined : [found, depth] };
};

const handSleeve = (numbers: Numbers) => {
	const of = (key: string): number => numbers[key] ?? USUAL[key] ?? NaN;
	const [front, back] = [armholeOf(handFront(numbers).points), armholeOf(handBack(numbers).points)];
	const depth = (front + back) / 3 + of('capChange');
	return {
		...{ front, back, depth },
		frontHalf: halfOf(front, depth, of('capHollowFront'), of),
		backHalf: halfOf(back, depth, of('capHollowBack'), of)
	};
};

const bodyOf = (numbers: Numbers) => {
	const of = (chosen: boolean): Numbers =>
		Object.fromEntries(Object.entries(numbers).filter(([key]) => CHOSEN.includes(key) === chosen));
	return readBody({ ...of(false), allowances: of(true) }, '', 'body', METHOD.allowances);
};

const ENDS: readonly Numbers[] = METHOD.allowances
	.filter((each) => 'range' in each)
	.filter(({ key }) => CHOSEN.includes(key))
	.flatMap(({ key, range }) => range.map((end) => ({ ...HERON, [key]: end / 10 })));
const BODIES: readonly Numbers[] = [HERON, ...ENDS, ...surveyFigures().map((figure) => ({ ...figure }))];

interface Drawn {
	readonly numbers: Numbers;
	readonly draft: Draft;
}
const WORKS = BODIES.map((numbers) => ({ numbers, work: evaluate(METHOD, bodyOf(numbers)) }));
const DRAWN: readonly Drawn[] = WORKS.flatMap(({ numbers, work }) =>
	work.kind === 'drafted' ? [{ numbers, draft: work.draft }] : []
);

const spot = ({ points }: Draft, name: string): Spot => {
	const found = points[name];
	if (!found) throw new Error(`no ${name} is drafted`);
	return [found.x / 10, found.y / 10];
};
const long = ({ lines }: Draft, name: string): number => (lines[name]?.length ?? NaN) / 10;

describe('the set-in sleeve', () => {
	it('is refused only to the bodies that have no block', () => {
		for (const { numbers, work } of WORKS) {
			const odds = work.kind === 'refused' ? work.refusals.map((each) => each.odds.join(' ')) : [];
			expect([...new Set(odds)], JSON.stringify(numbers)).toEqual(handFront(numbers).odds);
		}
		expect(DRAWN).toHaveLength(1 + ENDS.length + 300);
	});

	it('the cap is as deep as a third of the two armholes, measured by hand', () => {
		for (const { numbers, draft } of DRAWN) {
			const hand = handSleeve(numbers);
			const bodice = draft.uses['bodice'];
			if (!bodice) throw new Error('the sleeve leans on no bodice');
			const front = 'frontArmhole' in bodice.lines ? 'frontArmhole' : 'frontArmholeShort';
			expect(Math.abs(long(bodice, front) - hand.front)).toBeLessThan(AGREES);
			expect(Math.abs(long(bodice, 'backArmhole') - hand.back)).toBeLessThan(AGREES);
			expect(Math.abs(spot(draft, 'A')[1] - hand.depth)).toBeLessThan(AGREES);
		}
	});

	it('each half of the cap is its own armhole and half of the ease, and its underarm lies where a hand finds it', () => {
		for (const { numbers, draft } of DRAWN) {
			const { frontHalf, backHalf } = handSleeve(numbers);
			for (const [half, cap, place] of [
				[frontHalf, 'frontCap', spot(draft, 'U1')],
				[backHalf, 'backCap', mirrored(spot(draft, 'U2'))]
			] as const) {
				expect(Math.abs(long(draft, cap) - half.cap), JSON.stringify(numbers)).toBeLessThan(AGREES);
				if (!half.underarm) throw new Error('no underarm by hand');
				expect(apart(half.underarm, place), JSON.stringify(numbers)).toBeLessThan(AGREES);
			}
		}
	});

	it('the whole cap is longer than the armhole by the stated ease', () => {
		for (const { numbers, draft } of DRAWN) {
			const hand = handSleeve(numbers);
			const ease = long(draft, 'frontCap') + long(draft, 'backCap') - hand.front - hand.back;
			expect(Math.abs(ease - (numbers['capEase'] ?? 2))).toBeLessThan(AGREES);
		}
	});

	it('both edges of the underarm seam are one length, and the wrist is as wide as was chosen', () => {
		for (const { numbers, draft } of DRAWN) {
			const [front, back] = [
				apart(spot(draft, 'U1'), spot(draft, 'V1')),
				apart(spot(draft, 'U2'), spot(draft, 'V2'))
			];
			expect(Math.abs(front - back)).toBeLessThan(1e-9);
			expect(spot(draft, 'V1')[0] - spot(draft, 'V2')[0]).toBeCloseTo(numbers['wristWidth'] ?? 24, 9);
		}
	});

	it('no outline crosses itself', () => {
		for (const { numbers, draft } of DRAWN) {
			const outline = outlineOf(METHOD, draft);
			expect(outline && selfCrossings(outline), JSON.stringify(numbers)).toEqual([]);
		}
	});
});
