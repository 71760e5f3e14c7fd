import { describe, expect, it } from 'vitest';
import { readBody } from '#shared/body.ts';
import { evaluate, outlineOf, type Draft } from '#drafting/evaluate.ts';
import { selfCrossings } from '#geometry/kernel/crossings.ts';
import { backBlock } from '../drafting/lesson-method.ts';
import { handBack } from './back-block.ts';
import { surveyFigures, type Figure } from './survey-bodies.ts';

const METHOD = backBlock();
/** The ease of the bust, the waist and the hip. */
const EASES_CM = { U: 8, W1: 4, J: 6 } as const;
const FIGURES = surveyFigures();
const WORKED = FIGURES.map((figure) => ({ figure, evaluation: evaluate(METHOD, readBody({ ...figure })) }));

const drafted: { readonly figure: Figure; readonly draft: Draft }[] = WORKED.flatMap(
	({ figure, evaluation }) => (evaluation.kind === 'drafted' ? [{ figure, draft: evaluation.draft }] : [])
);

describe('the 300 women of the survey', () => {
	it('are all read, and all can be drafted', () => {
		expect(FIGURES).toHaveLength(300);
		expect(drafted).toHaveLength(300);
	});

	it('are refused only where two measurements are at odds, worked again by hand', () => {
		for (const { figure, evaluation } of WORKED) {
			const odds =
				evaluation.kind === 'refused' ? evaluation.refusals.map((each) => each.odds.join(' ')) : [];
			expect(odds, JSON.stringify(figure)).toEqual(handBack({ ...figure }).odds);
		}
	});

	it('no outline crosses itself', () => {
		for (const { figure, draft } of drafted) {
			const outline = outlineOf(METHOD, draft);
			if (!outline) throw new Error('no outline');
			expect(selfCrossings(outline), JSON.stringify(figure)).toEqual([]);
		}
	});

	it('finished girths are the body’s and the ease', () => {
		for (const { figure, draft } of drafted) {
			for (const [point, girth] of [
				['U', figure.bust],
				['W1', figure.waist],
				['J', figure.hip]
			] as const) {
				const finished = 4 * (draft.points[point]?.x ?? NaN);
				expect(Math.abs(finished - 10 * (girth + EASES_CM[point]))).toBeLessThan(1e-6);
			}
		}
	});

	it('the check for crossings sees a tangled outline', () => {
		const [sound] = drafted;
		if (!sound) throw new Error('nobody was drafted');
		const { points } = sound.draft;
		// A draft whose side seam ends across the centre line, as no body has it.
		const tangled = { ...sound.draft, lines: { ...sound.draft.lines } };
		const { U, H } = points;
		if (!U || !H) throw new Error('points are missing');
		const V = { ...H, x: -50 } as typeof H;
		tangled.lines['side'] = {
			...sound.draft.lines['side'],
			path: [{ kind: 'straight', from: U, to: V }]
		} as never;
		const hip = sound.draft.lines['hip']?.path[0];
		tangled.lines['hip'] = { ...sound.draft.lines['hip'], path: [{ ...hip, from: V }] } as never;
		const outline = outlineOf(METHOD, tangled);
		expect(outline && selfCrossings(outline).length).toBeGreaterThan(0);
	});
});
