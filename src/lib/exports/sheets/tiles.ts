import { mm, type Mm } from '#shared/units.ts';
import type { Bounds } from '#geometry/path.ts';

/** A size of paper, upright. */
export interface Paper {
	readonly id: string;
	readonly name: string;
	readonly width: Mm;
	readonly height: Mm;
}

/** Papers that are found at home: ISO 216 (A4, A3) and the North American letter, 8 1/2 by 11 inches. */
export const PAPERS: readonly Paper[] = [
	{ id: 'a4', name: 'A4', width: mm(210), height: mm(297) },
	{ id: 'letter', name: 'US Letter', width: mm(215.9), height: mm(279.4) },
	{ id: 'a3', name: 'A3', width: mm(297), height: mm(420) }
];

/** Unprinted edge of a page: common home printers need 3 to 6 mm, so 10 is safe. */
export const PAGE_MARGIN: Mm = mm(10);
/** How far neighbouring pages repeat each other, so that they can be laid over one another and joined. */
export const OVERLAP: Mm = mm(10);

/** One page of a tiled sheet: its name and the part of the sheet that it shows. */
export interface Tile {
	/** Row letter and column number, "B2". */
	readonly name: string;
	readonly left: Mm;
	readonly top: Mm;
	readonly width: Mm;
	readonly height: Mm;
}

const LETTERS = 26;

/** A to Z, then AA, AB and on, so that no two rows share a name. */
const rowLetter = (row: number): string => {
	const before = row < LETTERS ? '' : rowLetter(Math.floor(row / LETTERS) - 1);
	return before + String.fromCharCode('A'.charCodeAt(0) + (row % LETTERS));
};

/** The pages that cover `bounds` on a paper, in reading order, each overlapping its neighbours by OVERLAP. */
export const tilesOver = (bounds: Bounds, paper: Paper): readonly Tile[] => {
	const width = mm(paper.width - 2 * PAGE_MARGIN);
	const height = mm(paper.height - 2 * PAGE_MARGIN);
	const count = (length: number, page: Mm): number =>
		Math.max(1, Math.ceil((length - OVERLAP) / (page - OVERLAP)));
	const [columns, rows] = [
		count(bounds.right - bounds.left, width),
		count(bounds.bottom - bounds.top, height)
	];
	return Array.from({ length: rows * columns }, (_, i) => {
		const [row, column] = [Math.floor(i / columns), i % columns];
		return {
			name: `${rowLetter(row)}${column + 1}`,
			left: mm(bounds.left + column * (width - OVERLAP)),
			top: mm(bounds.top + row * (height - OVERLAP)),
			width,
			height
		};
	});
};
