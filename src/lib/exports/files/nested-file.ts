import { BadInput } from '#shared/bad-input.ts';
import { message } from '#shared/speech/message.ts';
import type { Speech } from '#shared/speech/speech.ts';
import { mm } from '#shared/units.ts';
import { refusalWords } from '#drafting/evaluate.ts';
import type { Garment } from '#garment/garment.ts';
import { growthOf } from '#garment/growth.ts';
import { nest, type Nest, type NestedPiece, type SizedBody } from '#garment/nested.ts';
import type { Choices } from '#garment/sewn.ts';
import { patternName, pieceWords } from '#garment/words.ts';
import { arranged } from '../drawing/arrange.ts';
import { drawingScaled, type Drawing } from '../drawing/drawing.ts';
import { MOST_SIZES, nestedDrawing, nestKey } from '../drawing/nested-drawing.ts';
import { csv } from '../table/csv.ts';
import { onFewestPages } from '../sheets/fewest-pages.ts';
import { PAGE_MARGIN, SHEETS } from '../sheets/tiles.ts';
import { paperOf, SCALES, type FileRequest, type Format } from './pattern-file.ts';

/** The kinds of file that several sizes can be saved as. */
export const NEST_FORMATS = ['pdf', 'svg', 'dxf', 'csv'] as const satisfies readonly Format[];
export type NestFormat = (typeof NEST_FORMATS)[number];

/** Several sizes, and what they were made from. */
export interface MadeNest {
	readonly garment: Garment;
	readonly nest: Nest;
}

/** Width of the paper that an SVG's pieces are laid out on, as a single pattern's are. */
const SVG_WIDTH = mm(1500);
const LEAST_SIZES = 2;

/** Throws BadInput where a sheet cannot hold so many sizes: before any is made, for a list may be of any length. */
export const checkCount = (count: number): void => {
	if (count < LEAST_SIZES || count > MOST_SIZES)
		throw new BadInput('sizes', message('nested', 'twoToSeven', { count, most: MOST_SIZES }));
};

/** Makes a garment in several sizes. Throws BadInput where they are too few or too many, one is named twice, or one cannot be drafted. */
export const madeNest = (
	garment: Garment,
	bodies: readonly SizedBody[],
	choices: Choices,
	speech: Speech
): MadeNest => {
	checkCount(bodies.length);
	const twice = bodies.find(({ name }, i) => bodies.findIndex((each) => each.name === name) !== i);
	if (twice) throw new BadInput('sizes', message('nested', 'twice', { name: twice.name }));
	const work = nest(garment, bodies, choices);
	if (work.kind === 'made') return { garment, nest: work.nest };
	const reasons = work.refusals.map((each) => refusalWords(each, speech));
	throw new BadInput('sizes', message('nested', 'refused', { size: work.size, reasons }));
};

const namesOf = ({ nest: { sizes } }: MadeNest): readonly string[] => sizes.map(({ name }) => name);

/** What a sheet of several sizes is called. */
export const nestTitle = (made: MadeNest, speech: Speech): string => {
	const [first] = made.nest.sizes;
	const what = first ? patternName(made.garment, first.pattern, speech) : made.garment.name;
	return speech.words.nested.title({ what, sizes: namesOf(made) });
};

/** What is written on a piece: of the smallest, for all sizes. */
const writtenOn = ({ sizes }: NestedPiece, made: MadeNest, speech: Speech): readonly string[] => {
	const [smallest] = sizes;
	if (!smallest) return [];
	const [name = '', , ...rest] = pieceWords(smallest.piece, '', speech);
	return [name, speech.words.nested.forSizes({ sizes: namesOf(made) }), ...rest, made.garment.name];
};

/** The chosen pieces as they are drawn, and the key that says which line is which size. */
export const nestDrawings = (
	made: MadeNest,
	{ pieces, scale, speech }: Pick<FileRequest, 'pieces' | 'scale' | 'speech'>
): readonly Drawing[] => [
	...made.nest.pieces
		.filter(({ key }) => pieces.length === 0 || pieces.includes(key))
		.map((piece) => drawingScaled(nestedDrawing(piece, writtenOn(piece, made, speech)), SCALES[scale])),
	nestKey(namesOf(made), speech)
];

