import { warned } from '../drafting/small-method.ts';
import { beforeAll, describe, expect, it } from 'vitest';
import { readBody, type Body } from '#shared/body.ts';
import { MEASUREMENT_KEYS } from '#shared/measurements.ts';
import { evaluate, outlineOf, type Draft } from '#drafting/evaluate.ts';
import type { SeamReport } from '#garment/seams.ts';
import { selfCrossings } from '#geometry/kernel/crossings.ts';
import type { PrintedRow } from '../cli/run-cli.ts';
import { frontBlock } from '../drafting/lesson-method.ts';
import type { Numbers } from './back-block.ts';
import { endsOfRanges, HERON, LIMITS, moved, randomFronts, RANGES } from './front-block-bodies.ts';
import { blockSide } from './block-seams.ts';
import { handFront, type HandFront } from './front-block.ts';
import { printedDrafts } from './printed-drafts.ts';

/** The goal of the method's text: two people who work it agree to a hundredth of a millimetre. */
const AGREES_MM = 0.01;
/** A hundredth of a millimetre, in centimetres: this side of a limit and the other. */
const HAIR = 0.001;
const METHOD = frontBlock();

const BESIDE_LIMITS = LIMITS.flatMap(({ on, key }) => [on, moved(on, key, HAIR), moved(on, key, -HAIR)]);
const BODIES = [HERON, ...endsOfRanges, ...BESIDE_LIMITS, ...randomFronts(3000, 20_251_105)];
const WORKED = BODIES.map(handFront);

const isMeasured = (key: string): boolean => MEASUREMENT_KEYS.some((each) => each === key);
/** A body's numbers as the program reads them, in centimetres. */
const bodyOf = (numbers: Numbers): Body => {
	const entries = Object.entries(numbers);
	return readBody({
		...Object.fromEntries(entries.filter(([key]) => isMeasured(key))),
		allowances: Object.fromEntries(entries.filter(([key]) => !isMeasured(key)))
	});
};

const draftOf = (numbers: Numbers): Draft => {
	const evaluation = evaluate(METHOD, bodyOf(numbers));
	if (evaluation.kind === 'refused') throw new Error(JSON.stringify(evaluation.refusals));
	return evaluation.draft;
};

/** The pairs at odds, each once: a body may break two rules that name the same pair. */
const oddsOf = (numbers: Numbers): readonly string[] => {
	const evaluation = evaluate(METHOD, bodyOf(numbers));
	return evaluation.kind === 'drafted'
		? []
		: [...new Set(evaluation.refusals.map(({ odds }) => odds.join(' ')))];
};

type Places = Readonly<Record<string, readonly [number, number]>>;

/** The greatest difference between a draft (mm) and the one by hand (cm), and where it is. */
const worstOf = (points: Places, lengths: Readonly<Record<string, number>>, hand: HandFront) => {
	expect(Object.keys(points).sort()).toEqual(Object.keys(hand.points).sort());
	expect(Object.keys(lengths).sort()).toEqual(Object.keys(hand.lengths).sort());
	const placed = Object.entries(hand.points).map(([at, [x, y]]) => {
		const [px, py] = points[at] ?? [NaN, NaN];
		return { at, off: Math.hypot(px - x * 10, py - y * 10) };
	});
	const measured = Object.entries(hand.lengths).map(([at, length]) => ({
		at,
		off: Math.abs((lengths[at] ?? NaN) - length * 10)
	}));
	// Written so that no number at all is the worst of all.
	return [...placed, ...measured].reduce((worst, each) => (each.off <= worst.off ? worst : each));
};

const mapped = <A, B>(record: Readonly<Record<string, A>>, change: (value: A) => B): Record<string, B> =>
	Object.fromEntries(Object.entries(record).map(([key, value]) => [key, change(value)]));

const expectSame = (draft: Draft, hand: HandFront, side: SeamReport, of: string): void => {
	const points = mapped(draft.points, ({ x, y }) => [x, y] as const);
	const worst = worstOf(
		points,
		mapped(draft.lines, ({ length }) => length),
		hand
	);
	expect(worst.off, `${worst.at} of ${of}`).toBeLessThan(AGREES_MM);
	expect(Math.abs(side.difference - hand.sideDifference * 10), of).toBeLessThan(AGREES_MM);
};

/** What a draft warns about, in the words of the one by hand. */
const warnedOf = (warnings: readonly string[]): readonly string[] =>
	warnings.map((words) => {
		if (
			/^the front length and the back length: the front is shorter than the back by more than 0.5 cm/.test(
				words
			)
		)
			return 'shorter';
		return /^Back and front side seam, any dart closed: the second is .* too (long|short)$/.test(words)
			? 'sideSeam'
			: words;
	});

