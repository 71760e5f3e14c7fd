import type { Body } from '#shared/body.ts';
import { USUAL_POLICY, type Policy } from '#shared/policy.ts';
import { TOLERANCES, type Tolerances } from '#shared/tolerances.ts';
import type { Mm } from '#shared/units.ts';
import type { Verdict } from '#shared/verdict.ts';
import type { Draft } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import { isGiven } from '#drafting/steps/kinds.ts';
import { attemptMark, roundMark, type Attempt } from './marks.ts';
import type { Diagnosis } from './missteps/misstep.ts';
import { misstepIn } from './missteps/of-work.ts';
import type { DoubleVerdict } from './own-draft.ts';
import { judged, type Answer, type Fault, type Judged, type LearnersWork } from './work.ts';

/** What is said of one step of work that was handed in. */
export interface StepReport extends DoubleVerdict {
	readonly step: string;
	/** How far off a point lies, or how far a line strays; undefined where nothing could be measured. */
	readonly offBy: Mm | undefined;
	/** A stable note without numbers: the misstep where one explains the place, else what was found wrong. */
	readonly note: string;
	/** Other missteps that explain it as well. */
	readonly alternatives: readonly string[];
	readonly mark: number;
}

/** All that is said of work that was handed in. */
export interface SubmissionReport {
	readonly steps: readonly StepReport[];
	readonly total: {
		readonly mark: number;
		readonly outOf: number;
		readonly mistakes: number;
		/** Steps that the learner's own earlier marks leave no place, where there are any: they are not asked for. */
		readonly excused?: number;
		/** Steps that are to be measured again, where there are any: they earn nothing and take nothing, as what is not done. */
		readonly cannotTell?: number;
		/** Steps that are right only from the learner's own earlier points. */
		readonly consequences: number;
	};
	readonly faults: readonly Fault[];
	/** The steps that something was handed in for and that are not asked for: this body's draft has none, or they are given. */
	readonly passedOver: readonly string[];
	/** Which mistake would have led to a step as it was handed in. */
	readonly diagnosis: (step: string) => Diagnosis;
}

/** The size of the worst thing found. */
const offByOf = (verdict: Verdict): Mm | undefined => {
	if (!('findings' in verdict)) return undefined;
	const sizes = verdict.findings.flatMap((finding) =>
		'offBy' in finding ? [finding.offBy] : 'away' in finding ? [finding.away] : []
	);
	return sizes.reduce<Mm | undefined>(
		(worst, size) => (worst === undefined || size > worst ? size : worst),
		undefined
	);
};

/** The notes of a step: of a wrong one its misstep's, with those that explain it as well; else what was found. */
export const notesOf = (verdict: Verdict, diagnosis: Diagnosis): readonly string[] => {
	if (verdict.answer !== 'wrong') return [verdict.answer];
	if (diagnosis.kind === 'certain') return [diagnosis.misstep.note];
	if (diagnosis.kind === 'either') return diagnosis.missteps.map(({ note }) => note);
	return verdict.findings
		.filter(({ within }) => !within)
		.map(({ note }) => note)
		.slice(0, 1);
};

/** The steps that are asked for: those of this body's draft that have a place or a line; lines only where any line was handed in. */
const askedSteps = (method: Method, truth: Draft, placements: Readonly<Record<string, unknown>>) => {
	const lines = Object.keys(placements).some((name) => name in truth.lines);
	return method.steps.filter(
		(step) => !isGiven(step) && (step.name in truth.points || (lines && step.name in truth.lines))
	);
};

/** Placements as they are handed in on paper: all are to be judged, and whatever is wrong was drawn on from. */
export const asHandedIn = (
	method: Method,
	body: Body,
	truth: Draft,
	placements: Readonly<Record<string, unknown>>,
	allowed: Tolerances = TOLERANCES.normal,
	uses: LearnersWork['uses'] = {}
): LearnersWork => {
	const entries = Object.entries(placements).map(([name, placement]): [string, Answer] => [
		name,
		{ placement, checked: true, kept: true }
	]);
	return { method, body, truth, entries: Object.fromEntries(entries), marks: 'pencilled', allowed, uses };
};

/** What each step had cost before it was answered as it stands. */
type Cost = (step: string) => Pick<Attempt, 'wrongBefore' | 'help'>;

/** What is said of some steps of a learner's work. */
export const stepReports = (
	work: LearnersWork,
	found: Judged,
	steps: readonly string[],
	policy: Policy,
	cost: Cost
): readonly StepReport[] =>
	steps.map((step): StepReport => {
		const double = {
			verdict: found.verdict(step),
			followThrough: found.verdicts[step]?.followThrough ?? false
		};
		const [note = '', ...alternatives] = notesOf(double.verdict, misstepIn(work, found, step));
		const mark = attemptMark({ ...double, ...cost(step) }, policy);
		return { step, ...double, offBy: offByOf(double.verdict), note, alternatives, mark };
	});

/** What some steps come to together. */
export const totalOf = (steps: readonly StepReport[]): SubmissionReport['total'] => {
	const count = (answer: Verdict['answer']): number =>
		steps.filter(({ verdict }) => verdict.answer === answer).length;
	const [excused, cannotTell] = [count('excused'), count('cannot-tell')];
	return {
		mark: roundMark(steps.reduce((sum, { mark }) => sum + mark, 0)),
		outOf: steps.length - excused,
		mistakes: count('wrong'),
		...(excused > 0 ? { excused } : {}),
		...(cannotTell > 0 ? { cannotTell } : {}),
		consequences: steps.filter(({ followThrough }) => followThrough).length
	};
};

/**
 * Checks work that was handed in on paper, whole or in part. `truth` is the body's computed draft, `uses` are the
 * learner's own drafts that it leans on, as far as they were handed in too. Never throws.
 */
export const checkSubmission = (
	method: Method,
	body: Body,
	truth: Draft,
	placements: Readonly<Record<string, unknown>>,
	policy: Policy = USUAL_POLICY,
	uses: LearnersWork['uses'] = {}
): SubmissionReport => {
	const work = asHandedIn(method, body, truth, placements, TOLERANCES[policy.level], uses);
	const found = judged(work);
	const asked = askedSteps(method, truth, placements).map(({ name }) => name);
	const steps = stepReports(work, found, asked, policy, () => ({ wrongBefore: 0, help: 0 }));
	return {
		steps,
		faults: found.faults,
		passedOver: Object.keys(placements).filter((name) => steps.every(({ step }) => step !== name)),
		total: totalOf(steps),
		diagnosis: (step) => misstepIn(work, found, step)
	};
};
