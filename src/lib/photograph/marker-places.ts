import { mm, type Mm } from '#shared/units.ts';
import { at, type SheetPoint } from '#geometry/point.ts';

/** A square marker as it is printed: its id, its upper left corner on its paper, and its side. */
export interface PrintedMarker {
	readonly id: number;
	readonly at: SheetPoint;
	readonly side: Mm;
}

/** A paper with markers that keep their places to one another: a card that was cut out, or a whole sheet. */
export interface MarkerPaper {
	readonly name: string;
	readonly markers: readonly PrintedMarker[];
}

/** Side of the markers on cards, which are laid at the corners of a large sheet: the larger, the better is their turn known. */
const CARD_MARKER: Mm = mm(70);
/** Side of the markers of a worksheet. */
export const WORKSHEET_MARKER: Mm = mm(40);

const single = (name: string, first: number, count: number, side: Mm): readonly MarkerPaper[] =>
	Array.from({ length: count }, (_, i) => ({
		name: `${name}-${String(i + 1)}`,
		markers: [{ id: first + i, at: at(0, 0), side }]
	}));

/** Markers round the rim of a sheet: in its corners, and half way down its long sides. */
const rim = (first: number, width: number, height: number, side: number): readonly PrintedMarker[] => {
	const [right, middle, bottom] = [width - side, (height - side) / 2, height - side];
	const places: readonly (readonly [number, number])[] = [
		[0, 0],
		[right, 0],
		[0, middle],
		[right, middle],
		[0, bottom],
		[right, bottom]
	];
	return places.map(([x, y], i) => ({ id: first + i, at: at(x, y), side: mm(side) }));
};

/** Cards to cut out of two pages, each laid wherever it does not cover the drawing: four for its corners, four for half way between. */
export const CARDS = single('card', 0, 8, CARD_MARKER);
/** A page of cards. */
export const CARDS_ON_PAGE = 4;
/** The ids of a worksheet's markers: at the ends of two opposite sides, and half way along them. */
export const WORKSHEET_IDS = [8, 9, 10, 11, 24, 25] as const;
/**
 * The markers of a worksheet. Its pages are joined by hand, to a millimetre at best, while each marker by itself tells where it lies to
 * a twentieth of one: so each is known by itself alone (measured: tests/measure/photograph.md).
 */
const WORKSHEET = WORKSHEET_IDS.map((id): MarkerPaper => ({
	name: `worksheet-${String(id)}`,
	markers: [{ id, at: at(0, 0), side: WORKSHEET_MARKER }]
}));
/** A sheet to draw on, or to lay a small piece on: what both A4 and US Letter can hold between their margins. */
export const SMALL_SHEET: MarkerPaper = { name: 'small-sheet', markers: rim(12, 190, 259, 26) };
/** The same on A3. */
export const LARGE_SHEET: MarkerPaper = { name: 'large-sheet', markers: rim(18, 277, 400, 40) };

/** The sheets of markers that can be printed. */
export const MARKER_SHEETS = ['cards', 'small-sheet', 'large-sheet'] as const;
export type MarkerSheet = (typeof MARKER_SHEETS)[number];

/** The papers that markers are printed on: sheets of them, and the worksheet of a draft. */
export type MarkedPaper = MarkerSheet | 'worksheet';

/** How long the line is by which it is checked that a sheet was printed at its size: as long as there is room for. */
export const CHECK_LINE: Readonly<Record<MarkedPaper, Mm>> = {
	cards: mm(150),
	'small-sheet': mm(100),
	'large-sheet': mm(150),
	worksheet: mm(100)
};

const ALL: readonly MarkerPaper[] = [...CARDS, ...WORKSHEET, SMALL_SHEET, LARGE_SHEET];

/** The four corners of a marker on its paper, from the upper left one on, clockwise; `scale` is that of the printer. */
export const cornersOf = ({ at: { x, y }, side }: PrintedMarker, scale = 1): readonly SheetPoint[] =>
	[at(x, y), at(x + side, y), at(x + side, y + side), at(x, y + side)].map((each) =>
		at(each.x * scale, each.y * scale)
	);

/** The paper that a marker is printed on, with its place there; undefined for one that none of ours has. */
export const printedAs = (
	id: number
): { readonly paper: MarkerPaper; readonly marker: PrintedMarker } | undefined => {
	for (const paper of ALL) {
		const marker = paper.markers.find((each) => each.id === id);
		if (marker) return { paper, marker };
	}
	return undefined;
};
