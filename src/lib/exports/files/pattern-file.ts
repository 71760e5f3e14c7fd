import type { Body } from '#shared/body.ts';
import { BadInput } from '#shared/bad-input.ts';
import { oneOf, unknownName } from '#shared/reading.ts';
import type { Speech } from '#shared/speech/speech.ts';
import { mm } from '#shared/units.ts';
import type { Garment } from '#garment/garment.ts';
import { meetingsOf } from '#garment/meetings.ts';
import type { Choices, Pattern } from '#garment/pattern.ts';
import type { Piece } from '#garment/piece.ts';
import { boundsOf, pathMapped, pathStart } from '#geometry/path.ts';
import { at, type SheetPoint } from '#geometry/point.ts';
import { chordMeets } from '#geometry/chord.ts';
import { shifting } from '#geometry/motion.ts';
import { patternName, pieceWords } from '#garment/words.ts';
import { wornPattern } from '#garment/worn/view.ts';
import { arranged } from '../drawing/arrange.ts';
import {
	boundsOfDrawings,
	drawingBounds,
	drawingMoved,
	drawingScaled,
	frame,
	wordsBounds,
	type Drawing
} from '../drawing/drawing.ts';
import { meetingLines, pieceDrawing, type OnSheet } from '../drawing/piece-drawing.ts';
import type { PdfOptions } from '../pdf/pattern-pdf.ts';
import { jointLines, planPages } from '../sheets/page-plan.ts';
import { onFewestPages } from '../sheets/fewest-pages.ts';
import { PAGE_MARGIN, PAPERS, SHEETS, type Paper } from '../sheets/tiles.ts';

/** The kinds of file that a pattern can be saved as. */
export const FORMATS = ['pdf', 'svg', 'dxf', 'csv', 'json'] as const;
export type Format = (typeof FORMATS)[number];

/** The sizes at which a pattern is drawn: whole for cutting, smaller for class work. */
export const SCALES = { full: 1, half: 1 / 2, quarter: 1 / 4 } as const;
export type ScaleName = keyof typeof SCALES;

/** What is wanted of a pattern. */
export interface FileRequest {
	readonly format: Format;
	/** The keys of the pieces that are wanted; all where none is named. */
	readonly pieces: readonly string[];
	/** A paper's id; only a PDF asks for it. */
	readonly paper: string;
	readonly scale: ScaleName;
	/** In which words are written. */
	readonly speech: Speech;
	/** Written into a PDF. */
	readonly date: Date;
	/** Whether the date is told on the first page as well: where somebody chose it. */
	readonly dated: boolean;
	/** The typeface of a PDF. */
	readonly font: () => Promise<Uint8Array>;
	readonly onPage?: (done: number, of: number) => void;
}

/** Width of the paper that an SVG's pieces are laid out on. */
const SVG_WIDTH = mm(1500);

/** Every paper that a PDF can be made on. */
export const ALL_PAPERS: readonly Paper[] = [...PAPERS, ...SHEETS];

/** The paper of this id, whatever its capitals. Throws BadInput with the nearest. */
export const paperOf = (id: string): Paper => {
	const paper = ALL_PAPERS.find((each) => each.id === id.toLowerCase());
	if (paper) return paper;
	const ids = ALL_PAPERS.map((each) => each.id);
	throw new BadInput('paper', unknownName('paper', id, ids, ids));
};

/** The pieces that were asked for, in the pattern's order. Throws BadInput for a key that the pattern does not have. */
const chosenPieces = ({ pieces }: Pattern, wanted: readonly string[]): readonly Piece[] => {
	const keys = pieces.map(({ key }) => key);
	for (const key of wanted) oneOf('piece', key, keys, 'pieces', keys);
	return wanted.length === 0 ? pieces : pieces.filter(({ key }) => wanted.includes(key));
};

/** What is written on a piece. */
const writtenOn = (piece: Piece, garment: Garment, pattern: Pattern, speech: Speech): readonly string[] => [
	...pieceWords(piece, pattern.body, speech),
	patternName(garment, pattern, speech)
];

/** How the pieces are drawn at the wanted scale, their words clear of what is around them on a sheet. */
const drawingOf =
	(garment: Garment, pattern: Pattern, { scale, speech }: Pick<FileRequest, 'scale' | 'speech'>) =>
	(piece: Piece, around?: OnSheet): Drawing => {
		const meetings = meetingsOf(piece, garment.seams, pattern.pieces);
		const words = writtenOn(piece, garment, pattern, speech);
		return drawingScaled(pieceDrawing(piece, words, speech, meetings, around, pattern.wear), SCALES[scale]);
	};

/** The pieces as they are laid out on the paper of a PDF, and that paper. */
export interface PatternSheet {
	readonly paper: Paper;
	readonly drawings: readonly Drawing[];
}

