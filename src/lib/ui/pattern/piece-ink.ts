import { mm, px, type Mm, type Px } from '#shared/units.ts';
import type { Piece } from '#garment/piece.ts';
import { isClockwise } from '#geometry/area.ts';
import {
	boundsOf,
	pathEnd,
	pathSamples,
	pathStart,
	pointAtLength,
	polyline,
	type Bounds,
	type Path
} from '#geometry/path.ts';
import {
	alongness,
	at,
	between,
	directionTo,
	distance,
	moved,
	opposite,
	squareTo,
	type Direction,
	type SheetPoint
} from '#geometry/point.ts';
import { parameterAtLength, segmentDirection, segmentLength, segmentPoint } from '#geometry/segment.ts';
import type { ScreenSize, SheetView } from '../sheet/view.ts';

/** Half the gap between the two strokes of a double notch, so that scissors can make two snips of them. */
const HALF_APART: Mm = mm(3);
/** How far a notch runs into the piece where nothing is cut outside its stitching line. */
const INWARD: Mm = mm(5);

/** A drawing of a piece: its size on the screen, and what of the sheet it shows. */
export interface PieceLeaf {
	readonly size: ScreenSize;
	readonly view: SheetView;
}

/** Pixels round a piece: room for the word at its fold, and at the foot for the scale. */
const MARGIN = 22;
const FOOT = 34;
/** How tall a drawing may be for its room's width. */
const TALLEST = 1.4;
/** Pixels to the millimetre at which a small piece is large enough. */
const LARGE_ENOUGH = 1.2;
/** A drawing is at least so wide, so that its scale stands in it. */
const LEAST_WIDTH = 150;

/** What of a piece is drawn: all of it, or its stitching line alone. */
export type Shown = 'all' | 'stitching';

/** The rectangle that holds what is drawn of a piece. */
export const pieceBounds = ({ outline, cutting }: Piece, show: Shown): Bounds =>
	boundsOf(show === 'all' ? [outline, cutting.outline] : [outline]);

/** The drawing that shows `bounds` in a room so many pixels wide, as large as is of use, in its middle. */
export const pieceLeaf = ({ left, top, right, bottom }: Bounds, room: number): PieceLeaf => {
	const [across, down] = [right - left, bottom - top];
	const scale = Math.min(LARGE_ENOUGH, (room - 2 * MARGIN) / across, (room * TALLEST - MARGIN - FOOT) / down);
	const width = Math.max(LEAST_WIDTH, Math.round(across * scale + 2 * MARGIN));
	return {
		size: { width: px(width), height: px(Math.round(down * scale + MARGIN + FOOT)) },
		view: { scale, left: mm((left + right) / 2 - width / scale / 2), top: mm(top - MARGIN / scale) }
	};
};

/** The direction out of a piece where its outline runs in `along`. */
const outwardAt = (outline: Path, along: Direction): Direction =>
	isClockwise(outline) ? opposite(squareTo(along)) : squareTo(along);

/** A place a given length along a line, and the direction of the line there; undefined where it is not so long. */
const placeAlong = (
	path: Path,
	length: Mm
): { readonly at: SheetPoint; readonly runs: Direction } | undefined => {
	let left = length;
	for (const segment of path) {
		const whole = segmentLength(segment);
		if (left <= whole) {
			const t = parameterAtLength(segment, left);
			const runs = segmentDirection(segment, t);
			return runs && { at: segmentPoint(segment, t), runs };
		}
		left = mm(left - whole);
	}
	return undefined;
};

