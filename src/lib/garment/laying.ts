import { SAME_PLACE } from '#shared/tolerances.ts';
import type { Cloth } from '#shared/garment.ts';
import { mm, radians, type Mm } from '#shared/units.ts';
import { followedBy, mirroring, pathMovedBy, shifting, turning, type Motion } from '#geometry/motion.ts';
import { boundsOf, pathEnd, pathStart } from '#geometry/path.ts';
import { at, directionTo, type Direction } from '#geometry/point.ts';
import type { Piece } from './piece.ts';

/** A piece where it lies on the cloth: x from the fold (on the single layer, from one selvedge), y from the cut end. */
export interface Laid {
	/** The piece's key. */
	readonly piece: string;
	/** Counts from 1. */
	readonly copy: number;
	/** The rectangle that just holds its cutting line. */
	readonly left: Mm;
	readonly top: Mm;
	readonly width: Mm;
	readonly height: Mm;
	readonly onFold: boolean;
	/** Whether it is cut from a single layer, because half of the cloth is too narrow for it. */
	readonly single: boolean;
	/** Whether it is one half of a piece that has a seam in place of its fold, because the cloth is too narrow for the whole. */
	readonly joined: boolean;
	/** From the place where it is drafted to its place on the cloth. */
	readonly motion: Motion;
}

/** An estimate of how the pieces lie on cloth that is folded lengthwise. */
export interface Laying {
	/** The whole breadth of the cloth. */
	readonly width: Mm;
	/** How much of it is used. */
	readonly length: Mm;
	/** How much of the length lies folded; the rest is a single layer. */
	readonly folded: Mm;
	readonly placed: readonly Laid[];
	/** The keys of pieces that this cloth is too narrow for: they are not laid. */
	readonly tooWide: readonly string[];
}

/** Between two pieces, so that scissors pass; and between the fold and what does not lie on it. Common practice, no source. */
export const LAYING_GAP: Mm = mm(10);
/** Interfacing is sold so wide. Common practice, no source. */
export const INTERFACING_WIDTH: Mm = mm(900);
/** Cloth is counted by two centimetres of its breadth: what is over is selvedge. Millimetres. */
const BREADTH_STEP = 20;

/** A piece as it is laid: its rectangle, its threads along the cloth. */
interface Shape {
	readonly piece: string;
	/** How many are cut in the cloth. */
	readonly count: number;
	readonly width: Mm;
	readonly height: Mm;
	readonly onFold: boolean;
	readonly joined: boolean;
	/** What a seam in place of its fold needs; undefined where it can have none. */
	readonly seam: Mm | undefined;
	/** Takes the piece's cutting line to a place whose upper left corner is (0, 0). */
	readonly motion: Motion;
}

/** A shape to be laid once. */
interface Box extends Omit<Shape, 'count' | 'seam'> {
	readonly copy: number;
	readonly single: boolean;
}

/** A box in its place. */
interface Placed extends Box {
	readonly left: Mm;
	readonly top: Mm;
}

/** The motion that turns a direction straight down; of the two ways of a line the one that turns less. */
const upright = ({ dx, dy }: Direction): Motion => {
	const sign = dy < 0 || (dy === 0 && dx < 0) ? -1 : 1;
	return turning(at(0, 0), radians(Math.atan2(sign * dx, sign * dy)));
};

const HALF_RIGHT = turning(at(0, 0), radians(-Math.PI / 4));

/** Turns a piece so that its threads run along the cloth; one on the fold so that the fold is its left edge. */
const turnedForCloth = (piece: Piece): Motion => {
	const fold = piece.edges.find(({ name }) => name === piece.fold)?.path;
	const [from, to] = fold ? [pathStart(fold), pathEnd(fold)] : piece.grain;
	const straightened = upright(directionTo(from, to) ?? { dx: 0, dy: 1 });
	const turned = piece.bias && !fold ? followedBy(straightened, HALF_RIGHT) : straightened;
	if (!fold) return turned;
	const { left, right } = boundsOf([pathMovedBy(turned, piece.cutting.outline)]);
	const x = pathStart(pathMovedBy(turned, fold)).x;
	const isRight = right - x < x - left;
	return isRight ? followedBy(turned, mirroring(at(0, 0), at(0, 1))) : turned;
};

