import { describe, expect, it } from 'vitest';
import type { Draft } from '#drafting/evaluate.ts';
import { DEMO, randomWearers, strained, surveyWithChoices } from './dress-bodies.ts';
import { handBodice, type HandDraft } from './dress-hand.ts';
import { dartBeyond, handOdds } from './dress-odds.ts';
import { dressFor } from './dress-pattern.ts';
import { handFacing, handSkirt, handStrips } from './dress-skirt.ts';

/** The goal of the blocks' text, kept for the dress: two people who work it agree to a hundredth of a millimetre. */
const AGREES_MM = 0.01;
/**
 * Bodies with allowances of every size; those that are refused say nothing here. With neither a hollow nor an armhole dart
 * the corner of the upper armhole is the shoulder point itself: on the edge between the curve's two rules, where noise decides.
 */
const RANDOM = surveyWithChoices(1, 20_261_125)
	.filter((_, i) => i % 3 === 0)
	.filter(({ numbers: { hollowFront, armholeDart } }) => hollowFront !== 0 || armholeDart !== 0)
	// A shoulder that falls further, in a widened neckline, leaves the neck curve a bend of no radius: the line beside it has a cusp.
	.filter(
		({ numbers: { shoulderDropBack = 0, shoulderDropFront = 0 } }) =>
			shoulderDropBack <= 6 && shoulderDropFront <= 7
	);
/** A hip so far out and so near below the waist that no top of a skirt would be short enough. */
const FAR_HIP = { name: 'far hip', numbers: { ...DEMO[0]?.numbers, hip: 250, waistToHip: 10 } };
/** A hip level deeper than the shortest skirt is long. */
const SHORT_SKIRT = {
	name: 'short skirt',
	numbers: { ...DEMO[0]?.numbers, waistToHip: 29, skirtLength: 30 }
};
/** Bodies from what people have to beyond it: most are refused. */
const BEYOND = [...randomWearers(120, 7), ...strained.filter((_, i) => i % 8 === 0), FAR_HIP, SHORT_SKIRT];

const WORKED = [...DEMO, ...RANDOM].flatMap(({ name, numbers }) => {
	const work = dressFor(numbers);
	if (work.kind === 'refused') return [];
	const bodice = handBodice(numbers);
	const skirt = handSkirt(numbers, bodice?.front.lengths['waist'] ?? NaN);
	if (!bodice || !skirt) throw new Error(`${name} was drafted, but has no dress by hand`);
	return [{ name, numbers, pattern: work.pattern, bodice, skirt }];
});

/** Each place and length that was worked by hand, against the program's. */
const agrees = (name: string, draft: Draft | undefined, hand: HandDraft): void => {
	for (const [point, [x, y]] of Object.entries(hand.points)) {
		const found = draft?.points[point];
		const off = Math.hypot((found?.x ?? NaN) - x * 10, (found?.y ?? NaN) - y * 10);
		expect(off, `${point} of ${name}`).toBeLessThan(AGREES_MM);
	}
	for (const [line, length] of Object.entries(hand.lengths)) {
		const off = Math.abs((draft?.lines[line]?.length ?? NaN) - length * 10);
		expect(off, `${line} of ${name}`).toBeLessThan(AGREES_MM);
	}
};

/** Points of the blocks, which have tests of their own. */
const TRACED = ['N', 'S', 'C', 'U', 'V', 'W', 'T', 'Z'];

describe('the course dress, worked by hand', () => {
	it('all demo bodies and at least 50 others are drafted, some with and some without a side dart', () => {
		expect(WORKED.length).toBeGreaterThanOrEqual(DEMO.length + 50);
		const darts = WORKED.filter(({ bodice }) => 'E' in bodice.front.points).length;
		expect(darts).toBeGreaterThan(20);
		expect(WORKED.length - darts).toBeGreaterThan(10);
	});

	it('has the same front and back bodice', () => {
		for (const { name, pattern, bodice } of WORKED) {
			agrees(`${name}'s front`, pattern.drafts['front'], bodice.front);
			agrees(`${name}'s back`, pattern.drafts['back'], bodice.back);
		}
	});

	it('no point of the bodices and the skirt is left unworked', () => {
		for (const { pattern, bodice, skirt } of WORKED)
			for (const [key, hand] of [
				['front', bodice.front],
				['back', bodice.back],
				['skirt', skirt]
			] as const)
				for (const point of Object.keys(pattern.drafts[key]?.points ?? {}))
					expect([...Object.keys(hand.points), ...TRACED]).toContain(point);
	});

	it('has the same facing and the same skirt', () => {
		for (const { name, numbers, pattern, bodice, skirt } of WORKED) {
			agrees(`${name}'s facing`, pattern.drafts['facing'], handFacing(numbers, bodice));
			agrees(`${name}'s skirt`, pattern.drafts['skirt'], skirt);
		}
	});

	it('has the same casing and binding, and the same elastic and gathering', () => {
		for (const { name, numbers, pattern, bodice } of WORKED) {
			const strips = handStrips(numbers, bodice);
			const told = Object.fromEntries(pattern.numbers.map((each) => [each.name, each.value]));
			for (const key of ['elastic', 'elasticCut', 'armhole', 'binding'] as const)
				expect(Math.abs((told[key] ?? NaN) - strips[key] * 10), `${key} of ${name}`).toBeLessThan(AGREES_MM);
			expect(Math.abs((told['gathering'] ?? NaN) - strips.gathering), name).toBeLessThan(1e-4);
			const upper = pattern.drafts['casing']?.lines['upper']?.length ?? NaN;
			expect(Math.abs(upper - strips.casing * 10), name).toBeLessThan(AGREES_MM);
		}
	});

	it('is refused only where two measurements are at odds, and for the same ones', () => {
		const refused = new Set<string>();
		for (const { name, numbers } of BEYOND) {
			const work = dressFor(numbers);
			const odds = (work.kind === 'refused' ? work.refusals : [])
				.filter(
					({ because }) =>
						!dartBeyond(numbers) || typeof because !== 'string' || !/at the side must lie/.test(because)
				)
				.map((each) => each.odds.join(' '));
			expect([...new Set(odds)].sort(), `${name}: ${JSON.stringify(numbers)}`).toEqual(
				[...new Set(handOdds(numbers))].sort()
			);
			for (const pair of odds) refused.add(pair);
		}
		expect([...refused].sort()).toEqual([
			'bust shoulderWidth',
			'bust waist',
			'bustHeight frontLength',
			'bustSpan bust',
			'bustSpan shoulderWidth',
			'bustSpan waist',
			'frontLength backLength',
			'neck bustHeight',
			'neck shoulderWidth',
			'shoulderWidth backLength',
			'waist hip',
			'waistToHip hip'
		]);
	});
});
