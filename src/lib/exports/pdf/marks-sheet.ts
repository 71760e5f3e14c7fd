import { mm, type Mm } from '#shared/units.ts';
import { wordsPdf, type FileOptions } from './file.ts';
import { table, type TextBlock } from './text-pages.ts';

/** How one step was answered and marked, in words and marks that are ready to be printed. */
export interface MarkedStep {
	readonly step: string;
	/** "right", "wrong"; empty on a sheet that is filled in by hand. */
	readonly answer: string;
	readonly note: string;
	/** None on a sheet that is filled in by hand. */
	readonly mark?: number;
}

/** The marks of one piece of work. Every mark comes rounded, the total too: what is printed is what was given. */
export interface MarksSheet {
	readonly learner: string;
	readonly work: string;
	readonly steps: readonly MarkedStep[];
	/** None on a sheet that is filled in by hand. */
	readonly total?: number;
	readonly outOf: number;
	/** Headings of columns that are left empty, for a teacher to fill in by hand. */
	readonly empty?: readonly string[];
}

/** How wide the columns are beside one another; a column that is filled in by hand is as wide as `BY_HAND`. */
const WIDTHS = [2, 2, 5, 1.2] as const;
const BY_HAND = 2;
/** Height of a row that is written in by hand: ruled paper for handwriting has lines 8 to 9 mm apart. */
const ROOM: Mm = mm(9);

/** What a marks sheet says, as blocks of words. */
const marksBlocks = (sheet: MarksSheet, { title, speech }: FileOptions): readonly TextBlock[] => {
	const { learner, work, steps, total, outOf, empty = [] } = sheet;
	const { paper } = speech.words;
	const headings = [paper.step, paper.answer, paper.note, paper.mark];
	/** A mark without zeros at its end. */
	const written = (mark: number | undefined): string => (mark === undefined ? '' : speech.number(mark));
	const byHand = empty.length > 0 || total === undefined;
	const widths = [...WIDTHS, ...empty.map(() => BY_HAND)];
	const whole = widths.reduce((sum, width) => sum + width, 0);
	const blanks = empty.map(() => '');
	const rows = [
		...steps.map(({ step, answer, note, mark }) => [step, answer, note, written(mark), ...blanks]),
		[paper.total, '', paper.outOf({ outOf }), written(total), ...blanks]
	];
	return [
		{ kind: 'title', text: title },
		{
			kind: 'text',
			text: learner === '' ? paper.workOfNobodyYet({ work }) : paper.workOf({ work, learner })
		},
		...table(
			[...headings, ...empty],
			widths.map((width) => width / whole),
			rows,
			byHand ? ROOM : undefined
		)
	];
};

/**
 * A marks sheet: a row for each step with its answer, note and mark, and the total; with columns to fill in by hand by
 * choice. The same input gives the same bytes.
 */
export const marksSheetPdf = (sheet: MarksSheet, options: FileOptions): Promise<Uint8Array> =>
	wordsPdf(marksBlocks(sheet, options), options);