const pdf = async (made: MadeNest, request: FileRequest): Promise<Uint8Array> => {
	const { speech, scale } = request;
	const paper = paperOf(request.paper);
	const drawings = nestDrawings(made, request);
	const { nested, paper: printed, garments } = speech.words;
	const { patternPdf } = await import('../pdf/pattern-pdf.ts');
	return patternPdf(
		SHEETS.includes(paper)
			? arranged(drawings, mm(paper.width - 2 * PAGE_MARGIN - 6))
			: onFewestPages(drawings, paper),
		{
			paper,
			title: nestTitle(made, speech),
			about: [
				printed.scale({ scale }),
				nested.cutOne,
				nested.estimated,
				...(request.dated ? [printed.madeOn({ day: request.date.toISOString().slice(0, 10) })] : []),
				...made.garment.cautions.map((caution) => garments.caution({ caution }))
			],
			speech,
			font: await request.font(),
			date: request.date,
			...(request.onPage ? { onPage: request.onPage } : {})
		}
	);
};

/** Blocks of a drawing file, one for each size of each piece, laid on each other. */
const dxf = async (made: MadeNest, { pieces, speech }: FileRequest): Promise<Uint8Array> => {
	const { dxfFile } = await import('../dxf/dxf.ts');
	const written = made.nest.pieces
		.filter(({ key }) => pieces.length === 0 || pieces.includes(key))
		.flatMap(({ key, sizes }) =>
			sizes.map(({ name, piece, on }) => ({
				piece: { ...piece, name: `${name} ${piece.name}` },
				words: pieceWords(piece, speech.words.nested.size({ name }), speech),
				on,
				sizeOf: key
			}))
		);
	const text = dxfFile(written, nestTitle(made, speech), speech);
	return Uint8Array.from(text, (sign) => sign.charCodeAt(0));
};

const THOUSANDTHS = 1000;
const rounded = (length: number): number => Math.round(length * THOUSANDTHS) / THOUSANDTHS + 0;

/** How each edge grows, in millimetres, and below it the seams that grow unevenly. */
const growthCsv = ({ nest: made }: MadeNest, { words: { nested, paper } }: Speech): string => {
	const { edges, uneven } = growthOf(made);
	const { columns } = nested;
	const names = made.sizes.map(({ name }) => name);
	return csv([
		[columns.piece, columns.edge, ...names, ...names.slice(1).map((name) => `${columns.grows} ${name}`)],
		...edges.map(({ pieceName, edge, title, lengths, growth }) => [
			pieceName,
			paper.keyed({ key: edge, noun: { name: title } }),
			...lengths.map((length) => (length === undefined ? '' : rounded(length))),
			...growth.slice(1).map((by) => (by === undefined ? '' : rounded(by)))
		]),
		...uneven.map((seam) => [
			nested.unevenColumn,
			nested.uneven(seam),
			...names.map(() => ''),
			...names.slice(1).map((name) => (name === seam.to ? rounded(seam.second - seam.first) : ''))
		])
	]);
};

/** Several sizes of a pattern as a file of the wanted kind. Throws BadInput for a paper that is not there and a kind that cannot be. */
export const nestedFile = async (made: MadeNest, request: FileRequest): Promise<Uint8Array> => {
	const { format, speech } = request;
	const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
	if (format === 'pdf') return pdf(made, request);
	if (format === 'dxf') return dxf(made, request);
	if (format === 'csv') return bytes(growthCsv(made, speech));
	if (format !== 'svg')
		throw new BadInput('sizes', message('nested', 'noFormat', { format, formats: NEST_FORMATS }));
	const { drawingsSvg } = await import('../svg/drawings-svg.ts');
	return bytes(drawingsSvg(arranged(nestDrawings(made, request), SVG_WIDTH), nestTitle(made, speech)));
};
