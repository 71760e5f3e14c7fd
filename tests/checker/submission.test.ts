import { describe, expect, it } from 'vitest';
import { policySchema } from '#shared/policy-shape.ts';
import { USUAL_POLICY } from '#shared/policy.ts';
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import { readBody } from '#shared/body.ts';
import { checkSubmission, type SubmissionReport } from '#checker/check-submission.ts';
import { attemptMark, roundMark, type Attempt } from '#checker/marks.ts';
import { backBlock, frontBlock } from '../drafting/lesson-method.ts';
import { draftOf } from '../drafting/small-method.ts';

const BACK = backBlock();
const FRONT = frontBlock();
const HERON = DEMO_BODIES[0]?.body ?? readBody({});
const TRUTH = draftOf(BACK, HERON);

/** Heron's back as worked by hand from the rules, in millimetres (common practice, no source). */
const RIGHT: Readonly<Record<string, readonly [number, number]>> = {
	A: [0, 222],
	W: [0, 425],
	H: [0, 630],
	N: [71.7, 0],
	C: [0, 25],
	K: [192, 0],
	S: [192, 40],
	Q: [192, 222],
	P: [192, 131],
	M: [182, 131],
	U: [260, 222],
	W1: [205, 425],
	W2: [260, 425],
	V: [241.7, 425],
	J: [270, 630],
	G: [96, 425],
	G1: [77.7, 425],
	G2: [114.3, 425],
	G3: [96, 242],
	G4: [96, 561.7]
};

const point = (at: readonly [number, number]): unknown => ({ kind: 'point', at });
const handIn = (
	changes: Readonly<Record<string, readonly [number, number]>>,
	policy = USUAL_POLICY
): SubmissionReport =>
	checkSubmission(
		BACK,
		HERON,
		TRUTH,
		Object.fromEntries(Object.entries({ ...RIGHT, ...changes }).map(([name, at]) => [name, point(at)])),
		policy
	);
const reportOf = (report: SubmissionReport, name: string) => {
	const step = report.steps.find((each) => each.step === name);
	if (!step) throw new Error(`no report of ${name}`);
	return step;
};

describe('work that was handed in whole', () => {
	it('is all right where every point is', () => {
		expect(handIn({}).total).toEqual({ mark: 20, outOf: 20, mistakes: 0, consequences: 0 });
	});

	it('counts an early slip once: what follows from it is right from the learner’s own points', () => {
		// A is 6 mm low, and all that is drawn from it: Q, the middle P of S-Q, the hollow M, the underarm U.
		const report = handIn({ A: [0, 228], Q: [192, 228], P: [192, 134], M: [182, 134], U: [260, 228] });
		expect(report.total).toEqual({ mark: 19, outOf: 20, mistakes: 1, consequences: 4 });
		expect(reportOf(report, 'A')).toMatchObject({
			verdict: { answer: 'wrong' },
			mark: 0,
			followThrough: false
		});
		expect(reportOf(report, 'A').offBy).toBeCloseTo(6, 9);
		for (const name of ['Q', 'P', 'M', 'U'])
			expect(reportOf(report, name)).toMatchObject({
				verdict: { answer: 'right' },
				followThrough: true,
				mark: 1
			});
	});

	it('takes the better of the two judgements: a later point at its true place is right as well', () => {
		const report = handIn({ A: [0, 228] });
		expect(report.total).toEqual({ mark: 19, outOf: 20, mistakes: 1, consequences: 0 });
	});

	it('excuses a point that an earlier one leaves no place: it is not asked for', () => {
		// With K 25 cm out the armhole corner would lie where the underarm is: bust and shoulder width would disagree.
		const report = handIn({ K: [250, 0], S: [250, 40], Q: [250, 222], P: [250, 131], M: [240, 131] });
		expect(reportOf(report, 'Q')).toMatchObject({ verdict: { answer: 'excused' }, followThrough: false });
		expect(report.total).toMatchObject({ outOf: 19, mistakes: 1, excused: 1 });
		expect(reportOf(report, 'S').followThrough).toBe(true);
	});

	it('pays follow-through in full, by half or not at all, as the policy says', () => {
		const slip = { W: [0, 435], H: [0, 640], W1: [205, 435], W2: [260, 435], V: [241.7, 435] } as const;
		const marks = (['full', 'half', 'none'] as const).map((followThrough) => {
			const report = handIn(slip, policySchema.parse({ followThrough }));
			return [reportOf(report, 'H').mark, reportOf(report, 'V').mark, report.total.mark];
		});
		// J is at its true depth, 10 mm above the learner's own H, and so is right as it is.
		expect(marks).toEqual([
			[1, 1, 19],
			[0.5, 0.5, 17],
			[0, 0, 15]
		]);
	});

	it('is as strict as the policy asks: 1, 2 or 4 mm', () => {
		const answers = (['strict', 'normal', 'beginner'] as const).map((level) =>
			[1.5, 3, 5].map(
				(off) => reportOf(handIn({ W: [0, 425 + off] }, policySchema.parse({ level })), 'W').verdict.answer
			)
		);
		expect(answers).toEqual([
			['wrong', 'wrong', 'wrong'],
			['right', 'wrong', 'wrong'],
			['right', 'right', 'wrong']
		]);
	});

	it('tells a step that is missing from one that is no placement, and judges the others', () => {
		const report = checkSubmission(BACK, HERON, TRUTH, {
			A: point([0, 222]),
			W: { kind: 'point', at: ['x', 1] }
		});
		expect(reportOf(report, 'A').verdict.answer).toBe('right');
		expect(reportOf(report, 'W').verdict.answer).toBe('not-valid');
		expect(reportOf(report, 'H')).toMatchObject({
			verdict: { answer: 'unfinished' },
			note: 'unfinished',
			mark: 0
		});
	});

	it('names the misstep of a wrong point', () => {
		// Half of the bust for a quarter: 48 and 2 are 50.
		expect(reportOf(handIn({ U: [500, 222] }), 'U').note).toBe('fraction:half-for-quarter');
	});

	it('asks a body without a dart for no dart', () => {
		const siskin = DEMO_BODIES.find(({ id }) => id === 'siskin')?.body ?? readBody({});
		const names = checkSubmission(FRONT, siskin, draftOf(FRONT, siskin), {}).steps.map(({ step }) => step);
		expect(names).not.toContain('D1');
		expect(names).toContain('T');
	});
});

describe('marks', () => {
	const right: Attempt = {
		verdict: { answer: 'right', findings: [] },
		followThrough: false,
		wrongBefore: 0,
		help: 0
	};

	it('lose less for help than for a wrong try', () => {
		expect(USUAL_POLICY.hintCost).toBeLessThan(USUAL_POLICY.wrongCost);
		expect(attemptMark({ ...right, help: 2 }, USUAL_POLICY)).toBe(0.9);
		expect(attemptMark({ ...right, wrongBefore: 3 }, USUAL_POLICY)).toBe(0.7);
	});

	it('are never below nothing, and nothing after the last try that counts', () => {
		expect(attemptMark({ ...right, wrongBefore: 30 }, USUAL_POLICY)).toBe(0);
		expect(attemptMark({ ...right, wrongBefore: 2 }, policySchema.parse({ attempts: 2, wrongCost: 0 }))).toBe(
			0
		);
		expect(attemptMark({ ...right, wrongBefore: 1 }, policySchema.parse({ attempts: 2, wrongCost: 0 }))).toBe(
			1
		);
	});

	it('are rounded in one place', () => {
		expect([0.125, 0.1 + 0.2, 1 / 3].map(roundMark)).toEqual([0.13, 0.3, 0.33]);
	});
});
