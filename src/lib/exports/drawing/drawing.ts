import { BadInput } from '#shared/bad-input.ts';
import { keptFor } from '#shared/kept.ts';
import { message } from '#shared/speech/message.ts';
import { mm, type Mm, type Radians } from '#shared/units.ts';
import { movedBy, pathMovedBy, type Motion } from '#geometry/motion.ts';
import { boundsOf, pathMapped, polyline, type Bounds, type Path } from '#geometry/path.ts';
import { at, type SheetPoint } from '#geometry/point.ts';

/** What a line means to whoever cuts and sews. */
export const STROKE_KINDS = [
	'cutting',
	'stitching',
	'fold',
	'grain',
	'notch',
	'mark',
	'dart',
	'drill',
	'button',
	'gather',
	'wear',
	'leader',
	'line',
	'level',
	'traced',
	'dots',
	'heavyDots',
	'corner',
	'nest1',
	'nest2',
	'nest3',
	'nest4',
	'nest5',
	'nest6',
	'nest7',
	'growth'
] as const;
export type StrokeKind = (typeof STROKE_KINDS)[number];

/** A line of a drawing. */
export interface Stroke {
	readonly kind: StrokeKind;
	readonly path: Path;
	/** Whether its end runs on to its start. */
	readonly closed?: boolean;
	/** A row of dots, the first on its start, this far from dot to dot; else drawn as its kind is. */
	readonly apart?: Mm;
}

/** Words on a drawing. */
export interface Words {
	readonly text: string;
	/** The start of the writing line, or its middle. */
	readonly at: SheetPoint;
	readonly middle: boolean;
	/** Height of the capital letters' line, in millimetres. */
	readonly size: Mm;
	/** How the writing line is turned; positive from x toward y. */
	readonly turn: Radians;
}

/** A square by which a photograph is measured: black, with white cells within a black border of one. */
export interface MarkerInk {
	/** Its upper left corner. */
	readonly at: SheetPoint;
	readonly side: Mm;
	/** Row by row, the border left out. */
	readonly white: readonly (readonly boolean[])[];
}

/** Lines and words at true scale, in millimetres, of one thing that has a name: a piece, or a draft. */
export interface Drawing {
	readonly name: string;
	readonly strokes: readonly Stroke[];
	readonly words: readonly Words[];
	/** On sheets for drafting by hand alone. */
	readonly markers?: readonly MarkerInk[];
}

/** Half of an average letter's width for its size: enough to keep words from the edge. */
const LETTER_SHARE = 0.55;

/** The corners of the place that words take up, near enough. */
const wordsCorners = ({ text, at: { x, y }, size, middle, turn }: Words): readonly SheetPoint[] => {
	const width = text.length * size * LETTER_SHARE;
	const [from, to] = middle ? [-width / 2, width / 2] : [0, width];
	const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
	return [from, to].flatMap((along) =>
		[-size, size * 0.3].map((down) => at(x + along * cos - down * sin, y + along * sin + down * cos))
	);
};

/** A rectangle with its diagonals: what keeps clear of it does not lie within it either. */
export const frame = ({ left, top, right, bottom }: Bounds): Path => {
	const [a, b, c, d] = [at(left, top), at(right, top), at(right, bottom), at(left, bottom)];
	return polyline(a, b, c, d, a, c, b, d);
};

/** The rectangle that words take up, near enough. */
export const wordsBounds = (words: Words): Bounds => boundsOf([], wordsCorners(words));

/** The square that a marker takes up. */
export const markerBounds = ({ at: { x, y }, side }: Pick<MarkerInk, 'at' | 'side'>): Bounds => ({
	left: x,
	top: y,
	right: mm(x + side),
	bottom: mm(y + side)
});

/** The rectangle that holds a drawing: every page of every arrangement that is tried asks for it. Throws for an empty one. */
export const drawingBounds = keptFor((drawing: Drawing): Bounds => {
	const paths = drawing.strokes.map(({ path }) => path);
	const squares = (drawing.markers ?? []).map(markerBounds);
	return boundsOf(paths, [
		...drawing.words.flatMap(wordsCorners),
		...squares.flatMap(({ left, top, right, bottom }) => [at(left, top), at(right, bottom)])
	]);
});

/** The rectangle that holds some drawings, grown on all sides. Throws BadInput where nothing is drawn. */
export const boundsOfDrawings = (drawings: readonly Drawing[], by: Mm): Bounds => {
	const all = drawings.filter((drawing) => !isEmpty(drawing)).map(drawingBounds);
	if (all.length === 0) throw new BadInput('export', message('paper', 'nothingToPrint'));
	const corners = all.flatMap(({ left, top, right, bottom }) => [at(left, top), at(right, bottom)]);
	return grown(boundsOf([], corners), by);
};

/** The same drawing somewhere else; its words move with it and keep their turn. */
export const drawingMoved = (drawing: Drawing, motion: Motion): Drawing => ({
	...drawing,
	strokes: drawing.strokes.map((stroke) => ({ ...stroke, path: pathMovedBy(motion, stroke.path) })),
	words: drawing.words.map((words) => ({ ...words, at: movedBy(motion, words.at) }))
});

/** The least height of writing on a drawing made smaller: what can still be read on paper. */
const SMALLEST: Mm = mm(2);

/** The same drawing at a share of its size, for class work; its writing stays large enough to be read. */
export const drawingScaled = (drawing: Drawing, share: number): Drawing => {
	const put = ({ x, y }: SheetPoint): SheetPoint => at(x * share, y * share);
	return {
		...drawing,
		strokes: drawing.strokes.map((stroke) => ({ ...stroke, path: pathMapped(stroke.path, put) })),
		words: drawing.words.map((words) => ({
			...words,
			at: put(words.at),
			size: mm(Math.max(Math.min(words.size, SMALLEST), words.size * share))
		}))
	};
};

/** Whether a drawing has nothing on it. */
export const isEmpty = ({ strokes, words }: Drawing): boolean => strokes.length === 0 && words.length === 0;

/** A rectangle grown on all sides. */
export const grown = ({ left, top, right, bottom }: Bounds, by: Mm): Bounds => ({
	left: mm(left - by),
	top: mm(top - by),
	right: mm(right + by),
	bottom: mm(bottom + by)
});
