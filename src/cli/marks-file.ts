import { the } from '#shared/speech/en/grammar.ts';
import path from 'node:path';
import { englishIn } from '#shared/speech/english-for-now.ts';
import { BadInput } from '#shared/bad-input.ts';
import { message } from '#shared/speech/message.ts';
import type { StepReport, SubmissionReport } from '#checker/check-submission.ts';
import type { Method } from '#drafting/method.ts';
import { isPointName } from '#drafting/names.ts';
import { marksSheetPdf, type MarkedStep } from '#exports/pdf/marks-sheet.ts';
import { PAPERS } from '#exports/sheets/tiles.ts';
import { fontFile, NO_DATE, writeWhole } from './written-file.ts';

/** Decimals of a printed mark: the finest that any policy gives. */
const DIGITS = 2;
const rounded = (mark: number): number => Number(mark.toFixed(DIGITS));

const markedStep = (
	{ step, verdict, followThrough, note, alternatives, mark }: StepReport,
	method: Method
): MarkedStep => {
	const label = method.steps.find(({ name }) => name === step)?.label ?? { name: step };
	const why = verdict.answer === 'wrong' ? [note, ...alternatives].join(' or ') : '';
	return {
		step: isPointName(step) ? `${step}, ${the(label)}` : the(label),
		answer: verdict.answer,
		note: followThrough ? 'from own earlier marks' : why,
		mark: rounded(mark)
	};
};

/** Writes the marks sheet of one piece of work as a PDF. Throws BadInput where the file cannot be one, or cannot be written. */
export const writeMarks = async (
	{ steps, total }: SubmissionReport,
	method: Method,
	learner: string,
	to: string
): Promise<void> => {
	const [paper] = PAPERS;
	if (path.extname(to).toLowerCase() !== '.pdf' || !paper)
		throw new BadInput('check', message('command', 'marksPdf', { to }));
	const sheet = {
		learner,
		work: method.name,
		steps: steps.map((report) => markedStep(report, method)),
		total: rounded(total.mark),
		outOf: total.outOf
	};
	const options = {
		paper,
		title: 'Marks',
		speech: englishIn('cm'),
		font: await fontFile(),
		date: new Date(NO_DATE)
	};
	const bytes = await marksSheetPdf(sheet, options);
	await writeWhole(to, bytes);
};
