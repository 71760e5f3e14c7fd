import { ruleWords } from '#shared/bad-input.ts';
import { englishIn } from '#shared/speech/english-for-now.ts';
import { mm, printNumber } from '#shared/units.ts';
import type { StepReport, SubmissionReport } from '#checker/check-submission.ts';
import type { Method } from '#drafting/method.ts';
import type { ReadPlacements } from './placements.ts';

/** Decimals of a distance in millimetres: finer than a pencil line by far. */
const DIGITS = 3;

/** Why a step was not judged, where it was handed in and was not. */
const because = ({ step, verdict }: StepReport, unreadable: ReadPlacements['unreadable']): object => {
	if (verdict.answer !== 'not-valid' && verdict.answer !== 'our-fault') return {};
	const problem = unreadable[step];
	const speech = englishIn('mm');
	return { because: problem ? ruleWords(problem, speech) : speech.tell(verdict.because) };
};

const stepJson = (report: StepReport, unreadable: ReadPlacements['unreadable']): object => {
	const { step, verdict, offBy, followThrough, note, alternatives, mark } = report;
	return {
		step,
		verdict: verdict.answer,
		offBy: offBy === undefined ? null : Number(offBy.toFixed(DIGITS)),
		followThrough,
		note,
		alternatives,
		mark,
		...because(report, unreadable)
	};
};

/**
 * A report as it is printed: a row for every step, in millimetres, and the total. `unreadable` says, by
 * step, why what was typed could not be read.
 */
export const reportJson = (
	{ steps, total }: SubmissionReport,
	unreadable: ReadPlacements['unreadable'] = {}
): object => ({ steps: steps.map((step) => stepJson(step, unreadable)), total });

/** A report for reading. */
export const reportTable = ({ steps, total }: SubmissionReport, method: Method, body: string): string => {
	const rows = steps.map(({ step, verdict, offBy, followThrough, note, alternatives, mark }) => {
		const off = offBy === undefined ? '' : `${printNumber(mm(offBy), 'mm')} mm off`;
		const why = verdict.answer === 'wrong' ? [note, ...alternatives].join(' or ') : '';
		const from = followThrough ? 'from own earlier marks' : '';
		return `${step.padEnd(14)}${verdict.answer.padEnd(12)}${off.padEnd(14)}${mark.toFixed(2).padEnd(6)}${why}${from}`.trimEnd();
	});
	const { mark, outOf, mistakes, consequences } = total;
	return [
		`${method.name} for ${body}`,
		...rows,
		`${mark.toFixed(2)} of ${String(outOf)}; mistakes: ${String(mistakes)}, consequences: ${String(consequences)}`,
		''
	].join('\n');
};