/** The strokes of a piece's notches, square to their edges: from the stitching line out to the cutting line, or inward where the two are one. */
export const notchStrokes = (piece: Piece): readonly Path[] => {
	const clockwise = isClockwise(piece.outline);
	return piece.notches.flatMap(({ edge: name, along, style }) => {
		const edge = piece.edges.find((each) => each.name === name);
		const places = style === 'single' ? [along] : [mm(along - HALF_APART), mm(along + HALF_APART)];
		return places.flatMap((length) => {
			const place = edge && placeAlong(edge.path, length);
			if (!place) return [];
			const across = squareTo(place.runs);
			const outward = clockwise ? opposite(across) : across;
			const tip =
				edge.allowance > 0
					? moved(place.at, outward, edge.allowance)
					: moved(place.at, opposite(outward), INWARD);
			return [polyline(place.at, tip)];
		});
	});
};

/** An arrow that says which edge lies on the fold: its two ends on the fold, and how far inside its shaft runs. */
export interface FoldSign {
	readonly path: Path;
	readonly middle: SheetPoint;
	/** Out of the piece. */
	readonly outward: Direction;
	/** The way along the fold in which its word reads. */
	readonly reads: Direction;
	/** The bracket inside: from the fold, along it, and back to it. */
	readonly bracket: Path;
}

/** The fold of a piece, with the bracket that is drawn beside it `inside` millimetres from it; undefined for a piece that has none. */
export const foldSign = (piece: Piece, inside: Mm): FoldSign | undefined => {
	const edge = piece.edges.find(({ name }) => name === piece.fold);
	const [from, to] = edge ? [pathStart(edge.path), pointAtLength(edge.path, edge.length)] : [];
	const along = from && to && directionTo(from, to);
	if (!edge || !from || !to || !along) return undefined;
	const outward = outwardAt(piece.outline, along);
	const [first, last] = [between(from, to, 0.14), between(from, to, 0.86)];
	const inward = opposite(outward);
	return {
		path: edge.path,
		middle: between(from, to, 0.5),
		outward,
		reads: along.dy > 0 || (along.dy === 0 && along.dx < 0) ? opposite(along) : along,
		bracket: polyline(first, moved(first, inward, inside), moved(last, inward, inside), last)
	};
};

/** The outline as places no further apart than `step`, also on its straight parts. */
export const dense = (path: Path, step: Mm): readonly SheetPoint[] =>
	path.flatMap((segment) => {
		const places = pathSamples([segment], step);
		return places.slice(1).flatMap((to, i) => {
			const from = places[i] ?? to;
			const parts = Math.max(1, Math.ceil(distance(from, to) / step));
			return Array.from({ length: parts }, (_, part) => between(from, to, part / parts));
		});
	});

/** Where a straight way through `through` crosses a polygon, as lengths along it in order. */
const crossings = (
	polygon: readonly SheetPoint[],
	through: SheetPoint,
	along: Direction
): readonly number[] => {
	const across = squareTo(along);
	const places = polygon.map((place) => {
		const way = { dx: place.x - through.x, dy: place.y - through.y };
		return { along: alongness(way, along), across: alongness(way, across) };
	});
	return places
		.flatMap((b, i) => {
			const a = places.at(i - 1) ?? b;
			if (a.across < 0 === b.across < 0) return [];
			return [a.along + ((b.along - a.along) * a.across) / (a.across - b.across)];
		})
		.sort((a, b) => a - b);
};

/** Places across a piece, as shares of its breadth, where its grain line may lie; the middle is liked best. */
const GRAIN_PLACES = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8];
/** How much of the way across a piece its grain line takes up, and how long it grows. */
const GRAIN_SHARE = 0.72;
const LONGEST_GRAIN: Mm = mm(260);

/** How much less a place is liked that a mark's name stands in. */
const CROWDED = 0.5;

/** The direction of the threads: as the piece's grain runs, or at 45 degrees to it on the bias. */
const threads = ({ grain: [from, to], bias }: Piece): Direction => {
	const along = directionTo(from, to) ?? { dx: 0, dy: 1 };
	if (!bias) return along;
	const half = Math.SQRT1_2;
	return { dx: (along.dx - along.dy) * half, dy: (along.dx + along.dy) * half };
};

/**
 * The grain line where it is drawn: within the piece, where there is the most room for it along the threads, and
 * rather not within `apart` of a mark, where that mark's name stands.
 */
