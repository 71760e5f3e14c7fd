import type { PDFFont, PDFOperator } from '@cantoo/pdf-lib';
import { mm, radians, type Mm } from '#shared/units.ts';
import { pathMapped, polyline, type Path } from '#geometry/path.ts';
import { at, type SheetPoint } from '#geometry/point.ts';
import type { Stroke } from '../drawing/drawing.ts';
import { LINE_STYLES } from '../drawing/line-styles.ts';
import { PAGE_MARGIN, type Paper } from '../sheets/tiles.ts';
import { strokeOperators, widthOf, wordsOperators } from './operators.ts';

/** A row of a table, with a rule under it. */
export interface TextRow {
	readonly kind: 'row';
	readonly cells: readonly string[];
	/** Each column's share of the width. */
	readonly shares: readonly number[];
	/** The table's headings: written again at the head of each page that the table runs on to. */
	readonly head?: boolean;
	/** Room to write in by hand: rules stand between the columns too, and the row is at least so high. */
	readonly room?: Mm;
	/** Lines that are drawn in the first column, from its left and the row's middle; and the row's least height. */
	readonly sample?: readonly Stroke[];
	readonly high?: Mm;
}

/** A part of a page of words. */
export type TextBlock = { readonly kind: 'title' | 'heading' | 'text'; readonly text: string } | TextRow;

/** A table: its headings, then its rows. `room` is the least height of a row that is written in by hand. */
export const table = (
	headings: readonly string[],
	shares: readonly number[],
	rows: readonly (readonly string[])[],
	room?: Mm
): readonly TextRow[] => {
	const row = (cells: readonly string[]): TextRow => ({
		kind: 'row',
		cells,
		shares,
		...(room === undefined ? {} : { room })
	});
	return [{ ...row(headings), head: true }, ...rows.map(row)];
};

/** Heights of writing. */
const SIZES: Readonly<Record<TextBlock['kind'], Mm>> = {
	title: mm(6),
	heading: mm(4.2),
	text: mm(3.4),
	row: mm(3.2)
};
/** Room above a block, in shares of its height. */
const ABOVE: Readonly<Record<TextBlock['kind'], number>> = { title: 0.4, heading: 1.1, text: 0.5, row: 0.4 };
/** Room above a table's headings, as above. */
const ABOVE_HEAD = 1.4;
const LEADING = 1.35;
/** Room under the last line of a block, for what hangs below the line, in shares of its height. */
const BELOW = 0.4;
const RULE = { width: 0.13, dashes: [] } as const;
const HEAD_RULE = { width: 0.35, dashes: [] } as const;
/** White beside a cell's words. */
const GUTTER = 2;
/** White between the page's margin and its words. */
const INDENT = 4;

/** A word as pieces no wider than a width: at least one sign in each, however narrow that is. */
const broken = (word: string, fits: (piece: string) => boolean): readonly string[] => {
	const pieces: string[] = [];
	let piece = '';
	for (const sign of Array.from(word)) {
		if (piece === '' || fits(piece + sign)) {
			piece += sign;
			continue;
		}
		pieces.push(piece);
		piece = sign;
	}
	return [...pieces, piece];
};

/** A number and what belongs to it, its fraction or its unit, with a space that no line ends at. */
const bound = (text: string): string => text.replace(/(\d) (?=\d+\/\d|[cm]m\b)/g, '$1\u00a0');

/** A text as lines no wider than a width; a word wider than that is broken where it must be. */
export const wrapped = (text: string, size: Mm, width: number, font: PDFFont): readonly string[] => {
	const measured = (word: string): number => widthOf(word, size, font);
	const space = measured(' ');
	const lines: string[] = [];
	let [line, reached] = ['', 0];
	for (const word of bound(text)
		.split(/[ \t\r\n]+/)
		.filter(Boolean)) {
		const own = measured(word);
		if (line !== '' && reached + space + own <= width) {
			line += ` ${word}`;
			reached += space + own;
			continue;
		}
		if (line !== '') lines.push(line);
		const pieces = own <= width ? [word] : broken(word, (piece) => measured(piece) <= width);
		lines.push(...pieces.slice(0, -1));
		line = pieces.at(-1) ?? '';
		reached = measured(line);
	}
	return [...lines, line];
};

/** A strip of a page that is never divided: a block, or one line of a block that is longer than a page. */
interface Strip {
	readonly height: number;
	readonly lines: readonly { readonly text: string; readonly right: number; readonly down: number }[];
	readonly size: Mm;
	/** The row that the strip is of, or ends. */
	readonly row?: TextRow;
	readonly rule?: typeof RULE | typeof HEAD_RULE;
	/** Whether it must not stand last on a page. */
	readonly leads: boolean;
}

