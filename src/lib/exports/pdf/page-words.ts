import { popGraphicsState, pushGraphicsState, type PDFFont, type PDFOperator } from '@cantoo/pdf-lib';
import type { Speech } from '#shared/speech/speech.ts';
import { mm, radians, type Mm } from '#shared/units.ts';
import { pathMapped, polyline, type Path } from '#geometry/path.ts';
import { at, type SheetPoint } from '#geometry/point.ts';
import { drawingBounds, isEmpty, type Drawing, type Words } from '../drawing/drawing.ts';
import type { LineStyle } from '../drawing/line-styles.ts';
import { OVERLAP, PAGE_MARGIN, paperName, type Paper, type Tile } from '../sheets/tiles.ts';
import type { OpenFile } from './file.ts';
import { strokeOperators, wordsOperators } from './operators.ts';
import { wrapped } from './text-pages.ts';
import type { PagePlan } from '../sheets/page-plan.ts';
import type { Worn } from '#garment/worn/worn.ts';
import { wornPicture, type Place } from './worn-picture.ts';

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
export const alignmentMark = ({ x, y }: SheetPoint): readonly { path: Path; closed?: true }[] => [
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
export const pageFurniture = (
	tile: Tile,
	plan: PagePlan,
	{ font, speech }: OpenFile
): readonly PDFOperator[] => {
	const { paper } = speech.words;
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
		...cuts.map((edge) => paper.cutOff({ edge })),
		...joins.map(({ edge, page }) =>
			plan.blank.includes(page) ? paper.pageEmpty({ page }) : paper.pageGoesOn({ page, edge })
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
		...wordsOperators(words(paper.fullSize, at(right - 12, bottom + 5.4), mm(3)), font),
		popGraphicsState()
	];
};

/** The map of the pages, drawn into a place so wide and high. */
const pageMap = (
	plan: PagePlan,
	drawings: readonly Drawing[],
	place: Place,
	font: PDFFont
): readonly PDFOperator[] => {
	// Whole pages, which reach further than what is drawn.
	const left = Math.min(...plan.every.map((tile) => tile.left));
	const top = Math.min(...plan.every.map((tile) => tile.top));
	const right = Math.max(...plan.every.map((tile) => tile.left + tile.width));
	const bottom = Math.max(...plan.every.map((tile) => tile.top + tile.height));
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

/** What the first page is made with. */
interface FirstPageOptions {
	/** The paper that the drawing is printed on. */
	readonly paper: Paper;
	/** The paper of this page. */
	readonly page: Paper;
	/** Whether the drawing's own sheet has the check squares too. */
	readonly squaresOnSheet: boolean;
	readonly title: string;
	/** Lines under the title. */
	readonly about: readonly string[];
	/** The garment as it is worn, drawn over the map. */
	readonly worn?: Worn | undefined;
}

/** What the first page says, with how to print and to join. */
const firstLines = (
	{ tiles }: PagePlan,
	{ paper, squaresOnSheet, about }: FirstPageOptions,
	speech: Speech
): readonly string[] => [
	speech.words.paper.printAtFull({ pages: tiles.length, paper: paperName(paper, speech) }),
	...(squaresOnSheet ? [speech.words.paper.squaresOnSheet] : []),
	...(tiles.length > 1 ? [speech.words.paper.howToJoin] : []),
	...about
];

const LINE_SIZE: Mm = mm(3.2);
const LINE_HEIGHT = LINE_SIZE * LEADING;
/** How much of the height beside the check squares the picture of the garment takes. */
const PICTURE_SHARE = 0.45;
/** The most that it is high and wide, on a sheet for the floor too. */
const PICTURE_MOST = 140;
/** White between the first page's parts. */
const APART = 5;
/** The most lines of a first page's title; the file's own title has it whole. */
const TITLE_LINES = 2;
const [METRIC, INCHES] = CHECK_SIDES;
/** Height of the check squares, under one another. */
const SQUARES_HEIGHT = METRIC + APART + INCHES;
/** The least height of a first page: its title, four lines and the squares. */
export const FIRST_PAGE_HEIGHT: Mm = mm(2 * PAGE_MARGIN + 2 * APART + 14 + 4 * LINE_HEIGHT + SQUARES_HEIGHT);

/** The check squares, their upper left corner at a place of the page. */
export const checkSquares = ({ x, y }: SheetPoint, { font, speech }: OpenFile): readonly PDFOperator[] => {
	const below = y + METRIC + APART;
	const said = (text: string, top: number, side: Mm): readonly PDFOperator[] =>
		wordsOperators(words(text, at(x + side / 2, top + side / 2), TEXT_SIZE, true), font);
	return [
		...strokeOperators([box(x, y, METRIC, METRIC), box(x, below, INCHES, INCHES)], CHECK),
		...said(speech.words.paper.eachSide100, y, METRIC),
		...said(speech.words.paper.eachSide4, below, INCHES)
	];
};

/** How closely room for the squares is looked for. */
const TRY_EVERY = 20;

/** Where the check squares have room on the first sheet of a drawing, beside all that is drawn, low on the right: their upper left corner on that page. */
export const roomForSquares = (
	drawings: readonly Drawing[],
	[sheet]: readonly Tile[]
): SheetPoint | undefined => {
	if (!sheet) return undefined;
	const drawn = drawings.filter((each) => !isEmpty(each)).map(drawingBounds);
	const free = (x: number, y: number): boolean =>
		drawn.every(
			({ left, top, right, bottom }) =>
				right + APART < x ||
				left - APART > x + INCHES ||
				bottom + APART < y ||
				top - APART > y + SQUARES_HEIGHT
		);
	for (let y = sheet.height - SQUARES_HEIGHT - APART; y >= APART; y -= TRY_EVERY)
		for (let x = sheet.width - INCHES - APART; x >= APART; x -= TRY_EVERY)
			if (free(sheet.left + x, sheet.top + y)) return at(PAGE_MARGIN + x, PAGE_MARGIN + y);
	return undefined;
};

/** The first page, and the lines for which it has no room left beside the check squares. */
export interface FirstPage {
	readonly operators: readonly PDFOperator[];
	readonly left: readonly string[];
}

/** Lines about a print as they fit on the first page: whole texts, as many as there is room for. */
const fitting = (texts: readonly string[], width: number, room: number, font: PDFFont) => {
	const lines: string[] = [];
	for (const [i, text] of texts.entries()) {
		const own = wrapped(text, LINE_SIZE, width, font);
		if (lines.length + own.length > room) return { lines, left: texts.slice(i) };
		lines.push(...own);
	}
	return { lines, left: [] };
};

/** The room beside the check squares: for the garment as it is worn, and under that for the map. */
const parted = (place: Place, worn: Worn | undefined): readonly [picture: Place, map: Place] => {
	const height = worn ? Math.min(PICTURE_MOST, (place.height - APART) * PICTURE_SHARE) : -APART;
	const below = height + APART;
	return [
		{ ...place, width: Math.min(PICTURE_MOST, place.width), height },
		{ ...place, top: place.top + below, height: place.height - below }
	];
};

/** The first page: title, how to print and join, the check squares, the map. */
export const firstPage = (
	plan: PagePlan,
	drawings: readonly Drawing[],
	options: FirstPageOptions,
	file: OpenFile
): FirstPage => {
	const { font, speech } = file;
	const { page, title } = options;
	const left = PAGE_MARGIN + 2;
	const width = page.width - 2 * left;
	const titled = wrapped(title, NAME_SIZE, width, font).slice(0, TITLE_LINES);
	const under = PAGE_MARGIN + titled.length * NAME_SIZE * 1.2;
	const bottom = page.height - PAGE_MARGIN - 2;
	const room = Math.floor((bottom - SQUARES_HEIGHT - APART - under) / LINE_HEIGHT);
	const said = fitting(firstLines(plan, options, speech), width, room, font);
	const top = under + said.lines.length * LINE_HEIGHT + APART;
	const mapLeft = left + INCHES + APART;
	const place = { left: mapLeft, top, width: page.width - left - mapLeft, height: bottom - top };
	const [picture, map] = parted(place, options.worn);
	const operators = [
		pushGraphicsState(),
		...titled.flatMap((text, i) =>
			wordsOperators(words(text, at(left, PAGE_MARGIN + (i + 0.9) * NAME_SIZE * 1.2), NAME_SIZE), font)
		),
		...said.lines.flatMap((text, i) =>
			wordsOperators(words(text, at(left, under + (i + 1) * LINE_HEIGHT), LINE_SIZE), font)
		),
		...checkSquares(at(left, top), file),
		...(options.worn ? wornPicture(options.worn, picture) : []),
		...pageMap(plan, drawings, map, font),
		popGraphicsState()
	];
	return { operators, left: said.left };
};
