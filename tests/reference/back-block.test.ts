import { beforeAll, describe, expect, it } from 'vitest';
import { readBody } from '#shared/body.ts';
import { evaluate, outlineOf } from '#drafting/evaluate.ts';
import { selfCrossings } from '#geometry/kernel/crossings.ts';
import { MEASUREMENT_KEYS } from '#shared/measurements.ts';
import type { PrintedRow } from '../cli/run-cli.ts';
import { backBlock } from '../drafting/lesson-method.ts';
import { handBack, type HandBack, type Numbers } from './back-block.ts';
import { endsOfRanges, randomBodies } from './random-bodies.ts';
import { printedDrafts } from './printed-drafts.ts';

/** The goal of the method's text: two people who work it agree to a hundredth of a millimetre. */
const AGREES_MM = 0.01;

const HERON: Numbers = {
	...{ bust: 96, waist: 78, hip: 102, neck: 37 },
	...{ shoulderWidth: 38.4, backLength: 42.5, waistToHip: 20.5 }
};
const BODIES = [HERON, ...endsOfRanges(HERON), ...randomBodies(1500, 20_240_611)];
const WORKED = BODIES.map(handBack);

/** A body's numbers as the program's own file format, in centimetres. */
const fileOf = (numbers: Numbers): Record<string, unknown> => {
	const entries = Object.entries(numbers);
	const measured = (key: string): boolean => MEASUREMENT_KEYS.some((each) => each === key);
	return {
		...Object.fromEntries(entries.filter(([key]) => measured(key))),
		allowances: Object.fromEntries(entries.filter(([key]) => !measured(key)))
	};
};

/** The greatest difference between a draft (mm) and the one by hand (cm), and where it is. */
const worstOf = (
	points: Readonly<Record<string, readonly [number, number]>>,
	lengths: Readonly<Record<string, number>>,
	hand: HandBack
): { off: number; at: string } => {
	expect(Object.keys(points).sort()).toEqual(Object.keys(hand.points).sort());
	expect(Object.keys(lengths).sort()).toEqual(Object.keys(hand.lengths).sort());
	const offs = [
		...Object.entries(hand.points).map(([name, [x, y]]) => {
			const [px, py] = points[name] ?? [NaN, NaN];
			return { at: name, off: Math.hypot(px - x * 10, py - y * 10) };
		}),
		...Object.entries(hand.lengths).map(([name, length]) => ({
			at: name,
			off: Math.abs((lengths[name] ?? NaN) - length * 10)
		}))
	];
	return offs.reduce((worst, each) => (each.off <= worst.off ? worst : each));
};

const mapped = <A, B>(record: Readonly<Record<string, A>>, change: (value: A) => B): Record<string, B> =>
	Object.fromEntries(Object.entries(record).map(([key, value]) => [key, change(value)]));

describe('the random bodies', () => {
	it('meet every case: drafted, each refusal, and curves without a corner', () => {
		const drafted = WORKED.filter(({ odds }) => odds.length === 0);
		expect(drafted.length).toBeGreaterThan(500);
		expect(drafted.filter(({ withoutCorner }) => withoutCorner > 0).length).toBeGreaterThan(50);
		for (const pair of [
			'bust shoulderWidth',
			'shoulderWidth backLength',
			'neck shoulderWidth',
			'bust waist'
		]) {
			expect(WORKED.filter(({ odds }) => odds.includes(pair)).length, pair).toBeGreaterThan(5);
		}
	});
});

describe('the engine', () => {
	it('agrees with the block worked by hand, to 0.01 mm, on every body', () => {
		const method = backBlock();
		for (const [i, numbers] of BODIES.entries()) {
			const hand = WORKED[i] ?? handBack(numbers);
			const evaluation = evaluate(method, readBody(fileOf(numbers)));
			if (evaluation.kind === 'refused') {
				expect(evaluation.refusals.map(({ odds }) => odds.join(' '))).toEqual(hand.odds);
				continue;
			}
			expect(hand.odds).toEqual([]);
			const { points, lines } = evaluation.draft;
			const worst = worstOf(
				mapped(points, ({ x, y }) => [x, y] as const),
				mapped(lines, ({ length }) => length),
				hand
			);
			expect(worst.off, `${worst.at} of ${JSON.stringify(numbers)}`).toBeLessThan(AGREES_MM);
		}
	});
});

