import type { Format, ScaleName } from '#exports/files/pattern-file.ts';
import { englishIn } from '#shared/speech/english-for-now.ts';
import { paperName, PAPERS, ROLLS, SHEETS, type Paper } from '#exports/sheets/tiles.ts';
import type { DraftSheet } from './job.ts';

/** The kinds of file that a maker chooses from. */
export const FILE_KINDS = ['pages', 'sheet', 'svg', 'png', 'dxf', 'csv', 'json'] as const;
export type FileKind = (typeof FILE_KINDS)[number];

/** What a kind of file is, and what can be chosen for it. */
export interface FileKindRule {
	/** A few words for a list. */
	readonly words: string;
	/** What its button says. */
	readonly save: string;
	/** What it is good for, in a sentence or two. */
	readonly about: string;
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
		words: 'PDF in pages',
		save: 'Save the PDF',
		about:
			'For a printer at home: pages that are joined with tape. Print at 100 %, and measure the square on the first page.',
		format: 'pdf',
		papers: PAPERS,
		scaled: true,
		apart: false
	},
	sheet: {
		words: 'PDF on a large sheet',
		save: 'Save the PDF',
		about:
			'For a copy shop with a wide printer. Ask for a print at 100 %, and measure the square on the first sheet.',
		format: 'pdf',
		papers: SHEETS,
		scaled: true,
		apart: false
	},
	svg: {
		words: 'SVG drawing',
		save: 'Save the drawing',
		about: 'For a drawing program: in millimetres, each piece and each kind of line a group with a name.',
		format: 'svg',
		papers: [],
		scaled: true,
		apart: true
	},
	png: {
		words: 'Picture (PNG)',
		save: 'Save the picture',
		about: 'To look at or to show, not to cut by: 4 dots to the millimetre, fewer for what is very large.',
		format: 'svg',
		papers: [],
		scaled: true,
		apart: true
	},
	dxf: {
		words: 'Drawing file (DXF)',
		save: 'Save the drawing file',
		about:
			'For a cutting room: a block for each piece, in millimetres. Its layers are after ASTM D6673, from memory: no conformity is promised.',
		format: 'dxf',
		papers: [],
		scaled: false,
		apart: false
	},
	csv: {
		words: 'Table (CSV)',
		save: 'Save the table',
		about:
			'For a spreadsheet: the lengths of all edges and seams, where the notches lie, and the numbers to note.',
		format: 'csv',
		papers: [],
		scaled: false,
		apart: false
	},
	json: {
		words: 'Data (JSON)',
		save: 'Save the data',
		about: 'For another program: every line of every piece, and the reports, in millimetres.',
		format: 'json',
		papers: [],
		scaled: false,
		apart: false
	}
};

/** The scales in words. */
export const SCALE_CHOICES: readonly { readonly id: ScaleName; readonly words: string }[] = [
	{ id: 'full', words: 'Full size' },
	{ id: 'half', words: 'Half' },
	{ id: 'quarter', words: 'A quarter' }
];

/** How many pages a PDF will have: "23 pages of A4, after a first page with the check square and a map". */
export const pagesWords = (pages: number, paper: Paper): string => {
	const sheets = PAPERS.some((each) => each.id === paper.id) ? 'page' : 'sheet';
	const name = paperName(paper, englishIn('cm'));
	const kind = ROLLS.includes(paper) ? `off ${name}` : `of ${name}`;
	return `${pages} ${sheets}${pages === 1 ? '' : 's'} ${kind}, after a first one with the check squares and a map.`;
};

/** What can be made of a draft, in words. */
export const DRAFT_SHEET_RULES: Readonly<
	Record<DraftSheet, Pick<FileKindRule, 'words' | 'save' | 'about' | 'scaled'>>
> = {
	draft: {
		words: 'The draft',
		save: 'Save the draft as PDF',
		about: 'The computed draft in pages, with the check square, as it is shown below.',
		scaled: true
	},
	worksheet: {
		words: 'A worksheet',
		save: 'Save the worksheet as PDF',
		about: 'The bare grid in pages, and what to draw on it step by step, for drafting by hand.',
		scaled: true
	},
	rules: {
		words: 'A rule sheet',
		save: 'Save the rule sheet as PDF',
		about: "The measurements, and each step's rule with the arithmetic for this body.",
		scaled: false
	},
	picture: {
		words: 'A picture',
		save: 'Save the picture as PNG',
		about:
			'The computed draft as one picture, to be shown on a screen or put into a text. It is not for measuring.',
		scaled: false
	}
};
