import {
	clip,
	concatTransformationMatrix,
	drawObject,
	endPath,
	PDFDocument,
	PDFName,
	popGraphicsState,
	pushGraphicsState,
	rectangle,
	type PDFFont,
	type PDFOperator,
	type PDFPage,
	type PDFRef
} from '@cantoo/pdf-lib';
import fontkit from '@cantoo/fontkit';
import { BadInput } from '#shared/bad-input.ts';
import { mm, type Unit } from '#shared/units.ts';
import { boundsOf, type Bounds } from '#geometry/path.ts';
import { at } from '#geometry/point.ts';
import { drawingBounds, grown, isEmpty, type Drawing } from '../drawing/drawing.ts';
import { hasInk } from '../sheets/ink.ts';
import { PAGE_MARGIN, tilesOver, type Paper, type Tile } from '../sheets/tiles.ts';
import { FONT_NAME, drawingOperators } from './operators.ts';
import { firstPage, pageFurniture } from './page-words.ts';

/** Points of a PDF page in one millimetre: a point is 1/72 inch (ISO 32000-1). */
const POINTS = 72 / 25.4;
/** White left round everything that is drawn. */
const AROUND = mm(3);

/** What a printed pattern is made with. */
export interface PdfOptions {
	readonly paper: Paper;
	/** Stands on the first page and in the file's own title. */
	readonly title: string;
	/** Lines under the title: the body, the scale, cautions. */
	readonly about: readonly string[];
	readonly unit: Unit;
	/** A typeface file, TTF, OTF or WOFF; what is used of it is put into the file. */
	readonly font: Uint8Array;
	/** Written into the file, so that the same input gives the same bytes. */
	readonly date: Date;
	/** Told after each page how many of how many are done; throwing stops the work. */
	readonly onPage?: (done: number, of: number) => void;
}

/** The pages that a print has: those with ink, and those that are left out. */
export interface PagePlan {
	readonly bounds: Bounds;
	/** The pages that are printed. */
	readonly tiles: readonly Tile[];
	/** Every page of the sheet, with those that have no ink. */
	readonly every: readonly Tile[];
	/** The names of the pages that are left out. */
	readonly blank: readonly string[];
}

/** Plans the pages of some drawings. Throws BadInput where nothing is drawn. */
export const planPages = (drawings: readonly Drawing[], paper: Paper): PagePlan => {
	const drawn = drawings.filter((drawing) => !isEmpty(drawing));
	if (drawn.length === 0) throw new BadInput('export', 'there is nothing to print: no piece was chosen');
	const all = drawn.map(drawingBounds);
	const bounds = grown(
		boundsOf(
			[],
			all.flatMap(({ left, top, right, bottom }) => [at(left, top), at(right, bottom)])
		),
		AROUND
	);
	const every = tilesOver(bounds, paper);
	const tiles = every.filter((tile) => hasInk(drawn, tile));
	const kept = new Set(tiles.map(({ name }) => name));
	return { bounds, tiles, every, blank: every.map(({ name }) => name).filter((name) => !kept.has(name)) };
};

/** Puts operators that think in millimetres, y down, on a page whose own y runs up. */
const onPage = (page: PDFPage, paper: Paper, operators: readonly PDFOperator[]): void => {
	page.pushOperators(
		pushGraphicsState(),
		concatTransformationMatrix(POINTS, 0, 0, -POINTS, 0, paper.height * POINTS),
		...operators,
		popGraphicsState()
	);
};

const newPage = (document: PDFDocument, paper: Paper, font: PDFFont): PDFPage => {
	const page = document.addPage([paper.width * POINTS, paper.height * POINTS]);
	page.node.setFontDictionary(PDFName.of(FONT_NAME), font.ref);
	return page;
};

/** All the ink once, as one object that every page shows a part of. */
const sheetInk = (
	document: PDFDocument,
	drawings: readonly Drawing[],
	bounds: Bounds,
	font: PDFFont
): PDFRef => {
	const { left, top, right, bottom } = bounds;
	const form = document.context.formXObject([...drawingOperators(drawings, font)], {
		BBox: document.context.obj([left, top, right, bottom]),
		Resources: { Font: { [FONT_NAME]: font.ref } }
	});
	return document.context.register(form);
};

const INK_NAME = 'Ink';

const tilePage = (
	document: PDFDocument,
	ink: PDFRef,
	tile: Tile,
	plan: PagePlan,
	options: PdfOptions,
	font: PDFFont
): void => {
	const { paper } = options;
	const page = newPage(document, paper, font);
	page.node.setXObject(PDFName.of(INK_NAME), ink);
	onPage(page, paper, [
		pushGraphicsState(),
		rectangle(PAGE_MARGIN, PAGE_MARGIN, tile.width, tile.height),
		clip(),
		endPath(),
		concatTransformationMatrix(1, 0, 0, 1, PAGE_MARGIN - tile.left, PAGE_MARGIN - tile.top),
		drawObject(INK_NAME),
		popGraphicsState(),
		...pageFurniture(tile, plan, font)
	]);
};

/**
 * Drawings at true scale on the pages of a paper: a first page with the check squares and the map of the pages, then
 * every page that has ink. Throws BadInput where nothing is drawn. The same input gives the same bytes.
 */
export const patternPdf = async (drawings: readonly Drawing[], options: PdfOptions): Promise<Uint8Array> => {
	const plan = planPages(drawings, options.paper);
	const document = await PDFDocument.create();
	document.registerFontkit(fontkit);
	const font = await document.embedFont(options.font, { subset: true });
	document.setTitle(options.title);
	document.setProducer('Square Across');
	document.setCreator('Square Across');
	document.setCreationDate(options.date);
	document.setModificationDate(options.date);
	const first = newPage(document, options.paper, font);
	onPage(first, options.paper, firstPage(plan, drawings, options, font));
	const ink = sheetInk(document, drawings, plan.bounds, font);
	for (const [i, tile] of plan.tiles.entries()) {
		tilePage(document, ink, tile, plan, options, font);
		options.onPage?.(i + 1, plan.tiles.length);
	}
	return document.save({ useObjectStreams: true, addDefaultPage: false });
};
