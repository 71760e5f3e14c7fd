import type { PDFOperator } from '@cantoo/pdf-lib';
import { mm, radians, type Mm } from '#shared/units.ts';
import { polyline } from '#geometry/path.ts';
import { at, type SheetPoint } from '#geometry/point.ts';
import {
	CARDS,
	CARDS_ON_PAGE,
	CHECK_LINE,
	LARGE_SHEET,
	SMALL_SHEET,
	type MarkerSheet,
	type PrintedMarker
} from '#photograph/marker-places.ts';
import { whiteCells } from '#photograph/markers.ts';
import { PAGE_MARGIN } from '../sheets/tiles.ts';
import { addPage, closeFile, openFile, type FileOptions, type OpenFile } from './file.ts';
import { markerOperators, strokeOperators, wordsOperators } from './operators.ts';

/** Room at the foot of a page of cards for its check line and its words. */
const FOOT: Mm = mm(26);
const CUT = { width: 0.18, dashes: [2, 2] } as const;
const CHECK = { width: 0.35, dashes: [] } as const;

/** A marker of ours, as it is drawn from its paper's own corner. */
const printed = ({ id, side, at: { x, y } }: PrintedMarker, from: SheetPoint): readonly PDFOperator[] =>
	markerOperators({ at: at(from.x + x, from.y + y), side, white: whiteCells(id) });

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

/** Four cards to cut out, each with its marker and its number: those for the corners, and then those for half way between. */
const cardOperators = ({ paper }: FileOptions, file: OpenFile, from: number): readonly PDFOperator[] => {
	const { markers } = file.speech.words;
	const width = (paper.width - 2 * PAGE_MARGIN) / 2;
	const height = (paper.height - 2 * PAGE_MARGIN - FOOT) / 2;
	const cards = CARDS.slice(from, from + CARDS_ON_PAGE).flatMap(({ markers: own }, i) => {
		const [left, top] = [PAGE_MARGIN + (i % 2) * width, PAGE_MARGIN + Math.floor(i / 2) * height];
		return own.flatMap((marker) => {
			const corner = at(left + (width - marker.side) / 2, top + (height - marker.side) / 2 - 4);
			const name = words(
				markers.card({ number: from + i + 1 }),
				at(left + width / 2, top + height - 5),
				4,
				file
			);
			return [...printed(marker, corner), ...name];
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
		...words(from === 0 ? markers.cutOut : markers.cutOutBetween, at(foot.x, bottom + 6), 2.8, file),
		...checkOperators('cards', foot, file)
	];
};

/** A sheet with markers round its rim: as it lies between the margins of its paper. */
const rimOperators = (
	sheet: Exclude<MarkerSheet, 'cards'>,
	{ paper }: FileOptions,
	file: OpenFile
): readonly PDFOperator[] => {
	const { markers: own } = sheet === 'small-sheet' ? SMALL_SHEET : LARGE_SHEET;
	const [first] = own;
	const across = Math.max(...own.map(({ at: { x }, side }) => x + side));
	const left = (paper.width - across) / 2;
	const middle = at(paper.width / 2, PAGE_MARGIN + 10);
	return [
		...own.flatMap((marker) => printed(marker, at(left, PAGE_MARGIN))),
		...words(file.speech.words.markers.drawWithin, at(middle.x, PAGE_MARGIN + (first?.side ?? 0)), 2.8, file),
		...checkOperators(sheet, middle, file)
	];
};

/**
 * Markers at true scale: two pages of cards to cut out, or a sheet with markers round its rim. The same input gives the same bytes.
 */
export const markerSheetPdf = async (sheet: MarkerSheet, options: FileOptions): Promise<Uint8Array> => {
	const file = await openFile(options);
	const pages =
		sheet === 'cards'
			? [0, CARDS_ON_PAGE].map((from) => cardOperators(options, file, from))
			: [rimOperators(sheet, options, file)];
	for (const operators of pages) addPage(file, options.paper, operators);
	return closeFile(file);
};
