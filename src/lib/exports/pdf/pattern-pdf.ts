import {
	clip,
	concatTransformationMatrix,
	drawObject,
	endPath,
	PDFName,
	popGraphicsState,
	pushGraphicsState,
	rectangle,
	type PDFRef
} from '@cantoo/pdf-lib';
import { mm, type Mm } from '#shared/units.ts';
import type { Bounds } from '#geometry/path.ts';
import type { SheetPoint } from '#geometry/point.ts';
import type { Worn } from '#garment/worn/worn.ts';
import type { Drawing } from '../drawing/drawing.ts';
import { planPages, type PagePlan } from '../sheets/page-plan.ts';
import { PAGE_MARGIN, PAPERS, type Paper, type Tile } from '../sheets/tiles.ts';
import { addPage, addTextPages, closeFile, openFile, type FileOptions, type OpenFile } from './file.ts';
import { drawingOperators, FONT_NAME, written } from './operators.ts';
import { checkSquares, firstPage, FIRST_PAGE_HEIGHT, pageFurniture, roomForSquares } from './page-words.ts';
import type { TextBlock } from './text-pages.ts';

/** What a printed pattern is made with. */
export interface PdfOptions extends FileOptions {
	/** Lines under the title: the body, the scale, cautions. */
	readonly about: readonly string[];
	/** The garment as it is worn, for the first page. */
	readonly worn?: Worn | undefined;
	/** Words on pages of their own, before the drawing. */
	readonly words?: readonly TextBlock[];
	/** Words on pages of their own, after the drawing. */
	readonly after?: readonly TextBlock[];
	/** Told after each page how many of how many are done; throwing stops the work. */
	readonly onPage?: (done: number, of: number) => void;
}

/** Paper longer than this comes off a roll, and is cut where the drawing ends. */
const ROLL_LENGTH: Mm = mm(2000);
/** More than a drawing needs, so that rounding never asks for a second page. */
const SPARE = 1;
/** Wider pages than this are too wide to read words across. */
const WIDEST_TO_READ: Mm = mm(300);

/** The paper as it is cut for a drawing: one off a roll no longer than it must be. */
const cutPaper = (paper: Paper, { top, bottom }: Bounds): Paper => {
	if (paper.height <= ROLL_LENGTH) return paper;
	const needed = Math.max(FIRST_PAGE_HEIGHT, bottom - top + 2 * PAGE_MARGIN + SPARE);
	return { ...paper, height: mm(Math.min(paper.height, written(needed))) };
};

/** The paper that words are read on: the drawing's own, or a page of A4 where that is a sheet for the floor. */
const wordsPaper = (paper: Paper): Paper =>
	paper.width <= WIDEST_TO_READ ? paper : (PAPERS.find(({ id }) => id === 'a4') ?? paper);

/** All the ink once, as one object that every page shows a part of. */
const sheetInk = (
	{ document, font }: OpenFile,
	drawings: readonly Drawing[],
	{ left, top, right, bottom }: Bounds
): PDFRef => {
	const form = document.context.formXObject([...drawingOperators(drawings, font)], {
		BBox: document.context.obj([left, top, right, bottom].map(written)),
		Resources: { Font: { [FONT_NAME]: font.ref } }
	});
	return document.context.register(form);
};

const INK_NAME = 'Ink';

const tilePage = (
	file: OpenFile,
	ink: PDFRef,
	tile: Tile,
	plan: PagePlan,
	paper: Paper,
	squares: SheetPoint | undefined
): void => {
	const page = addPage(file, paper, [
		pushGraphicsState(),
		rectangle(PAGE_MARGIN, PAGE_MARGIN, tile.width, tile.height),
		clip(),
		endPath(),
		concatTransformationMatrix(1, 0, 0, 1, written(PAGE_MARGIN - tile.left), written(PAGE_MARGIN - tile.top)),
		drawObject(INK_NAME),
		popGraphicsState(),
		...pageFurniture(tile, plan, file),
		...(squares ? checkSquares(squares, file) : [])
	]);
	page.node.setXObject(PDFName.of(INK_NAME), ink);
};

/**
 * Drawings at true scale on the pages of a paper: a first page with the check squares and the map of the pages, pages
 * of words where there are any, then every page that has ink. Throws BadInput where nothing is drawn. The same input
 * gives the same bytes.
 */
export const patternPdf = async (drawings: readonly Drawing[], options: PdfOptions): Promise<Uint8Array> => {
	const uncut = planPages(drawings, options.paper);
	const paper = cutPaper(options.paper, uncut.bounds);
	const plan = paper === options.paper ? uncut : planPages(drawings, paper);
	const file = await openFile(options);
	const small = wordsPaper(paper);
	// No sheet for the floor is spent on two squares where they have room beside the drawing.
	const squares = small === paper ? undefined : roomForSquares(drawings, plan.tiles);
	const first = { page: squares ? small : paper, squaresOnSheet: squares !== undefined };
	const { operators, left } = firstPage(plan, drawings, { ...options, paper, ...first }, file);
	addPage(file, first.page, operators);
	addTextPages(file, small, [
		...left.map((text): TextBlock => ({ kind: 'text', text })),
		...(options.words ?? [])
	]);
	const ink = sheetInk(file, drawings, plan.bounds);
	for (const [i, tile] of plan.tiles.entries()) {
		tilePage(file, ink, tile, plan, paper, i === 0 ? squares : undefined);
		options.onPage?.(i + 1, plan.tiles.length);
	}
	addTextPages(file, small, options.after ?? []);
	return closeFile(file);
};
