import type { Speech } from '#shared/speech/speech.ts';
import { mm, radians, type Mm, type Unit } from '#shared/units.ts';
import { polyline, type Bounds, type Path } from '#geometry/path.ts';
import { at, type SheetPoint } from '#geometry/point.ts';
import type { Drawing, Stroke, Words } from './drawing.ts';

/** Squares of the bare grid, by the unit that the drafter works in, and into how many dots a side may be parted; every fifth row of squares (every second inch) is of heavier dots. */
const SQUARES: Readonly<
	Record<Unit, { readonly side: Mm; readonly strong: number; readonly parts: readonly number[] }>
> = {
	cm: { side: mm(10), strong: 5, parts: [2, 1] },
	mm: { side: mm(10), strong: 5, parts: [2, 1] },
	in: { side: mm(25.4), strong: 2, parts: [4, 2, 1] }
};
/** Dots of a row closer than this on paper would make it grey; a centimetre at a quarter is as close as they come. */
const LEAST_APART: Mm = mm(3);

/**
 * Side of the corner marks on paper: a ring, with a square within it at all corners but the lower right, so that a
 * picture shows which way up the sheet is.
 */
export const RING: Mm = mm(12);
const DOT: Mm = mm(3);
/** How far outside the grid the middles of the corner marks stand, on paper: clear of the grid's numbers. */
export const CORNER_OUT: Mm = mm(14);
/** Heights of writing on paper. */
const NUMBER_SIZE: Mm = mm(2.8);
const SCALE_SIZE: Mm = mm(4);
/** White between the grid and its numbers, and between the numbers and the scale. */
const APART = 1.5;

const square = ({ x, y }: SheetPoint, side: number): Path =>
	polyline(
		at(x - side / 2, y - side / 2),
		at(x + side / 2, y - side / 2),
		at(x + side / 2, y + side / 2),
		at(x - side / 2, y + side / 2)
	);

/** The middles of the corner marks of a grid with these edges: upper left, upper right, lower left, lower right. */
const cornerPlaces = ({ left, top, right, bottom }: Bounds): readonly SheetPoint[] => [
	at(left - CORNER_OUT, top - CORNER_OUT),
	at(right + CORNER_OUT, top - CORNER_OUT),
	at(left - CORNER_OUT, bottom + CORNER_OUT),
	at(right + CORNER_OUT, bottom + CORNER_OUT)
];

const cornerStrokes = (edges: Bounds): readonly Stroke[] =>
	cornerPlaces(edges).flatMap((place, i, { length }) =>
		[RING, ...(i === length - 1 ? [] : [DOT])].map((side) => ({
			kind: 'corner',
			path: square(place, side),
			closed: true
		}))
	);

/** The rows of a grid that run one way, by their count from the sheet's corner. */
const counted = (from: number, to: number): readonly number[] =>
	Array.from({ length: to - from + 1 }, (_, i) => from + i);

/** Level writing: from a place on, or about it. */
export const writtenAt = (text: string, place: SheetPoint, size: Mm, middle = false): Words => ({
	text,
	at: place,
	middle,
	size,
	turn: radians(0)
});

/** Into how many dots the side of a square is parted at a scale. */
const partsOf = (unit: Unit, share: number): number => {
	const { side, parts } = SQUARES[unit];
	return parts.find((count) => (side * share) / count >= LEAST_APART) ?? 1;
};

/** A grid's scale, and how far it is from dot to dot on the sheet: two short texts, for a grid may be narrow. */
const scaleTexts = (share: number, { unit, words: { paper } }: Speech): readonly [string, string] => [
	paper.gridScale({ reduced: 1 / share }),
	paper.gridDots({ apart: mm(SQUARES[unit].side / partsOf(unit, share)) })
];

/** A grid's scale as "1 : 2", and how far it is from dot to dot on the sheet. */
export const scaleWords = (share: number, speech: Speech): string => scaleTexts(share, speech).join(' ');

/**
 * The bare grid over a part of the sheet, for drafting by hand: rows of light dots, each row of heavier ones with its
 * distance from the sheet's corner, the scale in words, and corner marks where they are wanted. `bounds`, on the sheet, is grown to whole squares. `share` is the scale, 1 for full size; the grid is
 * drawn as it lies on paper, with marks and writing in their own full size at every scale.
 */
export const gridDrawing = (bounds: Bounds, speech: Speech, share = 1, corners = true): Drawing => {
	const { side, strong } = SQUARES[speech.unit];
	const onPaper = side * share;
	const parts = partsOf(speech.unit, share);
	const apart = mm(onPaper / parts);
	const columns = counted(Math.floor(bounds.left / side), Math.ceil(bounds.right / side));
	const rows = counted(Math.floor(bounds.top / side), Math.ceil(bounds.bottom / side));
	const edges: Bounds = {
		left: mm((columns[0] ?? 0) * onPaper),
		top: mm((rows[0] ?? 0) * onPaper),
		right: mm((columns.at(-1) ?? 0) * onPaper),
		bottom: mm((rows.at(-1) ?? 0) * onPaper)
	};
	const row = (isHeavy: boolean, from: SheetPoint, to: SheetPoint): Stroke => ({
		kind: isHeavy ? 'heavyDots' : 'dots',
		path: polyline(from, to),
		apart
	});
	const number = (count: number, place: SheetPoint): readonly Words[] =>
		count % strong === 0 ? [writtenAt(speech.bare(mm(count * side)), place, NUMBER_SIZE, true)] : [];
	const [scale, squares] = scaleTexts(share, speech);
	return {
		name: speech.words.paper.grid,
		strokes: [
			...counted((rows[0] ?? 0) * parts, (rows.at(-1) ?? 0) * parts).map((count) =>
				row(count % (strong * parts) === 0, at(edges.left, count * apart), at(edges.right, count * apart))
			),
			...columns
				.filter((count) => count % strong === 0)
				.map((count) => row(true, at(count * onPaper, edges.top), at(count * onPaper, edges.bottom))),
			...(corners ? cornerStrokes(edges) : [])
		],
		words: [
			...columns.flatMap((count) => number(count, at(count * onPaper, edges.top - APART))),
			...rows.flatMap((count) =>
				number(count, at(edges.left - APART - NUMBER_SIZE, count * onPaper + NUMBER_SIZE / 3))
			),
			writtenAt(scale, at(edges.left, edges.top - 2 * APART - NUMBER_SIZE), SCALE_SIZE),
			writtenAt(squares, at(edges.left, edges.bottom + APART + NUMBER_SIZE), NUMBER_SIZE)
		]
	};
};
