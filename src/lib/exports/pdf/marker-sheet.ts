import { fill, rectangle, setFillingGrayscaleColor, type PDFOperator } from '@cantoo/pdf-lib';
import { mm, radians, type Mm } from '#shared/units.ts';
import { polyline } from '#geometry/path.ts';
import { at, type SheetPoint } from '#geometry/point.ts';
import {
	CARDS,
	CHECK_LINE,
	LARGE_SHEET,
	SMALL_SHEET,
	type MarkerSheet,
	type PrintedMarker
} from '#photograph/marker-places.ts';
import { CELLS_ACROSS, whiteCells } from '#photograph/markers.ts';
import { PAGE_MARGIN } from '../sheets/tiles.ts';
import { addPage, closeFile, openFile, type FileOptions, type OpenFile } from './file.ts';
import { strokeOperators, wordsOperators, written } from './operators.ts';

/** Room at the foot of a page of cards for its check line and its words. */
const FOOT: Mm = mm(26);
const CUT = { width: 0.18, dashes: [2, 2] } as const;
const CHECK = { width: 0.35, dashes: [] } as const;

const square = (x: number, y: number, side: number): PDFOperator =>
	rectangle(written(x), written(y), written(side), written(side));

/** A marker: its black square, and its white cells over it, so that no two black ones are parted by a hair of white. */
const markerOperators = (
	{ id, side, at: { x, y } }: PrintedMarker,
	from: SheetPoint
): readonly PDFOperator[] => {
	const cell = side / CELLS_ACROSS;
	const white = whiteCells(id).flatMap((row, down) =>
		row.flatMap((isWhite, across) =>
			isWhite ? [square(from.x + x + (across + 1) * cell, from.y + y + (down + 1) * cell, cell)] : []
		)
	);
	return [
		setFillingGrayscaleColor(0),
		square(from.x + x, from.y + y, side),
		fill(),
		setFillingGrayscaleColor(1),
		...white,
		fill(),
		setFillingGrayscaleColor(0)
	];
};

const words = (text: string, place: SheetPoint, size: number, file: OpenFile): readonly PDFOperator[] =>
	wordsOperators({ text, at: place, middle: true, size: mm(size), turn: radians(0) }, file.font);

/** A line with a tick at each end, by which it is seen whether the printer kept the size, and what it should measure. */
const checkOperators = (sheet: MarkerSheet, middle: SheetPoint, file: OpenFile): readonly PDFOperator[] => {
	const length = CHECK_LINE[sheet];
	const [left, right] = [middle.x - length / 2, middle.x + length / 2];
	const [above, below] = [middle.y - 2.5, middle.y + 2.5];
	const { markers } = file.speech.words;
	return [
		...strokeOperators(
			[
				{ path: polyline(at(left, middle.y), at(right, middle.y)) },
				{ path: polyline(at(left, above), at(left, below)) },
				{ path: polyline(at(right, above), at(right, below)) }
			],
			CHECK
		),
		...markers
			.check({ length })
			.split(/(?<=[.]) /)
			.flatMap((line, i) => words(line, at(middle.x, middle.y + 6 + i * 4), 2.8, file))
	];
};

/** Four cards to cut out, each with its marker and its number. */
const cardOperators = ({ paper }: FileOptions, file: OpenFile): readonly PDFOperator[] => {
	const { markers } = file.speech.words;
	const width = (paper.width - 2 * PAGE_MARGIN) / 2;
	const height = (paper.height - 2 * PAGE_MARGIN - FOOT) / 2;
	const cards = CARDS.flatMap(({ markers: printed }, i) => {
		const [left, top] = [PAGE_MARGIN + (i % 2) * width, PAGE_MARGIN + Math.floor(i / 2) * height];
		return printed.flatMap((marker) => {
			const from = at(left + (width - marker.side) / 2, top + (height - marker.side) / 2 - 4);
			const name = words(markers.card({ number: i + 1 }), at(left + width / 2, top + height - 5), 4, file);
			return [...markerOperators(marker, from), ...name];
		});
	});
	const [right, middle, bottom] = [PAGE_MARGIN + 2 * width, PAGE_MARGIN + height, PAGE_MARGIN + 2 * height];
	const cuts = [
		polyline(at(PAGE_MARGIN, middle), at(right, middle)),
		polyline(at(PAGE_MARGIN + width, PAGE_MARGIN), at(PAGE_MARGIN + width, bottom)),
		polyline(
			at(PAGE_MARGIN, PAGE_MARGIN),
			at(right, PAGE_MARGIN),
			at(right, bottom),
			at(PAGE_MARGIN, bottom),
			at(PAGE_MARGIN, PAGE_MARGIN)
		)
	];
	const foot = at(paper.width / 2, bottom + 12);
	return [
		...cards,
		...strokeOperators(
			cuts.map((path) => ({ path })),
			CUT
		),
		...words(markers.cutOut, at(foot.x, bottom + 6), 2.8, file),
		...checkOperators('cards', foot, file)
	];
};

/** A sheet with markers round its rim: as it lies between the margins of its paper. */
const rimOperators = (
	sheet: Exclude<MarkerSheet, 'cards'>,
	{ paper }: FileOptions,
	file: OpenFile
): readonly PDFOperator[] => {
	const { markers: printed } = sheet === 'small-sheet' ? SMALL_SHEET : LARGE_SHEET;
	const [first] = printed;
	const across = Math.max(...printed.map(({ at: { x }, side }) => x + side));
	const left = (paper.width - across) / 2;
	const middle = at(paper.width / 2, PAGE_MARGIN + 10);
	return [
		...printed.flatMap((marker) => markerOperators(marker, at(left, PAGE_MARGIN))),
		...words(file.speech.words.markers.drawWithin, at(middle.x, PAGE_MARGIN + (first?.side ?? 0)), 2.8, file),
		...checkOperators(sheet, middle, file)
	];
};

/**
 * One page of markers at true scale: cards to cut out, or a sheet with markers round its rim. The same input gives the same bytes.
 */
export const markerSheetPdf = async (sheet: MarkerSheet, options: FileOptions): Promise<Uint8Array> => {
	const file = await openFile(options);
	const operators = sheet === 'cards' ? cardOperators(options, file) : rimOperators(sheet, options, file);
	addPage(file, options.paper, operators);
	return closeFile(file);
};
