import { describe, expect, it } from 'vitest';
import { readBody } from '#shared/body.ts';
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import type { Placement } from '#shared/placement.ts';
import { checkSubmission } from '#checker/check-submission.ts';
import { verdictWords } from '#checker/words.ts';
import { english, speechFor } from '../support/speech.ts';
import { HERON_BACK, marked, ruled, verdictOn } from './drafts.ts';

/** A of Heron lies at (0, 222); a point may lie 2 mm off. */
const measured = (across: number, error: number): Placement => ({ kind: 'point', at: [across, 222], error });
const answer = (across: number, error: number): string =>
	verdictOn(HERON_BACK, 'A', measured(across, error)).answer;

describe('a place that was measured', () => {
	it('is right only where it is right wherever it may truly lie', () => {
		expect(answer(0, 2)).toBe('right');
		expect(answer(1, 1)).toBe('right');
		expect(answer(1, 1.1)).toBe('cannot-tell');
		expect(answer(0, 2.1)).toBe('cannot-tell');
	});

	it('is wrong only where it is wrong wherever it may truly lie', () => {
		expect(answer(3.1, 1)).toBe('wrong');
		expect(answer(3, 1)).toBe('cannot-tell');
		expect(answer(8, 6.5)).toBe('cannot-tell');
		expect(answer(8, 5.5)).toBe('wrong');
	});

	it('never has the wrong one of two answers for a true place within its error', () => {
		for (let off = 0; off <= 12; off += 0.25)
			for (const error of [0.5, 1, 2, 3, 6])
				for (const truly of [Math.max(0, off - error), off + error]) {
					const said = answer(off, error);
					if (said !== 'cannot-tell')
						expect(said, `${off} ± ${error}, truly ${truly}`).toBe(truly <= 2 ? 'right' : 'wrong');
				}
	});

	it('is judged as ever where its error is nothing', () => {
		expect(answer(2, 0)).toBe('right');
		expect(answer(2.1, 0)).toBe('wrong');
	});

	it('may be a line: its ends, course and length may each be off by as much', () => {
		const level = (down: number, error: number): string =>
			verdictOn(HERON_BACK, 'waistLevel', { ...ruled([0, down], [205, down]), error }).answer;
		expect(verdictOn(HERON_BACK, 'waistLevel', ruled([0, 425], [205, 425])).answer).toBe('right');
		expect(level(425, 1)).toBe('right');
		expect(level(426.5, 1)).toBe('cannot-tell');
		expect(level(430, 1)).toBe('wrong');
	});

	it('must have an error that is a length', () => {
		for (const error of [-1, NaN, '1', 5001])
			expect(verdictOn(HERON_BACK, 'A', { ...marked(0, 222), error }).answer).toBe('not-valid');
	});

	it('is told as measured, with what is left open', () => {
		const say = (across: number, error: number, speech = english) =>
			verdictWords(verdictOn(HERON_BACK, 'A', measured(across, error)), { name: 'A' }, speech);
		expect(say(2.6, 1)).toEqual({
			headline: 'It cannot be told whether A is right.',
			sentences: [
				'It lies 2.6 mm too far out. The measuring leaves 1 mm open, too much to tell. Measure it again: it costs nothing.'
			]
		});
		expect(say(1.5, 1).sentences).toEqual([
			'As it was measured: Within 1.5 mm. The measuring leaves 1 mm open, too much to tell. Measure it again: it costs nothing.'
		]);
		expect(say(2.6, 1, speechFor('es')).headline).toBe('No se puede saber si A está bien.');
	});
});

describe('work of which some was measured', () => {
	const handIn = (placements: Readonly<Record<string, unknown>>) =>
		checkSubmission(HERON_BACK.method, DEMO_BODIES[0]?.body ?? readBody({}), HERON_BACK.draft, placements);
	const stepOf = (report: ReturnType<typeof handIn>, name: string) =>
		report.steps.find(({ step }) => step === name);

	it('earns nothing and loses nothing for what cannot be told, and counts it', () => {
		const report = handIn({ O: marked(0, 0), A: measured(1.5, 1) });
		expect(stepOf(report, 'A')).toMatchObject({
			verdict: { answer: 'cannot-tell', error: 1 },
			...{ mark: 0, note: 'cannot-tell', followThrough: false }
		});
		expect(report.total).toMatchObject({ mistakes: 0, cannotTell: 1 });
		const without = handIn({ O: marked(0, 0) });
		expect(report.total.mark).toBe(without.total.mark);
		expect(report.total.outOf).toBe(without.total.outOf);
		expect(without.total).not.toHaveProperty('cannotTell');
	});

	it('counts the error of what a step is worked from with its own', () => {
		// W of Heron lies at (0, 425), and H as far below W as the hip.
		const hip = 425 + 205;
		const low = (error: number, own: number) =>
			stepOf(
				handIn({
					W: { kind: 'point', at: [0, 445], error },
					H: { kind: 'point', at: [0, hip + 20], error: own }
				}),
				'H'
			);
		expect(low(0.5, 0.5)).toMatchObject({ verdict: { answer: 'right' }, followThrough: true });
		expect(low(1.8, 1)).toMatchObject({ verdict: { answer: 'cannot-tell' }, followThrough: false });
	});
});