describe('outlines', () => {
	it('none crosses itself, whatever the allowances', () => {
		const method = backBlock();
		let looked = 0;
		for (const numbers of BODIES.slice(0, 600)) {
			const evaluation = evaluate(method, readBody(fileOf(numbers)));
			if (evaluation.kind === 'refused') continue;
			const outline = outlineOf(method, evaluation.draft);
			expect(outline && selfCrossings(outline), JSON.stringify(numbers)).toEqual([]);
			looked += 1;
		}
		expect(looked).toBeGreaterThan(300);
	});
});

describe('the command line', () => {
	let rows: readonly PrintedRow[] = [];
	const some = BODIES.slice(0, 400);
	beforeAll(async () => {
		rows = await printedDrafts('back-block', some);
	});

	it('prints a row for each body, in order, that agrees to 0.01 mm', () => {
		expect(rows.map(({ body }) => body)).toEqual(some.map((_, i) => String(i + 1)));
		for (const [i, row] of rows.entries()) {
			const hand = WORKED[i];
			if (!hand) throw new Error('no such body');
			expect('refused' in row).toBe(hand.odds.length > 0);
			if ('refused' in row) continue;
			const worst = worstOf(
				row.points,
				mapped(row.lines, ({ length }) => length),
				hand
			);
			expect(worst.off, `${worst.at} of row ${i + 1}`).toBeLessThan(AGREES_MM);
		}
	});

	it('draws every curve through the handles worked by hand', () => {
		for (const [i, row] of rows.entries()) {
			if ('refused' in row) continue;
			for (const [name, cubics] of Object.entries(WORKED[i]?.curves ?? {})) {
				const written = [...(row.lines[name]?.path ?? '').matchAll(/-?[\d.]+(e-\d+)?/g)].map(([text]) =>
					Number(text)
				);
				const [first, ...rest] = cubics;
				const expected = [...(first ?? []), ...rest.flatMap((each) => each.slice(1))].flat();
				expect(written, name).toHaveLength(expected.length);
				expected.forEach((cm, n) => {
					expect(Math.abs((written[n] ?? NaN) - cm * 10), `${name} of row ${i + 1}`).toBeLessThan(AGREES_MM);
				});
			}
		}
	});
});

// Printed with the method: the numbers of its demo body, to the last digit given.
describe('the printed check values', () => {
	const draft = (numbers: Numbers) => {
		const evaluation = evaluate(backBlock(), readBody(fileOf(numbers)));
		if (evaluation.kind === 'refused') throw new Error('refused');
		return evaluation.draft;
	};
	const heron = draft(HERON);

	it('the shoulder point lies at (19.2, 4)', () => {
		expect(heron.points['S']).toEqual({ x: 192, y: 40 });
	});

	it.each([
		['shoulder', 12.681],
		['neck', 7.907],
		['armhole', 22.475],
		['side', 20.383],
		['hip', 20.721]
	])('the %s is %d cm long', (line, cm) => {
		expect((heron.lines[line]?.length ?? NaN) / 10).toBeCloseTo(cm, 3);
	});

	it('the waist lies 24.167 across at the side, and its dart is 3.667 wide', () => {
		expect((heron.points['V']?.x ?? NaN) / 10).toBeCloseTo(24.167, 3);
		const [inner, outer] = [heron.points['G1'], heron.points['G2']];
		expect(((outer?.x ?? NaN) - (inner?.x ?? NaN)) / 10).toBeCloseTo(3.667, 3);
	});

	it('half shoulder width 18.5 and a drop of 3: the armhole level lies 21.5 down', () => {
		expect(draft({ ...HERON, shoulderWidth: 37 }).points['A']).toEqual({ x: 0, y: 215 });
	});

	it('bust 92 without ease: the underarm lies 23 across', () => {
		expect(draft({ ...HERON, bust: 92, bustEase: 0 }).points['U']?.x).toBe(230);
	});

	it('neck 39: the neck is 7.5 wide', () => {
		expect(draft({ ...HERON, neck: 39 }).points['N']?.x).toBe(75);
	});
});
