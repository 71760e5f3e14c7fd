import type { Speech } from '#shared/speech/speech.ts';
import { mm, type Mm } from '#shared/units.ts';
import type { Bounds } from '#geometry/path.ts';

/** A size of paper, upright. */
export interface Paper {
	readonly id: string;
	readonly width: Mm;
	readonly height: Mm;
}

/** Papers that are found at home: ISO 216 (A4, A3) and the North American letter, 8 1/2 by 11 inches. */
export const PAPERS: readonly Paper[] = [
	{ id: 'a4', width: mm(210), height: mm(297) },
	{ id: 'letter', width: mm(215.9), height: mm(279.4) },
	{ id: 'a3', width: mm(297), height: mm(420) }
];

/** The longest sheet of a roll: a page of a PDF file is at most 14,400 points long, 5,080 mm (ISO 32000-1, annex C). */
const LONGEST: Mm = mm(5000);

/** Paper off a roll of a usual width, cut off where the drawing ends. */
export const ROLLS: readonly Paper[] = [
	{ id: 'roll-60', width: mm(600), height: LONGEST },
	{ id: 'roll-90', width: mm(900), height: LONGEST }
];

/** What a paper is called: paper off a roll by its width. */
export const paperName = (paper: Paper, { words }: Speech): string =>
	ROLLS.some(({ id }) => id === paper.id) ? words.paper.roll(paper) : words.paper.sheet(paper);

/** One long sheet: ISO 216's A0, or paper off a roll. */
export const SHEETS: readonly Paper[] = [{ id: 'a0', width: mm(841), height: mm(1189) }, ...ROLLS];

/** Unprinted edge of a page: common home printers need 3 to 6 mm, so 10 is safe. */
export const PAGE_MARGIN: Mm = mm(10);
/** How far neighbouring pages repeat each other, so that they can be laid over one another and joined. */
export const OVERLAP: Mm = mm(10);

/** A dotted line across a page, `OVERLAP` inside its right or lower edge, on which the next page's cut edge is laid. */
export interface Join {
	readonly edge: 'right' | 'bottom';
	/** The page that is laid here. */
	readonly page: string;
	/** How far across (right) or down (bottom) the sheet the line lies. */
	readonly at: Mm;
}

/** One page of a tiled sheet: its name and the part of the sheet that it shows. */
export interface Tile {
	/** Row letter and column number, "B2". */
	readonly name: string;
	readonly left: Mm;
	readonly top: Mm;
	readonly width: Mm;
	readonly height: Mm;
	/** The edges whose white margin is cut off, because this page is laid over another there. */
	readonly cuts: readonly ('left' | 'top')[];
	/** Where other pages are laid over this one. */
	readonly joins: readonly Join[];
}

const LETTERS = 26;

/** A to Z, then AA, AB and on, so that no two rows share a name. */
const rowLetter = (row: number): string => {
	const before = row < LETTERS ? '' : rowLetter(Math.floor(row / LETTERS) - 1);
	return before + String.fromCharCode('A'.charCodeAt(0) + (row % LETTERS));
};

/** How many pages of a length cover a length, each repeating OVERLAP of the one before. */
const pagesOver = (length: number, page: Mm): number =>
	Math.max(1, Math.ceil((length - OVERLAP) / (page - OVERLAP)));

/** The pages that cover `bounds` on a paper, in reading order, each overlapping its neighbours by OVERLAP. */
export const tilesOver = (bounds: Bounds, paper: Paper): readonly Tile[] => {
	const width = mm(paper.width - 2 * PAGE_MARGIN);
	const height = mm(paper.height - 2 * PAGE_MARGIN);
	const columns = pagesOver(bounds.right - bounds.left, width);
	const rows = pagesOver(bounds.bottom - bounds.top, height);
	const name = (row: number, column: number): string => `${rowLetter(row)}${column + 1}`;
	return Array.from({ length: rows * columns }, (_, i) => {
		const [row, column] = [Math.floor(i / columns), i % columns];
		const left = mm(bounds.left + column * (width - OVERLAP));
		const top = mm(bounds.top + row * (height - OVERLAP));
		const right: Join = { edge: 'right', page: name(row, column + 1), at: mm(left + width - OVERLAP) };
		const bottom: Join = { edge: 'bottom', page: name(row + 1, column), at: mm(top + height - OVERLAP) };
		return {
			name: name(row, column),
			left,
			top,
			width,
			height,
			cuts: [...(column > 0 ? (['left'] as const) : []), ...(row > 0 ? (['top'] as const) : [])],
			joins: [...(column + 1 < columns ? [right] : []), ...(row + 1 < rows ? [bottom] : [])]
		};
	});
};
