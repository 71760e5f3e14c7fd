import type { Speech } from '#shared/speech/speech.ts';
import type { Format, ScaleName } from '#exports/files/pattern-file.ts';
import { paperName, PAPERS, ROLLS, SHEETS, type Paper } from '#exports/sheets/tiles.ts';
import type { DraftSheet } from './job.ts';

/** The kinds of file that a maker chooses from. */
export const FILE_KINDS = ['pages', 'sheet', 'svg', 'png', 'dxf', 'csv', 'json'] as const;
export type FileKind = (typeof FILE_KINDS)[number];

/** What a kind of file is, and what can be chosen for it. */
export interface FileKindRule {
	/** What is made: a picture is made of an SVG file. */
	readonly format: Format;
	/** The papers that it can be made on. */
	readonly papers: readonly Paper[];
	/** Whether it can be made smaller for class work. */
	readonly scaled: boolean;
	/** Whether each piece can have a file of its own. */
	readonly apart: boolean;
}

/** Every kind of file with its rule. */
export const FILE_KIND_RULES: Readonly<Record<FileKind, FileKindRule>> = {
	pages: {
		format: 'pdf',
		papers: PAPERS,
		scaled: true,
		apart: false
	},
	sheet: {
		format: 'pdf',
		papers: SHEETS,
		scaled: true,
		apart: false
	},
	svg: {
		format: 'svg',
		papers: [],
		scaled: true,
		apart: true
	},
	png: {
		format: 'svg',
		papers: [],
		scaled: true,
		apart: true
	},
	dxf: {
		format: 'dxf',
		papers: [],
		scaled: false,
		apart: false
	},
	csv: {
		format: 'csv',
		papers: [],
		scaled: false,
		apart: false
	},
	json: {
		format: 'json',
		papers: [],
		scaled: false,
		apart: false
	}
};

/** How many pages a PDF will have, and what they are. */
export const pagesWords = (count: number, paper: Paper, speech: Speech): string => {
	const name = paperName(paper, speech);
	const { files } = speech.words;
	if (ROLLS.includes(paper)) return files.offRoll({ sheets: count, paper: name });
	return PAPERS.includes(paper)
		? files.pages({ pages: count, paper: name })
		: files.sheets({ sheets: count, paper: name });
};

/** A paper as one of several to choose from. */
export const paperChoice = (paper: Paper, speech: Speech): string =>
	ROLLS.includes(paper) ? speech.words.files.roll(paper) : paperName(paper, speech);

/** The scales, the largest first. */
export const SCALE_NAMES: readonly ScaleName[] = ['full', 'half', 'quarter'];

/** The sheets of a draft that can be made smaller for class work. */
export const SCALED_SHEETS: readonly DraftSheet[] = ['draft', 'worksheet', 'drawing'];
/** The sheets of a draft that are made on pages of a paper. */
export const PAGED_SHEETS: readonly DraftSheet[] = ['draft', 'worksheet', 'rules', 'tape'];