/** The lines of each column of a block, wrapped. */
const columnsOf = (block: TextBlock, width: number, font: PDFFont) => {
	const [cells, shares] = block.kind === 'row' ? [block.cells, block.shares] : [[block.text], [1]];
	let right = 0;
	return cells.map((text, i) => {
		const room = width * (shares[i] ?? 0);
		const column = { right, lines: wrapped(text, SIZES[block.kind], room - GUTTER, font) };
		right += room;
		return column;
	});
};

/** A block as strips none of which is higher than `most`. */
const stripsOf = (block: TextBlock, width: number, most: number, font: PDFFont): readonly Strip[] => {
	const size = SIZES[block.kind];
	const columns = columnsOf(block, width, font);
	const count = Math.max(...columns.map(({ lines }) => lines.length));
	const strip = (from: number, to: number): Strip => {
		const head = block.kind === 'row' && block.head === true && block.room === undefined;
		const above = from === 0 ? (head ? ABOVE_HEAD : ABOVE[block.kind]) * size : 0;
		const written = above + size + (to - from - 1) * size * LEADING + BELOW * size;
		const last = to === count;
		return {
			height: Math.max(written, (block.kind === 'row' && last && (block.room ?? block.high)) || 0),
			size,
			leads: block.kind !== 'text' && (block.kind !== 'row' || block.head === true),
			lines: columns.flatMap(({ right, lines }) =>
				lines.slice(from, to).map((text, i) => ({ text, right, down: above + size + i * size * LEADING }))
			),
			...(block.kind === 'row' ? { row: block } : {}),
			...(block.kind === 'row' && last ? { rule: block.head ? HEAD_RULE : RULE } : {})
		};
	};
	const whole = strip(0, count);
	if (whole.height <= most) return [whole];
	return Array.from({ length: count }, (_, i) => strip(i, i + 1));
};

/** The upright rules of a row that is written in by hand. */
const uprights = ({ shares }: TextRow, left: number, width: number, top: number, bottom: number): Path[] => {
	const edges = shares.reduce<readonly number[]>((all, share) => [...all, (all.at(-1) ?? 0) + share], [0]);
	return edges.map((edge) => {
		// Words begin at the column's left, so the rule stands in the white before them.
		const x = left + edge * width - GUTTER / 2;
		return polyline(at(x, top), at(x, bottom));
	});
};

const stripOperators = (
	{ lines, size, height, row, rule }: Strip,
	{ left, width }: { readonly left: number; readonly width: number },
	top: number,
	font: PDFFont
): readonly PDFOperator[] => [
	...lines.flatMap(({ text, right, down }) =>
		wordsOperators({ text, at: at(left + right, top + down), middle: false, size, turn: radians(0) }, font)
	),
	...(rule
		? strokeOperators(
				[
					{
						path: polyline(at(left - GUTTER / 2, top + height), at(left + width - GUTTER / 2, top + height))
					}
				],
				rule
			)
		: []),
	...(row?.sample ?? []).flatMap(({ kind, path, closed }) => {
		const put = ({ x, y }: SheetPoint): SheetPoint => at(left + x, top + height / 2 + y);
		return strokeOperators([{ path: pathMapped(path, put), closed }], LINE_STYLES[kind]);
	}),
	...(row?.room === undefined
		? []
		: strokeOperators(
				uprights(row, left, width, top, top + height).map((path) => ({ path })),
				RULE
			))
];

/**
 * Strips dealt out to pages so high. A heading goes on with what it leads; a table's headings are written again where
 * it runs on to a new page.
 */
const dealt = (strips: readonly Strip[], most: number): readonly (readonly Strip[])[] => {
	const pages: Strip[][] = [];
	let page: Strip[] = [];
	let down = 0;
	let head: Strip | undefined;
	for (const [i, strip] of strips.entries()) {
		if (strip.row?.head) head = strip;
		else if (!strip.row) head = undefined;
		let needed = strip.height;
		for (let j = i; strips[j]?.leads === true && strips[j + 1]; j++) needed += strips[j + 1]?.height ?? 0;
		if (page.length > 0 && down + Math.min(needed, most) > most) {
			pages.push(page);
			page = head && head !== strip && head.height + strip.height <= most ? [head] : [];
			down = page.reduce((sum, each) => sum + each.height, 0);
		}
		page.push(strip);
		down += strip.height;
	}
	return [...pages, page];
};

/** Blocks of words set onto pages of a paper, in turn; what stands on each page as operators in millimetres, y down. */
export const textPages = (
	blocks: readonly TextBlock[],
	paper: Paper,
	font: PDFFont
): readonly (readonly PDFOperator[])[] => {
	const column = { left: PAGE_MARGIN + INDENT, width: paper.width - 2 * (PAGE_MARGIN + INDENT) };
	const most = paper.height - 2 * PAGE_MARGIN;
	const strips = blocks.flatMap((block) => stripsOf(block, column.width, most, font));
	return dealt(strips, most).map((page) => {
		let top: number = PAGE_MARGIN;
		return page.flatMap((strip) => {
			const operators = stripOperators(strip, column, top, font);
			top += strip.height;
			return operators;
		});
	});
};
