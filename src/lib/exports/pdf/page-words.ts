import { popGraphicsState, pushGraphicsState, type PDFFont, type PDFOperator } from '@cantoo/pdf-lib';
import { mm, radians, type Mm } from '#shared/units.ts';
import { pathMapped, polyline, type Path } from '#geometry/path.ts';
import { at, type SheetPoint } from '#geometry/point.ts';
import type { Drawing, Words } from '../drawing/drawing.ts';
import type { LineStyle } from '../drawing/line-styles.ts';
import { OVERLAP, PAGE_MARGIN, type Tile } from '../sheets/tiles.ts';
import { strokeOperators, wordsOperators } from './operators.ts';
import type { PagePlan, PdfOptions } from './pattern-pdf.ts';

const FRAME: LineStyle = { width: 0.18, dashes: [] };
const JOIN: LineStyle = { width: 0.18, dashes: [0.6, 1.4] };
const CHECK: LineStyle = { width: 0.25, dashes: [] };
const MAP_INK: LineStyle = { width: 0.13, dashes: [] };

/** Sides of the two squares by which a print is checked: 100 mm, and 4 inches of 25.4 mm. */
export const CHECK_SIDES: readonly [Mm, Mm] = [mm(100), mm(4 * 25.4)];

const NAME_SIZE: Mm = mm(6);
const TEXT_SIZE: Mm = mm(4);
const LEADING = 1.5;

const box = (left: number, top: number, width: number, height: number): { path: Path; closed: true } => ({
	path: polyline(
		at(left, top),
		at(left + width, top),
		at(left + width, top + height),
		at(left, top + height)
	),
	closed: true
});

const words = (text: string, place: SheetPoint, size: Mm, middle = false): Words => ({
	text,
	at: place,
	middle,
	size,
	turn: radians(0)
});

/** Half the arm of an alignment mark's cross. */
const ARM = 3;
/** The shares of a page's side at which alignment marks stand. */
const MARK_SHARES = [0.25, 0.75] as const;

/** A cross in a square: found by eye, and by a program that looks for it. */
const alignmentMark = ({ x, y }: SheetPoint): readonly { path: Path; closed?: true }[] => [
	{ path: polyline(at(x - ARM, y), at(x + ARM, y)) },
	{ path: polyline(at(x, y - ARM), at(x, y + ARM)) },
	box(x - ARM / 2, y - ARM / 2, ARM, ARM)
];

/** The places of a page's alignment marks on the sheet: in the middle of each strip that it shares with a neighbour. */
export const alignmentPlaces = ({ left, top, width, height, cuts, joins }: Tile): readonly SheetPoint[] => {
	const half = OVERLAP / 2;
	const columns = [
		...(cuts.includes('left') ? [left + half] : []),
		...(joins.some(({ edge }) => edge === 'right') ? [left + width - half] : [])
	];
	const rows = [
		...(cuts.includes('top') ? [top + half] : []),
		...(joins.some(({ edge }) => edge === 'bottom') ? [top + height - half] : [])
	];
	return [
		...columns.flatMap((x) => MARK_SHARES.map((share) => at(x, top + height * share))),
		...rows.flatMap((y) => MARK_SHARES.map((share) => at(left + width * share, y)))
	];
};

/** What stands on a page beside the pattern: its frame, its name, what is cut and where it joins. */
export const pageFurniture = (tile: Tile, plan: PagePlan, font: PDFFont): readonly PDFOperator[] => {
	const { width, height, left, top, cuts, joins, name } = tile;
	const onPaper = ({ x, y }: SheetPoint): SheetPoint => at(x - left + PAGE_MARGIN, y - top + PAGE_MARGIN);
	const right = PAGE_MARGIN + width;
	const bottom = PAGE_MARGIN + height;
	const lines = joins.map(({ edge, at: place }) =>
		edge === 'right'
			? { path: polyline(onPaper(at(place, top)), onPaper(at(place, top + height))) }
			: { path: polyline(onPaper(at(left, place)), onPaper(at(left + width, place))) }
	);
	const edges = [
		...(cuts.includes('left') ? ['cut the left edge off'] : []),
		...(cuts.includes('top') ? ['cut the top edge off'] : []),
		...joins.map(({ edge, page }) =>
			plan.blank.includes(page)
				? `${page} is empty`
				: `${page} goes on ${edge === 'right' ? 'the right' : 'below'}`
		)
	];
	return [
		pushGraphicsState(),
		...strokeOperators([box(PAGE_MARGIN, PAGE_MARGIN, width, height)], FRAME),
		...strokeOperators(lines, JOIN),
		...strokeOperators(
			alignmentPlaces(tile).flatMap((place) => alignmentMark(onPaper(place))),
			FRAME
		),
		...wordsOperators(words(name, at(PAGE_MARGIN + 2, bottom + 6), NAME_SIZE), font),
		...wordsOperators(words(edges.join('; '), at(PAGE_MARGIN + 22, bottom + 5.4), mm(3)), font),
		...wordsOperators(words('100 %', at(right - 12, bottom + 5.4), mm(3)), font),
		popGraphicsState()
	];
};

