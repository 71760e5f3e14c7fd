import { BadInput } from '#shared/bad-input.ts';
import { didYouMean } from '#shared/nearest-name.ts';
import { mm, type Unit } from '#shared/units.ts';
import { cautionWords } from '#garment/cautions.ts';
import type { Garment } from '#garment/garment.ts';
import type { Pattern } from '#garment/pattern.ts';
import type { Piece } from '#garment/piece.ts';
import { pieceWords } from '#garment/words.ts';
import { arranged } from '../drawing/arrange.ts';
import { drawingScaled, type Drawing } from '../drawing/drawing.ts';
import { pieceDrawing } from '../drawing/piece-drawing.ts';
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
	readonly unit: Unit;
	/** Written into a PDF. */
	readonly date: Date;
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
	const ids = ALL_PAPERS.map((each) => each.id);
	const paper = ALL_PAPERS.find((each) => each.id === id.toLowerCase());
	if (!paper)
		throw new BadInput(
			'paper',
			`there is no paper "${id}"${didYouMean(id, ids)}; there are ${ids.join(', ')}`
		);
	return paper;
};

/** The pieces that were asked for, in the pattern's order. Throws BadInput for a key that the pattern does not have. */
const chosenPieces = ({ pieces }: Pattern, wanted: readonly string[]): readonly Piece[] => {
	const keys = pieces.map(({ key }) => key);
	const unknown = wanted.find((key) => !keys.includes(key));
	if (unknown !== undefined)
		throw new BadInput(
			'pieces',
			`there is no piece "${unknown}"${didYouMean(unknown, keys)}; there are ${keys.join(', ')}`
		);
	return wanted.length === 0 ? pieces : pieces.filter(({ key }) => wanted.includes(key));
};

/** What is written on a piece. */
const writtenOn = (piece: Piece, garment: Garment, { body }: Pattern, unit: Unit): readonly string[] => [
	...pieceWords(piece, body, unit),
	garment.name
];

/** What a drawing says of its own scale. */
export const SCALE_WORDS: Readonly<Record<ScaleName, string>> = {
	full: 'Drawn at full size.',
	half: 'Drawn at half size, for class work: do not cut cloth by it.',
	quarter: 'Drawn at a quarter of its size, for class work: do not cut cloth by it.'
};

/** The chosen pieces as they are drawn at the wanted scale. */
const drawn = (
	garment: Garment,
	pattern: Pattern,
	{ pieces, scale, unit }: Pick<FileRequest, 'pieces' | 'scale' | 'unit'>
): readonly Drawing[] =>
	chosenPieces(pattern, pieces).map((piece) =>
		drawingScaled(pieceDrawing(piece, writtenOn(piece, garment, pattern, unit)), SCALES[scale])
	);

/** The pieces as they are laid out on the paper of a PDF, and that paper. */
export interface PatternSheet {
	readonly paper: Paper;
	readonly drawings: readonly Drawing[];
}

/** Lays the chosen pieces out on a paper. Throws BadInput for a paper or a piece that is not there. */
export const patternSheet = (
	garment: Garment,
	pattern: Pattern,
	request: Pick<FileRequest, 'pieces' | 'paper' | 'scale' | 'unit'>
): PatternSheet => {
	const paper = paperOf(request.paper);
	const drawings = drawn(garment, pattern, request);
	const onSheet = SHEETS.includes(paper)
		? arranged(drawings, mm(paper.width - 2 * PAGE_MARGIN - 6))
		: onFewestPages(drawings, paper);
	return { paper, drawings: onSheet };
};

const pdf = async (garment: Garment, pattern: Pattern, request: FileRequest): Promise<Uint8Array> => {
	const { paper, drawings } = patternSheet(garment, pattern, request);
	const { patternPdf } = await import('../pdf/pattern-pdf.ts');
	return patternPdf(drawings, {
		paper,
		title: garment.name,
		about: [`For ${pattern.body}. ${SCALE_WORDS[request.scale]}`, ...cautionWords(garment.cautions)],
		unit: request.unit,
		font: await request.font(),
		date: request.date,
		...(request.onPage ? { onPage: request.onPage } : {})
	});
};

/**
 * A pattern as a file of the wanted kind. Throws BadInput for a paper or a piece that is not there, and where no piece is
 * left. The same input gives the same bytes.
 */
export const patternFile = async (
	garment: Garment,
	pattern: Pattern,
	request: FileRequest
): Promise<Uint8Array> => {
	const { format, unit } = request;
	const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
	const pieces = chosenPieces(pattern, request.pieces);
	const title = `${garment.name} for ${pattern.body}`;
	const words = (piece: Piece): readonly string[] => writtenOn(piece, garment, pattern, unit);
	if (format === 'csv') return bytes((await import('../table/tables.ts')).patternCsv({ ...pattern, pieces }));
	if (format === 'json')
		return bytes(`${(await import('../table/pattern-json.ts')).patternJson({ ...pattern, pieces }, unit)}\n`);
	if (format === 'dxf') {
		const { dxfFile } = await import('../dxf/dxf.ts');
		return bytes(
			dxfFile(
				pieces.map((piece) => ({ piece, words: words(piece) })),
				title
			)
		);
	}
	if (format === 'pdf') return pdf(garment, pattern, request);
	const laidOut = arranged(drawn(garment, pattern, request), SVG_WIDTH);
	return bytes((await import('../svg/drawings-svg.ts')).drawingsSvg(laidOut, title));
};
