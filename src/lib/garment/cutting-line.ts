import type { CornerRule, EdgeKind } from '#shared/garment.ts';
import { PARALLEL_ERROR } from '#shared/tolerances.ts';
import { mm, type Mm } from '#shared/units.ts';
import { isClockwise } from '#geometry/area.ts';
import { segmentEndingAt } from '#geometry/ends.ts';
import { withoutLoops } from '#geometry/kernel/loops.ts';
import { parallelPath } from '#geometry/parallel.ts';
import { endDirection, pathEnd, pathReversed, pathStart, startDirection, type Path } from '#geometry/path.ts';
import {
	angleBetween,
	distance,
	opposite,
	squareTo,
	type Direction,
	type SheetPoint
} from '#geometry/point.ts';
import { pathPart } from '#geometry/section.ts';
import { segmentDirection, segmentReversed, straight, type Segment } from '#geometry/segment.ts';
import { joinAt, joinedThrough, type Corner, type Join } from './corners.ts';

/** One edge of a piece: its stitching line, and how much cloth is left outside it. */
export interface StitchedEdge {
	readonly name: string;
	readonly kind: EdgeKind;
	/** The stitching line, from the end of the edge before to the start of the next. */
	readonly path: Path;
	/** Not below 0; a fold has none, whatever is said here. */
	readonly allowance: Mm;
	/** The rule at the corner with the next edge; without it a hem is turned up and any other corner mitred. */
	readonly endCorner?: CornerRule;
}

/** The line along which a piece is cut out. */
export interface CuttingLine {
	/** Closed, run the same way round as the stitching line, and without loops. */
	readonly outline: Path;
	/** The part of it that lies beside each edge, as far as it goes before corners are run on and loops taken out. */
	readonly edges: readonly { readonly name: string; readonly path: Path }[];
}

/** A part of an edge without a corner in it, and its cutting line. */
interface Run {
	readonly edge: StitchedEdge;
	readonly allowance: Mm;
	readonly path: Path;
	readonly line: Path;
	/** The directions in which it starts and ends. */
	readonly starts: Direction;
	readonly ends: Direction;
	/** 1 where the outside lies on the side of squareTo(direction), else -1. */
	readonly side: 1 | -1;
}

/** The segments of a path in groups: a new one begins at each corner that the allowance opens by more than PARALLEL_ERROR. */
const smoothParts = (path: Path, allowance: Mm): readonly Path[] => {
	const parts: [Segment, ...Segment[]][] = [];
	for (const segment of path) {
		const starts = segmentDirection(segment, 0);
		if (!starts) continue;
		const part = parts.at(-1);
		const before = part?.at(-1);
		const ends = before && segmentDirection(before, 1);
		const smooth = ends && angleBetween(ends, starts) * allowance <= PARALLEL_ERROR;
		if (part && smooth) part.push(segment);
		else parts.push([segment]);
	}
	return parts;
};

const runsOf = (edge: StitchedEdge, side: 1 | -1): readonly Run[] => {
	const allowance = edge.kind === 'fold' ? mm(0) : edge.allowance;
	if (!(allowance >= 0)) throw new Error(`the allowance of ${edge.name} is ${edge.allowance} mm`);
	return smoothParts(edge.path, allowance).flatMap((path) => {
		const [starts, ends] = [startDirection(path), endDirection(path)];
		const line = parallelPath(path, mm(side * allowance));
		return starts && ends ? [{ edge, allowance, path, line, starts, ends, side }] : [];
	});
};

/** The direction out of the piece where an edge runs in `along`. */
const outwardOf = ({ side }: Run, along: Direction): Direction =>
	side === 1 ? squareTo(along) : opposite(squareTo(along));

const cornerOf = (run: Run, next: Run): Corner => ({
	place: pathEnd(run.path),
	first: {
		kind: run.edge.kind,
		allowance: run.allowance,
		line: run.line,
		toward: run.ends,
		outward: outwardOf(run, run.ends)
	},
	second: {
		kind: next.edge.kind,
		allowance: next.allowance,
		line: pathReversed(next.line),
		toward: opposite(next.starts),
		outward: outwardOf(next, next.starts)
	}
});

/** The rule at the corner from one run to the next; within an edge corners are mitred. */
const ruleAt = ({ edge }: Run, { edge: next }: Run): CornerRule => {
	if (edge === next) return 'mitre';
	return edge.endCorner ?? ((edge.kind === 'hem') === (next.kind === 'hem') ? 'mitre' : 'turn-up');
};

/** A run's cutting line as it is kept between its two corners, and how each of these is joined to it. */
interface Laid {
	readonly run: Run;
	readonly kept: Path | undefined;
	readonly before: Join;
	readonly after: Join;
}

