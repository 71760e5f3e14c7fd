import type { SheetOptions, WorkedMethod } from './body-words.ts';
import { joinedPdf } from './file.ts';
import { ruleSheetPdf } from './rule-sheet.ts';
import { stepCardsPdf } from './step-cards.ts';
import { worksheetPdf } from './worksheet.ts';

/** The sheets that a class can be given. */
export type ClassSheet = 'worksheet' | 'rules' | 'cards';

/** How the sheets of a class are made. */
export interface ClassSheetOptions extends SheetOptions {
	readonly sheets: readonly ClassSheet[];
	/** The scale of worksheets: 1 for full size, 1/2 or 1/4. */
	readonly share: number;
	/** Told after each sheet how many of how many are done; throwing stops the work. */
	readonly onSheet?: (done: number, of: number) => void;
}

const sheetPdf = (
	work: WorkedMethod,
	sheet: ClassSheet,
	{ share, ...options }: SheetOptions & Pick<ClassSheetOptions, 'share'>
): Promise<Uint8Array> => {
	const title = work.speech.words.files.sheetTitle({ sheet, method: work.method.name });
	if (sheet === 'rules') return ruleSheetPdf(work, { ...options, title });
	if (sheet === 'cards') return stepCardsPdf(work, { ...options, title });
	return worksheetPdf(work, { ...options, title, share, worked: false });
};

/**
 * The sheets of a whole class in one file: for each learner's body and draft, in the order in which they are given, each
 * kind of sheet that is wanted. The same input gives the same bytes.
 */
export const classSheetsPdf = (
	works: readonly [WorkedMethod, ...WorkedMethod[]],
	{ sheets, onSheet, ...options }: ClassSheetOptions
): Promise<Uint8Array> => {
	const wanted = works.flatMap((work) => sheets.map((sheet) => ({ work, sheet })));
	let done = 0;
	const next = async (): Promise<Uint8Array | undefined> => {
		if (done > 0) onSheet?.(done, wanted.length);
		const one = wanted[done];
		done += 1;
		return one && sheetPdf(one.work, one.sheet, options);
	};
	return joinedPdf(next, { ...options, speech: works[0].speech });
};