const shapeOf = (piece: Piece, cloth: Cloth): Shape => {
	const turned = turnedForCloth(piece);
	const { left, top, right, bottom } = boundsOf([pathMovedBy(turned, piece.cutting.outline)]);
	return {
		piece: piece.key,
		count: piece.cut.find((each) => each.in === cloth)?.count ?? 0,
		width: mm(right - left),
		height: mm(bottom - top),
		onFold: piece.fold !== undefined,
		joined: false,
		seam: piece.seamAtFold ? mm(Math.max(...piece.edges.map(({ allowance }) => allowance))) : undefined,
		motion: followedBy(turned, shifting(at(left, top), at(0, 0)))
	};
};

/** A piece on the fold for which the cloth is too narrow, in two halves with a seam in place of the fold: the seam lies to their right. */
const inHalves = (shape: Shape, half: Mm): Shape => {
	const { seam, width, motion, count } = shape;
	if (!shape.onFold || seam === undefined || width <= half + SAME_PLACE) return shape;
	const turned = followedBy(
		followedBy(motion, mirroring(at(0, 0), at(0, 1))),
		shifting(at(0, 0), at(width, 0))
	);
	return { ...shape, count: 2 * count, width: mm(width + seam), onFold: false, joined: true, motion: turned };
};

/** A box for each time that a shape is laid. On two layers a pair is cut at once; an odd one leaves a layer over. */
const boxesOf = ({ count, seam: _, ...shape }: Shape, half: Mm): readonly Box[] => {
	const single = !shape.onFold && shape.width + LAYING_GAP > half + SAME_PLACE;
	const times = shape.onFold || single ? count : Math.ceil(count / 2);
	return Array.from({ length: times }, (_, i) => ({ ...shape, copy: i + 1, single }));
};

const apart = (a: Placed, left: number, top: number, { width, height }: Box): boolean =>
	left >= a.left + a.width + LAYING_GAP ||
	a.left >= left + width + LAYING_GAP ||
	top >= a.top + a.height + LAYING_GAP ||
	a.top >= top + height + LAYING_GAP;

const upward = (a: number, b: number): number => a - b;

/** Lays a box in the first place where there is room: as near to the cut end as can be, then to the fold. */
const laidFirst = (box: Box, laid: readonly Placed[], breadth: Mm, from: Mm): Placed => {
	const edge = box.single ? 0 : LAYING_GAP;
	const beside = laid.map(({ left, width }) => left + width + LAYING_GAP);
	const lefts = (box.onFold ? [0] : [edge, ...beside])
		.filter((left) => left + box.width <= breadth + SAME_PLACE)
		.sort(upward);
	const tops = [from, ...laid.map(({ top, height }) => top + height + LAYING_GAP)].sort(upward);
	for (const top of tops) {
		const left = lefts.find((each) => laid.every((other) => apart(other, each, top, box)));
		if (left !== undefined) return { ...box, left: mm(left), top: mm(top) };
	}
	throw new Error(`${box.piece} is wider than the cloth`);
};

const endOf = (laid: readonly Placed[]): Mm =>
	mm(Math.max(0, ...laid.map(({ top, height }) => top + height)));

type Order = (a: Box, b: Box) => number;
const higher: Order = (a, b) => b.height - a.height || b.width - a.width;
const wider: Order = (a, b) => b.width - a.width || b.height - a.height;
const larger: Order = (a, b) => b.width * b.height - a.width * a.height;
const foldFirst =
	(then: Order): Order =>
	(a, b) =>
		Number(b.onFold) - Number(a.onFold) || then(a, b);