/** The map of the pages, drawn into a place so wide and high. */
const pageMap = (
	plan: PagePlan,
	drawings: readonly Drawing[],
	place: { readonly left: number; readonly top: number; readonly width: number; readonly height: number },
	font: PDFFont
): readonly PDFOperator[] => {
	const { left, top, right, bottom } = plan.bounds;
	const share = Math.min(place.width / (right - left), place.height / (bottom - top));
	const put = ({ x, y }: SheetPoint): SheetPoint =>
		at(place.left + (x - left) * share, place.top + (y - top) * share);
	const outlines = drawings.flatMap(({ strokes }) =>
		strokes
			.filter(({ kind }) => kind === 'cutting' || kind === 'line')
			.map(({ path, closed }) => ({ path: pathMapped(path, put), closed }))
	);
	const pages = plan.every.map((tile) => {
		const corner = put(at(tile.left, tile.top));
		return { tile, ...box(corner.x, corner.y, tile.width * share, tile.height * share) };
	});
	const size = mm(Math.max(1.6, Math.min(4, 22 * share)));
	return [
		...strokeOperators(outlines, MAP_INK),
		...strokeOperators(pages, FRAME),
		...pages.flatMap(({ tile }) => {
			const middle = put(at(tile.left + tile.width / 2, tile.top + tile.height / 2));
			const name = plan.blank.includes(tile.name) ? `(${tile.name})` : tile.name;
			return wordsOperators(words(name, middle, size, true), font);
		})
	];
};

/** The first page: title, how to print and join, the check squares, the map. */
export const firstPage = (
	plan: PagePlan,
	drawings: readonly Drawing[],
	options: PdfOptions,
	font: PDFFont
): readonly PDFOperator[] => {
	const { paper, title, about } = options;
	const [metric, inches] = CHECK_SIDES;
	const left = PAGE_MARGIN + 2;
	const lines = [
		...about,
		`${plan.tiles.length} pages of ${paper.name}. Print at 100 % (actual size), then measure the squares before you trust the rest.`,
		...(plan.tiles.length > 1
			? [
					'Cut the left and the top edge of a page off where it says so, lay it on the dotted line of its neighbour,',
					'cross on cross, and tape. Pages in brackets on the map are empty and are not printed.'
				]
			: [])
	];
	const top = PAGE_MARGIN + 14;
	const written = lines.map((text, i) => words(text, at(left, top + 7 + i * 3.2 * LEADING), mm(3.2)));
	const squareTop = top + 12 + lines.length * 3.2 * LEADING;
	const inchTop = squareTop + metric + 5;
	const mapLeft = left + inches + 6;
	return [
		pushGraphicsState(),
		...wordsOperators(words(title, at(left, top), NAME_SIZE), font),
		...written.flatMap((each) => wordsOperators(each, font)),
		...strokeOperators([box(left, squareTop, metric, metric)], CHECK),
		...strokeOperators([box(left, inchTop, inches, inches)], CHECK),
		...wordsOperators(
			words('Each side is 100 mm.', at(left + metric / 2, squareTop + metric / 2), TEXT_SIZE, true),
			font
		),
		...wordsOperators(
			words('Each side is 4 inches.', at(left + inches / 2, inchTop + inches / 2), TEXT_SIZE, true),
			font
		),
		...pageMap(
			plan,
			drawings,
			{
				left: mapLeft,
				top: squareTop,
				width: paper.width - PAGE_MARGIN - 2 - mapLeft,
				height: paper.height - PAGE_MARGIN - 2 - squareTop
			},
			font
		),
		popGraphicsState()
	];
};
