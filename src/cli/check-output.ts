import { onOneLine, ruleWords } from '#shared/bad-input.ts';
import type { Speech } from '#shared/speech/speech.ts';
import { mm } from '#shared/units.ts';
import type { StepReport, SubmissionReport } from '#checker/check-submission.ts';
import type { Method } from '#drafting/method.ts';
import type { Disagreeing, Taped } from '#tape/by-tape.ts';
import { BADLY } from '#tape/tapes.ts';
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

const inMm = (value: number): number => Number(value.toFixed(DIGITS));

const readingsJson = ({ of }: Disagreeing): readonly object[] =>
	of.map(({ from, to, read, told }) => ({ from, to, read: inMm(read), told: inMm(told) }));

/** What a tape said beside the points: which readings do not agree, which points are not found yet, and by how much the readings miss. */
export const tapeJson = ({ disagreeing, perhaps, open, misses, worse }: Taped): object => ({
	misread: disagreeing.map(readingsJson),
	...(perhaps ? { perhaps: { points: perhaps.points, readings: readingsJson(perhaps) } } : {}),
	open,
	misses: misses === undefined ? null : inMm(misses),
	worse: inMm(worse)
});

/** The same in sentences, each on a line of its own. */
export const tapeLines = ({ disagreeing, perhaps, open, misses, worse }: Taped, speech: Speech): string => {
	const { tape, command } = speech.words;
	return [
		...disagreeing.map((each) => tape.misread(each)),
		...(perhaps ? [tape.perhaps(perhaps)] : []),
		...(open.length > 0 ? [command.tapeOpen({ points: open })] : []),
		...(misses === undefined
			? []
			: [worse > BADLY ? tape.worse({ by: misses }) : tape.misses({ by: misses })])
	]
		.map((line) => `${line}\n`)
		.join('');
};