describe('the bodies', () => {
	it('meet every case: drafted with a dart and without, each refusal, each warning, every end of every range', () => {
		const drafted = WORKED.filter(({ odds }) => odds.length === 0);
		expect(drafted.filter(({ hasDart }) => hasDart).length).toBeGreaterThan(300);
		expect(drafted.filter(({ hasDart }) => !hasDart).length).toBeGreaterThan(100);
		for (const warning of ['shorter', 'sideSeam'] as const)
			expect(drafted.filter(({ warnings }) => warnings.includes(warning)).length, warning).toBeGreaterThan(
				20
			);
		for (const pair of new Set(LIMITS.map(({ odds }) => odds)))
			expect(WORKED.filter(({ odds }) => odds.includes(pair)).length, pair).toBeGreaterThan(20);
		for (const [key, range] of Object.entries(RANGES)) {
			for (const end of range) {
				const there = BODIES.filter((body, i) => body[key] === end && WORKED[i]?.odds.length === 0);
				expect(there.length, `${key} ${end}`).toBeGreaterThan(20);
			}
		}
	});
});

describe('the engine', () => {
	it('agrees with the block worked by hand, to 0.01 mm, on every body', () => {
		for (const [i, numbers] of BODIES.entries()) {
			const hand = WORKED[i] ?? handFront(numbers);
			const of = JSON.stringify(numbers);
			expect([...oddsOf(numbers)].sort(), of).toEqual([...hand.odds].sort());
			if (hand.odds.length > 0) continue;
			const draft = draftOf(numbers);
			const side = blockSide(draft, bodyOf(numbers));
			expectSame(draft, hand, side, of);
			expect([...warnedOf(warned(draft)), ...(side.within ? [] : ['sideSeam'])], of).toEqual(hand.warnings);
		}
	});

	it('makes both shoulders one length, and both legs of the dart, to a billionth of a millimetre', () => {
		let darts = 0;
		for (const [i, numbers] of BODIES.entries()) {
			if (WORKED[i]?.odds.length !== 0) continue;
			const { lines, uses } = draftOf(numbers);
			const [front, back] = [lines['shoulder'], uses['back']?.lines['shoulder']];
			expect(Math.abs((front?.length ?? NaN) - (back?.length ?? NaN))).toBeLessThan(1e-9);
			if (!lines['dartUpper']) continue;
			const [upper, lower] = [lines['dartUpper'], lines['dartLower']];
			expect(Math.abs(upper.length - (lower?.length ?? NaN))).toBeLessThan(1e-9);
			darts += 1;
		}
		expect(darts).toBeGreaterThan(300);
	});
});

describe('every limit, from both sides and on it', () => {
	it.each(LIMITS)('$what: $key', ({ on, key, over, refusedOn, odds }) => {
		const oddsAt = (by: number): readonly string[] => oddsOf(moved(on, key, by * over));
		expect(oddsAt(-HAIR)).toEqual([]);
		expect(oddsAt(0)).toEqual(refusedOn === false ? [] : [refusedOn === true ? odds : refusedOn]);
		expect(oddsAt(HAIR)).toEqual([odds]);
	});

	it('a front 0.5 cm shorter than the back is not warned about, and one a hair shorter still is', () => {
		const shorter = (frontLength: number) => warnedOf(warned(draftOf({ ...HERON, frontLength })));
		expect(shorter(42)).toEqual([]);
		expect(shorter(42 - HAIR)).toEqual(['shorter']);
	});

	it('an intake of nothing makes no dart, and a hundredth of a millimetre makes one', () => {
		const names = (frontLength: number) => Object.keys(draftOf({ ...HERON, frontLength }).lines);
		expect(names(42.5)).toContain('side');
		expect(names(42.5)).not.toContain('dartUpper');
		expect(names(42.5 + HAIR)).toEqual(
			expect.arrayContaining(['sideAbove', 'dartUpper', 'dartLower', 'sideBelow'])
		);
		expect(names(42.5 + HAIR)).not.toContain('side');
	});
});

