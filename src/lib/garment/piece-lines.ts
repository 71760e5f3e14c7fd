import { mm, type Mm } from '#shared/units.ts';
import { isClockwise } from '#geometry/area.ts';
import { pathEnd, pathSamples, pathStart, polyline, type Path } from '#geometry/path.ts';
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
import {
	parameterAtLength,
	segmentDirection,
	segmentLength,
	segmentPoint,
	type Segment
} from '#geometry/segment.ts';
import type { Notch, Piece } from './piece.ts';

/** Half the gap between the two strokes of a double notch, so that scissors can make two snips of them. */
const HALF_APART: Mm = mm(3);
/** How far a notch runs into the piece where nothing is cut outside its stitching line. */
const INWARD: Mm = mm(5);

/** The direction out of a piece where its outline runs in `along`. */
export const outwardAt = (outline: Path, along: Direction): Direction =>
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

/** The strokes of a notch, square to its edge: from the stitching line out to the cutting line, or inward where the two are one; two for a double one. */
export const notchStrokes = (piece: Piece, { edge: name, along, style }: Notch): readonly Path[] => {
	const edge = piece.edges.find((each) => each.name === name);
	if (!edge) return [];
	const lengths = style === 'single' ? [along] : [mm(along - HALF_APART), mm(along + HALF_APART)];
	return lengths.flatMap((length) => {
		const place = placeAlong(edge.path, length);
		if (!place) return [];
		const outward = outwardAt(piece.outline, place.runs);
		const tip =
			edge.allowance > 0
				? moved(place.at, outward, edge.allowance)
				: moved(place.at, opposite(outward), INWARD);
		return [polyline(place.at, tip)];
	});
};

/** How near to the fold's straight line a place of the cutting line counts as on it. */
const ON_FOLD: Mm = mm(0.01);

/** The cutting line without what lies on the fold, which is not cut: one stroke, or the whole closed outline where nothing is folded. */
export const cutStrokes = (piece: Piece): readonly { readonly path: Path; readonly closed: boolean }[] => {
	const { outline } = piece.cutting;
	const fold = piece.edges.find(({ name }) => name === piece.fold)?.path;
	const [from, to] = fold ? [pathStart(fold), pathEnd(fold)] : [];
	const way = from && to && directionTo(from, to);
	if (!from || !way) return [{ path: outline, closed: true }];
	const off = ({ x, y }: SheetPoint): number => Math.abs((x - from.x) * way.dy - (y - from.y) * way.dx);
	const folded = (segment: Segment): boolean =>
		segment.kind === 'straight' && off(segment.from) < ON_FOLD && off(segment.to) < ON_FOLD;
	const begin = outline.findIndex((segment, i) => !folded(segment) && folded(outline.at(i - 1) ?? segment));
	if (begin < 0) return [{ path: outline, closed: true }];
	const turned = [...outline.slice(begin), ...outline.slice(0, begin)];
	const end = turned.findIndex(folded);
	const [first, ...rest] = turned.slice(0, end < 0 ? undefined : end);
	return first ? [{ path: [first, ...rest], closed: false }] : [];
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

/** A place of a polygon as the threads see it: how far along them it lies, and how far across. */
interface Seen {
	readonly along: number;
	readonly across: number;
}

/** Where the way along the threads that lies so far across crosses a polygon, as lengths along it in order. */
const crossings = (polygon: readonly Seen[], width: number): readonly number[] =>
	polygon
		.flatMap((b, i) => {
			const a = polygon.at(i - 1) ?? b;
			if (a.across < width === b.across < width) return [];
			return [a.along + ((b.along - a.along) * (a.across - width)) / (a.across - b.across)];
		})
		.sort((a, b) => a - b);

/** Places across a piece, as shares of its breadth, where its grain line may lie; the middle is liked best. */
const GRAIN_PLACES = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8];
/** How much of the way across a piece its grain line takes up, and how long it grows. */
const GRAIN_SHARE = 0.72;
const LONGEST_GRAIN: Mm = mm(260);
/** How far apart the places of the outline lie among which it is looked for, and how far it keeps from a mark on paper. */
const GRAIN_STEP: Mm = mm(12);
const GRAIN_ROOM: Mm = mm(20);

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
 * The two ends of the grain line as it is drawn: within the piece, where there is the most room for it along the threads, and
 * rather not within `apart` of a mark, where that mark's name stands. `polygon` is the outline as dense places.
 */
export const grainLine = (
	piece: Piece,
	polygon: readonly SheetPoint[] = dense(piece.outline, GRAIN_STEP),
	apart: Mm = GRAIN_ROOM
): readonly [SheetPoint, SheetPoint] => {
	const along = threads(piece);
	const across = squareTo(along);
	const seen = polygon.map(({ x, y }): Seen => {
		const way = { dx: x, dy: y };
		return { along: alongness(way, along), across: alongness(way, across) };
	});
	const widths = seen.map((each) => each.across);
	const [least, most] = [Math.min(...widths), Math.max(...widths)];
	const avoided = [
		...piece.drills.map((drill) => drill.at),
		...piece.marks.flatMap(({ path }) => [pathStart(path), pathEnd(path)])
	].map(({ x, y }) => alongness({ dx: x, dy: y }, across));
	/** How near the outline comes to a part of the way at this place across. */
	const beside = (from: number, to: number, width: number): number =>
		seen.reduce(
			(gap, place) =>
				place.along < from || place.along > to ? gap : Math.min(gap, Math.abs(place.across - width)),
			Infinity
		);
	let found: readonly [SheetPoint, SheetPoint] = piece.grain;
	let best = 0;
	for (const share of GRAIN_PLACES) {
		const width = least + share * (most - least);
		const through = at(across.dx * width, across.dy * width);
		const met = crossings(seen, width);
		const crowded = avoided.some((each) => Math.abs(each - width) < apart);
		for (let i = 0; i + 1 < met.length; i += 2) {
			const [from = 0, to = 0] = [met[i], met[i + 1]];
			const [middle, half] = [(from + to) / 2, Math.min(LONGEST_GRAIN, GRAIN_SHARE * (to - from)) / 2];
			const liked = (to - from) * (1 - Math.abs(share - 0.5)) * (crowded ? CROWDED : 1);
			const score =
				liked <= best ? 0 : liked * Math.min(1, beside(middle - half, middle + half, width) / apart);
			if (score <= best) continue;
			best = score;
			const place = moved(through, along, mm(middle));
			found = [moved(place, along, mm(-half)), moved(place, along, mm(half))];
		}
	}
	return found;
};

/** Length of an arrowhead and half its width. */
const ARROW: readonly [long: Mm, half: Mm] = [mm(5), mm(1.6)];

/** An arrowhead whose tip lies at `tip`, of a line that runs from there in the direction `back`. */
export const arrowHead = (tip: SheetPoint, back: Direction): Path => {
	const [long, half] = ARROW;
	const foot = moved(tip, back, long);
	const aside = squareTo(back);
	return polyline(moved(foot, aside, half), tip, moved(foot, aside, mm(-half)));
};

/** The strokes of a grain line: a straight line with an arrowhead at each end. */
export const grainStrokes = (piece: Piece): readonly Path[] => {
	const [from, to] = grainLine(piece);
	const way = directionTo(from, to);
	if (!way) return [];
	return [polyline(from, to), arrowHead(from, way), arrowHead(to, opposite(way))];
};
