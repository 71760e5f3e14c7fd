import {
	concatTransformationMatrix,
	PDFDocument,
	PDFName,
	popGraphicsState,
	pushGraphicsState,
	type PDFFont,
	type PDFOperator,
	type PDFPage
} from '@cantoo/pdf-lib';
import type { Speech } from '#shared/speech/speech.ts';
import { mm, radians } from '#shared/units.ts';
import { at } from '#geometry/point.ts';
import { PAGE_MARGIN, type Paper } from '../sheets/tiles.ts';
import { FONT_NAME, wordsOperators } from './operators.ts';
import { textPages, type TextBlock } from './text-pages.ts';
import { typefaces } from './typeface.ts';

/** Points of a PDF page in one millimetre: a point is 1/72 inch (ISO 32000-1). */
const POINTS = 72 / 25.4;

/** What every file is made with. */
export interface FileOptions {
	readonly paper: Paper;
	/** Stands on the first page and in the file's own title. */
	readonly title: string;
	/** A typeface file, TTF, OTF or WOFF; what is used of it is put into the file. */
	readonly font: Uint8Array;
	/** The language and the unit of its words. */
	readonly speech: Speech;
	/** Written into the file, so that the same input gives the same bytes. */
	readonly date: Date;
}

/** A file that is being made, with the typeface it is written in. */
export interface OpenFile {
	readonly document: PDFDocument;
	readonly font: PDFFont;
	readonly speech: Speech;
}

/** An empty document, with what it says of itself. */
const newDocument = async ({
	title,
	speech,
	date
}: Pick<FileOptions, 'title' | 'speech' | 'date'>): Promise<PDFDocument> => {
	const document = await PDFDocument.create();
	document.setTitle(title);
	document.setLanguage(speech.language);
	document.setProducer('Square Across');
	document.setCreator('Square Across');
	document.setCreationDate(date);
	document.setModificationDate(date);
	return document;
};

/** Begins a file. */
export const openFile = async (options: FileOptions): Promise<OpenFile> => {
	const document = await newDocument(options);
	document.registerFontkit(typefaces);
	return {
		document,
		speech: options.speech,
		font: await document.embedFont(options.font, { subset: true, features: { kern: false, mark: false } })
	};
};

/** The bytes of a file, written in one go: a pause after every few objects costs more than all of them. */
export const closeFile = ({ document }: Pick<OpenFile, 'document'>): Promise<Uint8Array> =>
	document.save({ useObjectStreams: true, addDefaultPage: false, objectsPerTick: Infinity });

/** Adds a page with operators that think in millimetres, y down, though a page's own y runs up. */
export const addPage = (
	{ document, font }: OpenFile,
	{ width, height }: Paper,
	operators: readonly PDFOperator[]
): PDFPage => {
	const page = document.addPage([width * POINTS, height * POINTS]);
	page.node.setFontDictionary(PDFName.of(FONT_NAME), font.ref);
	page.pushOperators(
		pushGraphicsState(),
		concatTransformationMatrix(POINTS, 0, 0, -POINTS, 0, height * POINTS),
		...operators,
		popGraphicsState()
	);
	return page;
};

/** Adds pages of words, each with its number at the foot, so that loose sheets can be put in order. */
export const addTextPages = (file: OpenFile, paper: Paper, blocks: readonly TextBlock[]): void => {
	const pages = blocks.length === 0 ? [] : textPages(blocks, paper, file.font);
	for (const [i, operators] of pages.entries()) {
		const foot = {
			text: file.speech.words.paper.pageOf({ page: i + 1, of: pages.length }),
			at: at(paper.width / 2, paper.height - PAGE_MARGIN + 3),
			middle: true,
			size: mm(2.8),
			turn: radians(0)
		};
		addPage(file, paper, [...operators, ...wordsOperators(foot, file.font)]);
	}
};

/** A file of pages of words. The same input gives the same bytes. */
export const wordsPdf = async (blocks: readonly TextBlock[], options: FileOptions): Promise<Uint8Array> => {
	const file = await openFile(options);
	addTextPages(file, options.paper, blocks);
	return closeFile(file);
};

/** Joins files into one, each as it is, in turn: `next` makes one after the other, until there is none. The same input gives the same bytes. */
export const joinedPdf = async (
	next: () => Promise<Uint8Array | undefined>,
	options: Pick<FileOptions, 'title' | 'speech' | 'date'>
): Promise<Uint8Array> => {
	const document = await newDocument(options);
	for (let bytes = await next(); bytes; bytes = await next()) {
		const part = await PDFDocument.load(bytes);
		for (const page of await document.copyPages(part, part.getPageIndices())) document.addPage(page);
	}
	return closeFile({ document });
};