export const grainLine = (
	piece: Piece,
	polygon: readonly SheetPoint[],
	apart: Mm
): readonly [SheetPoint, SheetPoint] => {
	const along = threads(piece);
	const across = squareTo(along);
	const widths = polygon.map(({ x, y }) => alongness({ dx: x, dy: y }, across));
	const [least, most] = [Math.min(...widths), Math.max(...widths)];
	const avoided = [
		...piece.drills.map((drill) => drill.at),
		...piece.marks.flatMap(({ path }) => [pathStart(path), pathEnd(path)])
	].map(({ x, y }) => alongness({ dx: x, dy: y }, across));
	/** How near the outline comes to a part of the way at this place across. */
	const beside = (from: number, to: number, width: number): number =>
		Math.min(
			...polygon.flatMap(({ x, y }, i) => {
				const far = alongness({ dx: x, dy: y }, along);
				return far < from || far > to ? [] : [Math.abs((widths[i] ?? width) - width)];
			})
		);
	let found: readonly [SheetPoint, SheetPoint] = piece.grain;
	let best = 0;
	for (const share of GRAIN_PLACES) {
		const width = least + share * (most - least);
		const through = at(across.dx * width, across.dy * width);
		const met = crossings(polygon, through, along);
		const crowded = avoided.some((each) => Math.abs(each - width) < apart);
		for (let i = 0; i + 1 < met.length; i += 2) {
			const [from = 0, to = 0] = [met[i], met[i + 1]];
			const [middle, half] = [(from + to) / 2, Math.min(LONGEST_GRAIN, GRAIN_SHARE * (to - from)) / 2];
			const gap = beside(middle - half, middle + half, width);
			const score =
				(to - from) * (1 - Math.abs(share - 0.5)) * (crowded ? CROWDED : 1) * Math.min(1, gap / apart);
			if (score <= best) continue;
			best = score;
			const place = moved(through, along, mm(middle));
			found = [moved(place, along, mm(-half)), moved(place, along, mm(half))];
		}
	}
	return found;
};

const isWithin = (polygon: readonly SheetPoint[], { x, y }: SheetPoint): boolean => {
	let within = false;
	for (const [i, b] of polygon.entries()) {
		const a = polygon.at(i - 1) ?? b;
		if (a.y > y !== b.y > y && x < a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y)) within = !within;
	}
	return within;
};

/** Into how many places each way a piece is searched for room. */
const SEARCHED = 13;

/**
 * Where words so wide and so high stand clearest within a polygon, away from its edge and from other ink;
 * undefined where there is no such room.
 */
export const roomFor = (
	polygon: readonly SheetPoint[],
	ink: readonly SheetPoint[],
	width: Mm,
	height: Mm
): SheetPoint | undefined => {
	const all = [...polygon, ...ink];
	const { left, top, right, bottom } = boundsOf([], polygon);
	/** How far the nearest ink is, in halves of the words' own size: from 1 on it touches none. */
	const clearance = (place: SheetPoint): number => {
		let least = Infinity;
		for (const { x, y } of all) {
			const gap = Math.max(Math.abs(x - place.x) / width, Math.abs(y - place.y) / height) * 2;
			if (gap < least) least = gap;
		}
		return least;
	};
	let found: SheetPoint | undefined;
	let best = 1;
	for (let row = 1; row < SEARCHED; row++) {
		for (let column = 1; column < SEARCHED; column++) {
			const place = at(left + ((right - left) * column) / SEARCHED, top + ((bottom - top) * row) / SEARCHED);
			const clear = clearance(place);
			if (clear > best && isWithin(polygon, place)) {
				found = place;
				best = clear;
			}
		}
	}
	return found;
};

/** Room that a line of words takes, in pixels: a small sans letter is about half as wide as it is high. */
export const wordsWide = (words: string, size: number): Px => px(words.length * size * 0.54 + 6);
