import path from 'node:path';
import { BadInput } from '#shared/bad-input.ts';
import { message } from '#shared/speech/message.ts';
import type { Speech } from '#shared/speech/speech.ts';
import type { StepReport, SubmissionReport } from '#checker/check-submission.ts';
import type { Method } from '#drafting/method.ts';
import { isPointName } from '#drafting/names.ts';
import { marksSheetPdf, type MarkedStep } from '#exports/pdf/marks-sheet.ts';
import { PAPERS } from '#exports/sheets/tiles.ts';
import { noteWords } from './check-output.ts';
import { fontFile, NO_DATE, writeWhole } from './written-file.ts';

/** Decimals of a printed mark: the finest that any policy gives. */
const DIGITS = 2;
const rounded = (mark: number): number => Number(mark.toFixed(DIGITS));

const markedStep = (report: StepReport, method: Method, speech: Speech): MarkedStep => {
	const { step, verdict, mark } = report;
	const { command, paper, practice } = speech.words;
	const noun = method.steps.find(({ name }) => name === step)?.label ?? { name: step };
	return {
		step: isPointName(step) ? practice.pointNamed({ point: step, noun }) : paper.label({ noun }),
		answer: command.answer(verdict),
		note: noteWords(report, speech),
		mark: rounded(mark)
	};
};

/** Writes the marks sheet of one piece of work as a PDF. Throws BadInput where the file cannot be one, or cannot be written. */
export const writeMarks = async (
	{ steps, total }: SubmissionReport,
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
		steps: steps.map((report) => markedStep(report, method, speech)),
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
