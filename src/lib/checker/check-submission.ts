import type { Body } from '#shared/body.ts';
import type { Placement } from '#shared/placement.ts';
import { USUAL_POLICY, type Policy } from '#shared/policy.ts';
import { TOLERANCES } from '#shared/tolerances.ts';
import type { Mm } from '#shared/units.ts';
import type { Verdict } from '#shared/verdict.ts';
import type { Draft } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import { isGiven } from '#drafting/steps/kinds.ts';
import type { Step } from '#drafting/steps/step-rules.ts';
import { attemptMark, roundMark } from './marks.ts';
import { diagnose } from './missteps/diagnose.ts';
import { OwnDraft, readPlacement, type DoubleVerdict } from './own-draft.ts';

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
		/** Steps that are right only from the learner's own earlier points. */
		readonly consequences: number;
	};
}

/** The size of the worst thing found. */
const offByOf = (verdict: Verdict): Mm | undefined => {
	if (verdict.answer !== 'right' && verdict.answer !== 'wrong') return undefined;
	const sizes = verdict.findings.flatMap((finding) =>
		'offBy' in finding ? [finding.offBy] : 'away' in finding ? [finding.away] : []
	);
	return sizes.reduce<Mm | undefined>(
		(worst, size) => (worst === undefined || size > worst ? size : worst),
		undefined
	);
};

/** The notes of a wrong step: its misstep's, with those that explain it as well; else what was found. */
const notesOf = (verdict: Verdict, missteps: readonly string[]): readonly string[] => {
	if (verdict.answer !== 'wrong') return [verdict.answer];
	const found = verdict.findings.filter(({ within }) => !within).map(({ note }) => note);
	return missteps.length > 0 ? missteps : found.slice(0, 1);
};

const misstepsOf = (
	method: Method,
	step: Step,
	body: Body,
	own: OwnDraft,
	truth: Draft,
	placed: Placement
): readonly string[] => {
	const bases = own.leansOnOwn(step) ? [truth, own.drafted] : [truth];
	for (const base of bases) {
		const diagnosis = diagnose(method, step.name, body, base, placed);
		if (diagnosis.kind === 'certain') return [diagnosis.misstep.note];
		if (diagnosis.kind === 'either') return diagnosis.missteps.map(({ note }) => note);
	}
	return [];
};

/** The steps that are judged: those of this body's draft that have a place or a line; lines only where any line was handed in. */
const judgedSteps = (
	method: Method,
	truth: Draft,
	placements: Readonly<Record<string, unknown>>
): readonly Step[] => {
	const lines = Object.keys(placements).some((name) => name in truth.lines);
	return method.steps.filter(
		(step) => !isGiven(step) && (step.name in truth.points || (lines && step.name in truth.lines))
	);
};

/**
 * Checks work that was handed in whole: every step against the true earlier points and against the
 * learner's own, so that one slip is one mistake. `truth` is the body's computed draft. Never throws.
 */
export const checkSubmission = (
	method: Method,
	body: Body,
	truth: Draft,
	placements: Readonly<Record<string, unknown>>,
	policy: Policy = USUAL_POLICY
): SubmissionReport => {
	const own = new OwnDraft(method, body, truth);
	const steps = judgedSteps(method, truth, placements).map((step): StepReport => {
		const placement = placements[step.name];
		const double = own.check(step, placement, TOLERANCES[policy.level]);
		const placed = readPlacement(placement);
		const isWrong = double.verdict.answer === 'wrong';
		const missteps = isWrong && placed ? misstepsOf(method, step, body, own, truth, placed) : [];
		const [note = '', ...alternatives] = notesOf(double.verdict, missteps);
		if (placed) own.keep(step, placed);
		const mark = attemptMark({ ...double, wrongBefore: 0, help: 0 }, policy);
		return { step: step.name, ...double, offBy: offByOf(double.verdict), note, alternatives, mark };
	});
	return {
		steps,
		total: {
			mark: roundMark(steps.reduce((sum, { mark }) => sum + mark, 0)),
			outOf: steps.length,
			mistakes: steps.filter(({ verdict }) => verdict.answer === 'wrong').length,
			consequences: steps.filter(({ followThrough }) => followThrough).length
		}
	};
};
