import { onOneLine, ruleWords } from '#shared/bad-input.ts';
import type { Speech } from '#shared/speech/speech.ts';
import { mm } from '#shared/units.ts';
import type { StepReport, SubmissionReport } from '#checker/check-submission.ts';
import type { Method } from '#drafting/method.ts';
import type { ReadPlacements } from './placements.ts';

/** Decimals of a distance in millimetres: finer than a pencil line by far. */
const DIGITS = 3;

/** Why a step was not judged, where it was handed in and was not. */
const because = (
	{ step, verdict }: StepReport,
	unreadable: ReadPlacements['unreadable'],
	speech: Speech
): object => {
	if (!('because' in verdict)) return {};
	const problem = unreadable[step];
	return { because: problem ? ruleWords(problem, speech) : speech.tell(verdict.because) };
};

const stepJson = (report: StepReport, unreadable: ReadPlacements['unreadable'], speech: Speech): object => {
	const { step, verdict, offBy, followThrough, note, alternatives, mark } = report;
	return {
		step,
		verdict: verdict.answer,
		offBy: offBy === undefined ? null : Number(offBy.toFixed(DIGITS)),
		followThrough,
		note,
		alternatives,
		mark,
		...(verdict.answer === 'cannot-tell' ? { error: Number(verdict.error.toFixed(DIGITS)) } : {}),
		...because(report, unreadable, speech)
	};
};

/**
 * A report as it is printed: a row for every step, in millimetres, and the total. `unreadable` says, by
 * step, why what was typed could not be read.
 */
export const reportJson = (
	{ steps, total, passedOver }: SubmissionReport,
	unreadable: ReadPlacements['unreadable'],
	speech: Speech
): object => {
	const own = speech.inUnit('mm');
	return {
		steps: steps.map((step) => stepJson(step, unreadable, own)),
		total,
		...(passedOver.length > 0 ? { passedOver } : {})
	};
};

/** What a step's note column says: the notes of a wrong answer, or that an earlier mark led to it. */
export const noteWords = (
	{ verdict, followThrough, note, alternatives }: StepReport,
	speech: Speech
): string => {
	const { command } = speech.words;
	if (followThrough) return command.fromOwnMarks;
	if (verdict.answer === 'cannot-tell') return speech.words.measured.toMeasure;
	if (verdict.answer === 'excused') return speech.tell(verdict.because);
	return verdict.answer === 'wrong' ? command.notes({ notes: [note, ...alternatives] }) : '';
};

/** A report for reading. */
export const reportTable = (
	{ steps, total, passedOver }: SubmissionReport,
	method: Method,
	body: string,
	speech: Speech
): string => {
	const { command } = speech.words;
	const rows = steps.map((report) => {
		const { step, verdict, offBy, mark } = report;
		const off = offBy === undefined ? '' : command.off({ by: mm(offBy) });
		return `${step.padEnd(14)}${command.answer(verdict).padEnd(12)}${off.padEnd(14)}${speech.fixed(mark, 2).padEnd(6)}${noteWords(report, speech)}`.trimEnd();
	});
	const told = passedOver.length > 0 ? [command.passedOver({ steps: passedOver })] : [];
	return [
		command.checkTitle({ name: method.name, body: onOneLine(body) }),
		...rows,
		...told,
		command.checkTotal(total),
		''
	].join('\n');
};
