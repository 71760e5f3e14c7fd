import type { PDFFont, PDFOperator } from '@cantoo/pdf-lib';
import { mm, radians, type Mm } from '#shared/units.ts';
import { polyline } from '#geometry/path.ts';
import { at } from '#geometry/point.ts';
import { PAGE_MARGIN, type Paper } from '../sheets/tiles.ts';
import { strokeOperators, wordsOperators, writable } from './operators.ts';

/** A part of a page of words: a title, a heading, running text, or a row of a table with a rule under it. */
export type TextBlock =
	| { readonly kind: 'title' | 'heading' | 'text'; readonly text: string }
	| { readonly kind: 'row'; readonly cells: readonly string[]; readonly shares: readonly number[] };

/** Heights of writing. */
const SIZES: Readonly<Record<TextBlock['kind'], Mm>> = {
	title: mm(6),
	heading: mm(4.2),
	text: mm(3.4),
	row: mm(3.2)
};
/** Room above a block, in shares of its height. */
const ABOVE: Readonly<Record<TextBlock['kind'], number>> = { title: 0.4, heading: 1.1, text: 0.5, row: 0.4 };
const LEADING = 1.35;
const RULE = { width: 0.13, dashes: [] } as const;
/** White beside a cell's words. */
const GUTTER = 2;

/** A text as lines no wider than a width; a word wider than that is broken where it must be. */
export const wrapped = (text: string, size: Mm, width: number, font: PDFFont): readonly string[] => {
	const fits = (line: string): boolean => font.widthOfTextAtSize(writable(line, font), size) <= width;
	const lines: string[] = [];
	let line = '';
	for (const word of text.split(/\s+/).filter(Boolean)) {
		const longer = line === '' ? word : `${line} ${word}`;
		if (fits(longer)) {
			line = longer;
			continue;
		}
		if (line !== '') lines.push(line);
		line = word;
		while (!fits(line)) {
			let cut = line.length - 1;
			while (cut > 1 && !fits(line.slice(0, cut))) cut--;
			lines.push(line.slice(0, cut));
			line = line.slice(cut);
		}
	}
	return line === '' && lines.length > 0 ? lines : [...lines, line];
};

/** A block set into lines: each piece of writing with how far right and how far down it stands. */
interface SetBlock {
	readonly height: number;
	readonly lines: readonly { readonly text: string; readonly right: number; readonly down: number }[];
	readonly size: Mm;
	readonly ruled: boolean;
}

const setBlock = (block: TextBlock, width: number, font: PDFFont): SetBlock => {
	const size = SIZES[block.kind];
	const above = ABOVE[block.kind] * size;
	const columns = block.kind === 'row' ? block.cells : [block.text];
	const shares = block.kind === 'row' ? block.shares : [1];
	let right = 0;
	const lines = columns.flatMap((text, i) => {
		const room = width * (shares[i] ?? 0);
		const own = wrapped(text, size, room - GUTTER, font).map((each, row) => ({
			text: each,
			right,
			down: above + size + row * size * LEADING
		}));
		right += room;
		return own;
	});
	const height = Math.max(...lines.map(({ down }) => down)) + size * 0.4;
	return { height, lines, size, ruled: block.kind === 'row' };
};

/** Blocks of words set onto pages of a paper, in turn; what stands on each page as operators in millimetres, y down. */
export const textPages = (
	blocks: readonly TextBlock[],
	paper: Paper,
	font: PDFFont
): readonly (readonly PDFOperator[])[] => {
	const [left, width] = [PAGE_MARGIN + 4, paper.width - 2 * PAGE_MARGIN - 8];
	const bottom = paper.height - PAGE_MARGIN;
	const pages: PDFOperator[][] = [[]];
	let down: number = PAGE_MARGIN;
	for (const block of blocks) {
		const { height, lines, size, ruled } = setBlock(block, width, font);
		if (down + height > bottom && down > PAGE_MARGIN) {
			pages.push([]);
			down = PAGE_MARGIN;
		}
		const base = down;
		pages.at(-1)?.push(
			...lines.flatMap((line) =>
				wordsOperators(
					{
						text: line.text,
						at: at(left + line.right, base + line.down),
						middle: false,
						size,
						turn: radians(0)
					},
					font
				)
			),
			...(ruled
				? strokeOperators(
						[{ path: polyline(at(left, base + height), at(left + width, base + height)) }],
						RULE
					)
				: [])
		);
		down += height;
	}
	return pages;
};