/** Every run between its two corners. A run that its corners leave nothing of is kept whole, with loops that are taken out later. */
const laidOut = (runs: readonly Run[]): readonly Laid[] => {
	const nextOf = (i: number): Run | undefined => runs[(i + 1) % runs.length];
	const corners = runs.flatMap((run, i) => [{ run, next: nextOf(i) ?? run }]);
	const laid = (joins: readonly Join[]): readonly Laid[] =>
		runs.flatMap((run, i) => {
			const [before, after] = [joins.at(i - 1), joins[i]];
			if (!before || !after) return [];
			const kept = pathPart(run.line, run.line.length - before.second.kept, after.first.kept);
			return [{ run, kept, before, after }];
		});
	const joins = corners.map(({ run, next }) => joinAt(cornerOf(run, next), ruleAt(run, next)));
	const first = laid(joins);
	if (first.every(({ kept }) => kept)) return first;
	const lost = new Set(first.filter(({ kept }) => !kept).map(({ run }) => run));
	return laid(
		corners.map(({ run, next }, i) => {
			const join = lost.has(run) || lost.has(next) ? undefined : joins[i];
			return join ?? joinedThrough(cornerOf(run, next));
		})
	);
};

/** Sine of an angle below which two straight pieces are one: over a metre it is out by a hundredth of SAME_PLACE. */
const STRAIGHT_ON = 1e-11;

const isStraightOn = (a: Segment, b: Segment): boolean => {
	if (a.kind === 'cubic' || b.kind === 'cubic') return false;
	const [u, v] = [segmentDirection(a, 1), segmentDirection(b, 0)];
	return u !== undefined && v !== undefined && angleBetween(u, v) < STRAIGHT_ON;
};

/** The segments end to end: each starts exactly where the one before ends, and straight pieces that run on are one. */
const strung = (segments: readonly Segment[]): readonly Segment[] => {
	const path: Segment[] = [];
	for (const segment of segments) {
		const last = path.at(-1);
		if (!last) path.push(segment);
		else if (isStraightOn(last, segment)) path[path.length - 1] = straight(last.from, segment.to);
		else path.push(segmentReversed(segmentEndingAt(segmentReversed(segment), last.to)));
	}
	return path;
};

/** The segments as a closed outline, which ends exactly where it starts; undefined for none. */
const closedUp = (segments: readonly Segment[]): Path | undefined => {
	const [first, ...rest] = segments;
	const last = rest.pop();
	if (!first || !last) return first && [first];
	return [first, ...rest, segmentEndingAt(last, first.from)];
};

/** The straight piece from one place to another, or nothing where they are one. */
const gapClosed = (from: SheetPoint, to: SheetPoint): readonly Segment[] =>
	distance(from, to) > PARALLEL_ERROR ? [straight(from, to)] : [];

/** What leads to a run from the corner before it, and from it to the corner after it and on to the next run. */
const leadIn = ({ kept, before }: Laid): readonly Segment[] =>
	kept ? gapClosed(before.second.at, pathStart(kept)) : [];
const leadOut = ({ kept, after }: Laid): readonly Segment[] => [
	...(kept ? gapClosed(pathEnd(kept), after.first.at) : []),
	...after.between
];

const edgeLine = (laid: readonly Laid[], edge: StitchedEdge): readonly Segment[] => {
	const parts = laid.filter(({ run }) => run.edge === edge);
	return strung(
		parts.flatMap((part, i) => [
			...(i > 0 ? leadIn(part) : []),
			...(part.kept ?? []),
			...(i < parts.length - 1 ? leadOut(part) : [])
		])
	);
};

/** Throws where one edge does not start at the end of the one before: whoever made the piece is at fault. */
const checkJoined = (edges: readonly StitchedEdge[]): void => {
	for (const [i, { name, path }] of edges.entries()) {
		const next = edges[(i + 1) % edges.length];
		const gap = next ? distance(pathEnd(path), pathStart(next.path)) : 0;
		if (next && gap > PARALLEL_ERROR)
			throw new Error(`${next.name} starts ${gap} mm from the end of ${name}`);
	}
};

/**
 * The cutting line of a piece: every edge's allowance outside its stitching line, within PARALLEL_ERROR wherever a corner
 * is not near. The edges are given in order, either way round; those of no length are left out. Throws where they make no closed outline.
 */
export const cuttingLine = (edges: readonly StitchedEdge[]): CuttingLine => {
	checkJoined(edges);
	const [first, ...rest] = edges.flatMap(({ path }) => path);
	if (!first) throw new Error('a piece has at least one edge');
	const side = isClockwise([first, ...rest]) ? -1 : 1;
	const laid = laidOut(edges.flatMap((edge) => runsOf(edge, side)));
	const outline = closedUp(
		strung(laid.flatMap((part) => [...leadIn(part), ...(part.kept ?? []), ...leadOut(part)]))
	);
	if (!outline) throw new Error('a piece has at least one edge with a length');
	return {
		outline: withoutLoops(outline),
		edges: edges.flatMap((edge) => {
			const [from, ...on] = edgeLine(laid, edge);
			return from ? [{ name: edge.name, path: [from, ...on] satisfies Path }] : [];
		})
	};
};
