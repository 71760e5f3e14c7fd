import path from 'node:path';
import { BadInput } from '#shared/bad-input.ts';
import { message } from '#shared/speech/message.ts';
import type { Noun } from '#shared/speech/noun.ts';
import type { Speech } from '#shared/speech/speech.ts';
import type { StepReport, SubmissionReport } from '#checker/check-submission.ts';
import type { Method } from '#drafting/method.ts';
import { isPointName } from '#drafting/names.ts';
import { marksSheetPdf, type MarkedStep } from '#exports/pdf/marks-sheet.ts';
import { PAPERS } from '#exports/sheets/tiles.ts';
import { diagnosisWords } from '#checker/missteps/words.ts';
import { verdictWords } from '#checker/words.ts';
import { noteWords } from './check-output.ts';
import { fontFile, NO_DATE, writeWhole } from './written-file.ts';

/** Decimals of a printed mark: the finest that any policy gives. */
const DIGITS = 2;
const rounded = (mark: number): number => Number(mark.toFixed(DIGITS));

/** What is said beside a step: of a wrong one, to whoever is handed the sheet, what is off and which mistake it may have been. */
const besideStep = (
	report: StepReport,
	diagnosis: SubmissionReport['diagnosis'],
	noun: Noun,
	speech: Speech
): string => {
	if (report.verdict.answer !== 'wrong') return noteWords(report, speech);
	const { sentences } = verdictWords(report.verdict, noun, speech);
	return [...sentences, diagnosisWords(diagnosis(report.step), speech)].filter(Boolean).join(' ');
};

const markedStep = (
	report: StepReport,
	diagnosis: SubmissionReport['diagnosis'],
	method: Method,
	speech: Speech
): MarkedStep => {
	const { step, verdict, mark } = report;
	const { command, paper, practice } = speech.words;
	const noun = method.steps.find(({ name }) => name === step)?.label ?? { name: step };
	return {
		step: isPointName(step) ? practice.pointNamed({ point: step, noun }) : paper.label({ noun }),
		answer: command.answer(verdict),
		note: besideStep(report, diagnosis, noun, speech),
		mark: rounded(mark)
	};
};

/** Writes the marks sheet of one piece of work as a PDF. Throws BadInput where the file cannot be one, or cannot be written. */
export const writeMarks = async (
	{ steps, total, diagnosis }: SubmissionReport,
	method: Method,
	learner: string,
	to: string,
	speech: Speech
): Promise<void> => {
	const [paper] = PAPERS;
	if (path.extname(to).toLowerCase() !== '.pdf' || !paper)
		throw new BadInput('check', message('command', 'marksPdf', { to }));
	const sheet = {
		learner,
		work: method.name,
		steps: steps.map((report) => markedStep(report, diagnosis, method, speech)),
		total: rounded(total.mark),
		outOf: total.outOf
	};
	const options = {
		paper,
		title: speech.words.command.marks,
		speech,
		font: await fontFile(),
		date: new Date(NO_DATE)
	};
	const bytes = await marksSheetPdf(sheet, options);
	await writeWhole(to, bytes);
};