/** The orders in which pieces are tried: the largest first, since small ones find room between them. */
const ORDERS: readonly Order[] = [foldFirst(higher), foldFirst(wider), higher, wider, larger];

/** Boxes laid one after the other on a layer so broad; what one of the orders needs least cloth for. */
const laidBest = (boxes: readonly Box[], breadth: Mm, from: Mm): readonly Placed[] => {
	let best: readonly Placed[] | undefined;
	let least = Infinity;
	for (const order of boxes.length > 1 ? ORDERS : ORDERS.slice(0, 1)) {
		const laid: Placed[] = [];
		let end = 0;
		for (const box of [...boxes].sort(order)) {
			const placed = laidFirst(box, laid, breadth, from);
			laid.push(placed);
			end = Math.max(end, placed.top + placed.height);
			if (end >= least) break;
		}
		if (end < least) [best, least] = [laid, end];
	}
	return best ?? [];
};

/** The shapes laid on cloth so broad. */
interface Layout {
	readonly placed: readonly Placed[];
	readonly length: Mm;
	readonly folded: Mm;
	readonly tooWide: readonly string[];
}

const laidInBreadth = (shapes: readonly Shape[], breadth: Mm): Layout => {
	const half = mm(breadth / 2);
	const boxes = shapes.flatMap((shape) => boxesOf(inHalves(shape, half), half));
	const fits = ({ onFold, width }: Box): boolean => width <= (onFold ? half : breadth) + SAME_PLACE;
	const fitting = boxes.filter(fits);
	const double = laidBest(
		fitting.filter(({ single }) => !single),
		half,
		mm(0)
	);
	const folded = endOf(double);
	const alone = laidBest(
		fitting.filter(({ single }) => single),
		breadth,
		mm(folded > 0 ? folded + LAYING_GAP : 0)
	);
	const placed = [...double, ...alone];
	const tooWide = [...new Set(boxes.filter((box) => !fits(box)).map(({ piece }) => piece))];
	return { placed, length: endOf(placed), folded, tooWide };
};

/** Cloth so broad is at least so long where all this lies on it: the area of the boxes on each layer. */
const leastLength = ({ placed }: Layout, breadth: number): number =>
	placed.reduce((sum, { width, height, single }) => sum + width * height * (single ? 1 : 2), 0) / breadth;

const joints = ({ placed }: Layout): number => placed.filter(({ joined }) => joined).length;

const laidOf = ({ left, top, motion, ...box }: Placed): Laid => ({
	...box,
	left,
	top,
	motion: followedBy(motion, shifting(at(0, 0), at(left, top)))
});

/**
 * ESTIMATES how much cloth the pieces need: the cloth folded lengthwise with its right sides together, the threads of every
 * piece along it (a bias piece at 45 degrees), pieces on the fold against the fold, pairs cut at once from both layers, each kept in
 * a rectangle of its own. What is too wide for half the cloth is cut after that from a single layer, and a strip on the fold in two halves. Only what is
 * cut in this cloth counts.
 * Never more for a wider cloth that takes the same pieces: what lies on a narrower one lies on it too.
 */
export const layOnFold = (pieces: readonly Piece[], width: Mm, cloth: Cloth = 'fabric'): Laying => {
	const shapes = pieces.map((piece) => shapeOf(piece, cloth));
	const breadth = Math.floor(width / BREADTH_STEP) * BREADTH_STEP;
	let best = laidInBreadth(shapes, mm(breadth));
	for (let less = breadth - BREADTH_STEP; less > 0; less -= BREADTH_STEP) {
		if (leastLength(best, less) >= best.length) break;
		const layout = laidInBreadth(shapes, mm(less));
		if (layout.tooWide.length > best.tooWide.length || joints(layout) > joints(best)) break;
		if (layout.length < best.length) best = layout;
	}
	return { ...best, width, placed: best.placed.map(laidOf) };
};