describe('the command line', () => {
	let rows: readonly PrintedRow[] = [];
	const some = BODIES.slice(0, 500);
	beforeAll(async () => {
		rows = await printedDrafts('front-block', some);
	});

	it('prints a row for each body, in order, that agrees to 0.01 mm', () => {
		expect(rows.map(({ body }) => body)).toEqual(some.map((_, i) => String(i + 1)));
		for (const [i, row] of rows.entries()) {
			const hand = WORKED[i] ?? handFront(HERON);
			expect('refused' in row, `row ${i + 1}`).toBe(hand.odds.length > 0);
			if ('refused' in row) {
				for (const pair of hand.odds)
					expect(row.refused).toMatch(new RegExp(pair.replace(' ', String.raw` \([^)]*\) and `)));
				continue;
			}
			const worst = worstOf(
				row.points,
				mapped(row.lines, ({ length }) => length),
				hand
			);
			expect(worst.off, `${worst.at} of row ${i + 1}`).toBeLessThan(AGREES_MM);
			expect(warnedOf(row.warnings)).toEqual(hand.warnings);
		}
	});

	it('draws every curve through the handles worked by hand', () => {
		for (const [i, row] of rows.entries()) {
			if ('refused' in row) continue;
			for (const [name, [first, ...rest]] of Object.entries(WORKED[i]?.curves ?? {})) {
				const data = row.lines[name]?.path ?? '';
				const written = [...data.matchAll(/-?[\d.]+(e-\d+)?/g)].map(([text]) => Number(text));
				const expected = [...(first ?? []), ...rest.flatMap((each) => each.slice(1))].flat();
				expect(written, name).toHaveLength(expected.length);
				const off = Math.max(...expected.map((cm, n) => Math.abs((written[n] ?? NaN) - cm * 10)));
				expect(off, `${name} of row ${i + 1}`).toBeLessThan(AGREES_MM);
			}
		}
	});
});

// Printed with the method: the numbers of its demo body, to the last digit given.
describe('the printed check values', () => {
	const heron = draftOf(HERON);

	it('the shoulder point lies at (18.820, 5)', () => {
		expect((heron.points['S']?.x ?? NaN) / 10).toBeCloseTo(18.82, 3);
		expect(heron.points['S']?.y).toBe(50);
	});

	it.each([
		['shoulder', 12.681],
		['neck', 11.25],
		['armhole', 22.347],
		['hip', 20.721]
	])('the %s is %d cm long', (line, cm) => {
		expect((heron.lines[line]?.length ?? NaN) / 10).toBeCloseTo(cm, 3);
	});

	it.each([
		['shoulder', 12.681],
		['neck', 11.25],
		['armhole', 22.347],
		['hip', 20.721]
	])('worked by hand the %s is %d cm long', (line, cm) => {
		expect(handFront(HERON).lengths[line]).toBeCloseTo(cm, 3);
	});

	it.each([
		['L', 26.326, 26.694],
		['R', 25.996, 29.795],
		['Z', 26.495, 28.28]
	])('%s lies at (%d, %d)', (point, across, down) => {
		expect((heron.points[point]?.x ?? NaN) / 10).toBeCloseTo(across, 3);
		expect(Math.abs((heron.points[point]?.y ?? NaN) / 10 - down)).toBeLessThanOrEqual(0.000_501);
	});

	it('its side with the dart folded is 20.317 long', () => {
		const { sideAbove, sideBelow } = heron.lines;
		expect(((sideAbove?.length ?? NaN) + (sideBelow?.length ?? NaN)) / 10).toBeCloseTo(20.317, 3);
	});

	// Common practice, no source.
	it.each([
		[39, 7.5, 8.5],
		[36, 7, 8]
	])('a neck of %d is %d wide and, in front, %d deep', (neck, wide, deep) => {
		const { points } = draftOf({ ...HERON, neck });
		expect(points['N']).toEqual({ x: wide * 10, y: 0 });
		expect(points['C']).toEqual({ x: 0, y: deep * 10 });
	});
});

/**
 * The dart's outline is part of it. A bust point above the armhole level is left out here: where it lies
 * far out too, the upper leg can run into the armhole, and the method's text has no rule against it.
 */
describe('outlines', () => {
	it('none of these crosses itself where the bust point lies at or below the armhole level', () => {
		const looked = { withDart: 0, without: 0 };
		for (const [i, numbers] of BODIES.entries()) {
			const hand = WORKED[i];
			if (hand?.odds.length !== 0) continue;
			const draft = draftOf(numbers);
			const [A, B] = [draft.points['A'], draft.points['B']];
			if (!A || !B || B.y < A.y) continue;
			const outline = outlineOf(METHOD, draft);
			expect(outline).toHaveLength(hand.hasDart ? 12 : 9);
			expect(outline && selfCrossings(outline), JSON.stringify(numbers)).toEqual([]);
			looked[hand.hasDart ? 'withDart' : 'without'] += 1;
		}
		expect(looked.withDart).toBeGreaterThan(300);
		expect(looked.without).toBeGreaterThan(100);
	});

	it('the check for crossings sees a mouth that runs into the armhole', () => {
		const draft = draftOf(HERON);
		const mouth = draft.lines['mouth'];
		if (!mouth) throw new Error('there is no dart');
		const [{ from }, last] = mouth.path;
		const peak = { ...from, x: 180, y: 150 };
		const path = [
			{ kind: 'straight', from, to: peak },
			{ kind: 'straight', from: peak, to: last?.to }
		];
		const moved = { ...draft, lines: { ...draft.lines, mouth: { ...mouth, path } } } as never;
		const outline = outlineOf(METHOD, moved);
		expect(outline && selfCrossings(outline).length).toBeGreaterThan(0);
	});
});