/** Lays the chosen pieces out on a paper. Throws BadInput for a paper or a piece that is not there. */
export const patternSheet = (
	garment: Garment,
	pattern: Pattern,
	request: Pick<FileRequest, 'pieces' | 'paper' | 'scale' | 'speech'>
): PatternSheet => {
	const paper = paperOf(request.paper);
	const pieces = chosenPieces(pattern, request.pieces);
	const draw = drawingOf(garment, pattern, request);
	const drawings = pieces.map((piece) => draw(piece));
	const onSheet = SHEETS.includes(paper)
		? arranged(drawings, mm(paper.width - 2 * PAGE_MARGIN - 6))
		: onFewestPages(drawings, paper);
	const joints = jointLines(planPages(onSheet, paper));
	// Words that left it would move the pages.
	const { left, top, right, bottom } = boundsOfDrawings(onSheet, mm(0));
	const clear = onSheet.map((drawing, i): Drawing => {
		const [piece, before] = [pieces[i], drawings[i]];
		const [from, to] = [before, drawing].map((each) => each?.strokes[0] && pathStart(each.strokes[0].path));
		const boxes = drawing.words.map(wordsBounds);
		const isCut = joints.some(([{ from: a, to: b }]) => boxes.some((box) => chordMeets(a, b, box)));
		if (!piece || !from || !to || !isCut) return drawing;
		const share = SCALES[request.scale];
		const back = ({ x, y }: SheetPoint): SheetPoint =>
			at((x - to.x + from.x) / share, (y - to.y + from.y) / share);
		const others = onSheet.filter((other) => other !== drawing).map((other) => frame(drawingBounds(other)));
		const around: OnSheet = {
			joints: joints.map((path) => pathMapped(path, back)),
			others: others.map((path) => pathMapped(path, back)),
			sheet: boundsOf([], [back(at(left, top)), back(at(right, bottom))])
		};
		return drawingMoved(draw(piece, around), shifting(from, to));
	});
	return { paper, drawings: clear };
};

/** Whose a print is, and how large it is drawn. */
export const printedFor = (body: string, { speech, scale }: Pick<FileRequest, 'speech' | 'scale'>): string =>
	`${speech.words.garments.forBody({ body })}. ${speech.words.paper.scale({ scale })}`;

/** A pattern, and what it was made from. */
export interface MadePattern {
	readonly garment: Garment;
	readonly pattern: Pattern;
	readonly body: Body;
	readonly choices: Choices;
}

/** The pages of words that go with a whole pattern; with some of its pieces go none. Sheets for the floor come first, and the words after them. */
const coverOf = async (
	made: MadePattern,
	{ paper, drawings }: PatternSheet,
	{ speech }: FileRequest
): Promise<Pick<PdfOptions, 'words' | 'after' | 'worn'>> => {
	if (drawings.length < made.pattern.pieces.length) return {};
	const { coverBlocks } = await import('../pdf/cover.ts');
	const blocks = coverBlocks({ ...made, speech }, drawings);
	const worn = wornPattern(made.garment, made.body, made.pattern, made.choices);
	return SHEETS.includes(paper) ? { after: blocks, worn } : { words: blocks, worn };
};

const pdf = async (made: MadePattern, request: FileRequest): Promise<Uint8Array> => {
	const { garment, pattern } = made;
	const sheet = patternSheet(garment, pattern, request);
	const { paper, drawings } = sheet;
	const { patternPdf } = await import('../pdf/pattern-pdf.ts');
	return patternPdf(drawings, {
		...(await coverOf(made, sheet, request)),
		paper,
		title: patternName(garment, pattern, request.speech),
		about: [
			printedFor(pattern.body, request),
			...(request.dated
				? [request.speech.words.paper.madeOn({ day: request.date.toISOString().slice(0, 10) })]
				: []),
			...garment.cautions.map((caution) => request.speech.words.garments.caution({ caution }))
		],
		speech: request.speech,
		font: await request.font(),
		date: request.date,
		...(request.onPage ? { onPage: request.onPage } : {})
	});
};

/**
 * A pattern as a file of the wanted kind. Throws BadInput for a paper or a piece that is not there, and where no piece is
 * left. The same input gives the same bytes.
 */
export const patternFile = async (made: MadePattern, request: FileRequest): Promise<Uint8Array> => {
	const { garment, pattern } = made;
	const { format, speech } = request;
	const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
	const pieces = chosenPieces(pattern, request.pieces);
	const title = speech.words.paper.madeFor({
		what: patternName(garment, pattern, speech),
		body: pattern.body
	});
	if (format === 'csv')
		return bytes((await import('../table/tables.ts')).patternCsv({ ...pattern, pieces }, speech));
	if (format === 'json')
		return bytes(
			`${(await import('../table/pattern-json.ts')).patternJson({ ...pattern, pieces }, speech)}\n`
		);
	if (format === 'dxf') {
		const { dxfFile } = await import('../dxf/dxf.ts');
		const written = pieces.map((piece) => ({
			piece,
			words: [
				...writtenOn(piece, garment, pattern, speech),
				...meetingLines(piece, meetingsOf(piece, garment.seams, pattern.pieces), speech)
			]
		}));
		return Uint8Array.from(dxfFile(written, title, speech), (sign) => sign.charCodeAt(0));
	}
	if (format === 'pdf') return pdf(made, request);
	const draw = drawingOf(garment, pattern, request);
	const laidOut = arranged(
		pieces.map((piece) => draw(piece)),
		SVG_WIDTH
	);
	return bytes((await import('../svg/drawings-svg.ts')).drawingsSvg(laidOut, title));
};
