import { warned } from '../drafting/small-method.ts';
import { describe, expect, it } from 'vitest';
import { readBody } from '#shared/body.ts';
import { evaluate, outlineOf, type Draft } from '#drafting/evaluate.ts';
import { selfCrossings } from '#geometry/kernel/crossings.ts';
import { frontBlock } from '../drafting/lesson-method.ts';
import { blockSide } from './block-seams.ts';
import { handFront, type HandFront } from './front-block.ts';
import { surveyFigures, surveyRows, type Figure } from './survey-bodies.ts';

const METHOD = frontBlock();
/** The ease of the bust, the waist and the hip. */
const EASES_CM = { U: 8, W1: 4, J: 6 } as const;
const AGREES_MM = 0.01;

interface Drawn {
	readonly figure: Figure;
	/** Whether its side seams agree. */
	readonly agrees: boolean;
	readonly draft: Draft;
	readonly hand: HandFront;
}

const WORKED = surveyFigures().map((figure) => ({
	figure,
	evaluation: evaluate(METHOD, readBody({ ...figure })),
	hand: handFront({ ...figure })
}));
const drafted: readonly Drawn[] = WORKED.flatMap(({ figure, evaluation, hand }) =>
	evaluation.kind === 'drafted'
		? [
				{
					figure,
					draft: evaluation.draft,
					hand,
					agrees: blockSide(evaluation.draft, readBody({ ...figure })).within
				}
			]
		: []
);

const lengthOf = ({ lines }: Draft, name: string): number => lines[name]?.length ?? NaN;

describe('the front of the 300 women of the survey', () => {
	it('300 are drafted: 177 with a dart and 123 without; 82 are warned of a short front, none of the side seam', () => {
		const count = (is: (each: Drawn) => boolean): number => drafted.filter(is).length;
		const warnedOf = (words: RegExp) => count(({ draft }) => warned(draft).some((each) => words.test(each)));
		expect(WORKED).toHaveLength(300);
		expect(drafted).toHaveLength(300);
		expect(count(({ draft }) => 'D1' in draft.points)).toBe(177);
		expect(warnedOf(/^the front length and the back length: the front is shorter/)).toBe(82);
		expect(count(({ agrees }) => !agrees)).toBe(0);
	});

	it('are refused only where two measurements are at odds, worked again by hand', () => {
		for (const { figure, evaluation, hand } of WORKED) {
			const odds =
				evaluation.kind === 'refused' ? evaluation.refusals.map((each) => each.odds.join(' ')) : [];
			expect([...new Set(odds)].sort(), JSON.stringify(figure)).toEqual([...hand.odds].sort());
		}
	});

	it('are warned where the front is short or the side seams do not agree, and nowhere else', () => {
		for (const { figure, draft, hand, agrees } of drafted) {
			const told = [...warned(draft).map(() => 'shorter'), ...(agrees ? [] : ['sideSeam'])];
			expect(told, JSON.stringify(figure)).toEqual(hand.warnings);
		}
	});

	it('every point lies where it does by hand, to 0.01 mm', () => {
		for (const { figure, draft, hand } of drafted) {
			expect(Object.keys(draft.points).sort()).toEqual(Object.keys(hand.points).sort());
			for (const [name, [x, y]] of Object.entries(hand.points)) {
				const point = draft.points[name];
				const off = Math.hypot((point?.x ?? NaN) - x * 10, (point?.y ?? NaN) - y * 10);
				expect(off, `${name} of ${JSON.stringify(figure)}`).toBeLessThan(AGREES_MM);
			}
		}
	});

	it('no outline crosses itself, the dart’s included', () => {
		for (const { figure, draft } of drafted) {
			const outline = outlineOf(METHOD, draft);
			if (!outline) throw new Error('no outline');
			const { Z: tip } = draft.points;
			const through = outline.some(({ to }) => tip !== undefined && to.x === tip.x && to.y === tip.y);
			expect(through, 'the outline runs through the peak of the dart’s mouth').toBe('D1' in draft.points);
			expect(selfCrossings(outline), JSON.stringify(figure)).toEqual([]);
		}
	});

	it('finished girths are the body’s and the ease, front and back together', () => {
		for (const { figure, draft } of drafted) {
			for (const [point, girth] of [
				['U', figure.bust],
				['W1', figure.waist],
				['J', figure.hip]
			] as const) {
				const back = draft.uses['back']?.points[point]?.x ?? NaN;
				const finished = 2 * (draft.points[point]?.x ?? NaN) + 2 * back;
				expect(Math.abs(finished - 10 * (girth + EASES_CM[point]))).toBeLessThan(1e-6);
			}
		}
	});

	it('the two shoulders are one length, and so are the two legs of the dart', () => {
		for (const { draft } of drafted) {
			const back = draft.uses['back'];
			if (!back) throw new Error('there is no back');
			expect(Math.abs(lengthOf(draft, 'shoulder') - lengthOf(back, 'shoulder'))).toBeLessThan(1e-9);
			if (!('D1' in draft.points)) continue;
			expect(Math.abs(lengthOf(draft, 'dartUpper') - lengthOf(draft, 'dartLower'))).toBeLessThan(1e-9);
		}
	});
});

/**
 * What stands in for the front length. Side neck to bust point, and on from the bust level to the waist, would go over
 * the bust; but the survey has no height of the bust point, so the second part cannot be had from it. The front from the
 * hollow of the neck, with the depth of the block's own front neck, was measured but for that depth. No tape is shorter
 * than the heights that it spans, and the waist lies below the bust: a stand-in that breaks either is none.
 */
describe('what stands in for the front length', () => {
	const rows = surveyRows('women');

	it('the survey has no height of the bust', () => {
		const heights = Object.keys(rows[0] ?? {}).filter((column) => /height/.test(column));
		expect(heights).toEqual([
			'waist_height_natural',
			'crotch_height',
			'cervicale_height',
			'side_neck_height',
			'acromion_height'
		]);
	});

	it('is longer than side neck to waist is high, and than side neck to bust point, for every woman', () => {
		for (const [i, { frontLength, bustHeight }] of surveyFigures().entries()) {
			const high = Number(rows[i]?.['side_neck_height']) - Number(rows[i]?.['waist_height_natural']);
			expect(frontLength - high, `row ${i + 1}`).toBeGreaterThan(1);
			expect(frontLength - bustHeight, `row ${i + 1}`).toBeGreaterThan(3);
		}
	});
});
