import paper from 'paper/dist/paper-core.js';
import { SAME_PLACE } from '#shared/tolerances.ts';
import { pathEnd, pathStart, type Path } from '../path.ts';
import { at, distance, type SheetPoint } from '../point.ts';
import { cubic, straight, type Segment } from '../segment.ts';

/**
 * This folder alone imports paper. It is used for what it does well and we would not write again: finding where curves
 * cross, and putting outlines together. Items are made with `insert: false`, so that none stays behind.
 *
 * paper makes no path without a project, even one that is put into none.
 */
new paper.Project(new paper.Size(1, 1)).activate();

const sheetPoint = ({ x, y }: paper.Point): SheetPoint => at(x, y);

/** A handle as paper keeps it, seen from its own end of the segment; none for a straight piece. */
const handleOf = (segment: Segment, side: 'leaving' | 'arriving'): paper.Point => {
	if (segment.kind === 'straight') return new paper.Point(0, 0);
	const end = side === 'leaving' ? segment.from : segment.to;
	return new paper.Point(segment[side].x - end.x, segment[side].y - end.y);
};

/** One of our segments as paper's curve. */
export const paperCurve = (segment: Segment): paper.Curve =>
	new paper.Curve(
		new paper.Point(segment.from.x, segment.from.y),
		handleOf(segment, 'leaving'),
		handleOf(segment, 'arriving'),
		new paper.Point(segment.to.x, segment.to.y)
	);

/** An outline as paper's closed path, put into no project; one whose end is not at its start is closed by a straight piece. */
export const paperOutline = (path: Path): paper.Path => {
	const [start, end] = [pathStart(path), pathEnd(path)];
	const closed = distance(start, end) > SAME_PLACE ? [...path, straight(end, start)] : path;
	// A straight piece of no length has no direction, and its two ends would be taken for a crossing.
	const outline = closed.filter(({ kind, from, to }) => kind === 'cubic' || distance(from, to) > SAME_PLACE);
	const corner = (segment: Segment, i: number): paper.Segment => {
		const place = new paper.Point(segment.from.x, segment.from.y);
		const before = outline.at(i - 1) ?? segment;
		return new paper.Segment(place, handleOf(before, 'arriving'), handleOf(segment, 'leaving'));
	};
	return new paper.Path({ segments: outline.map(corner), closed: true, insert: false });
};

/** A drawn line as paper's open path, put into no project. */
export const paperLine = (path: Path): paper.Path => {
	const places = path.map((segment, i) => {
		const before = path[i - 1];
		return new paper.Segment(
			new paper.Point(segment.from.x, segment.from.y),
			before ? handleOf(before, 'arriving') : new paper.Point(0, 0),
			handleOf(segment, 'leaving')
		);
	});
	const last = path.at(-1) ?? path[0];
	const end = new paper.Segment(
		new paper.Point(last.to.x, last.to.y),
		handleOf(last, 'arriving'),
		new paper.Point(0, 0)
	);
	return new paper.Path({ segments: [...places, end], closed: false, insert: false });
};

const segmentOf = ({ points, segment1, segment2 }: paper.Curve): Segment => {
	const [from, leaving, arriving, to] = points.map(sheetPoint);
	if (!from || !leaving || !arriving || !to) throw new Error('a curve of paper has four points');
	const bare = segment1.handleOut.isZero() && segment2.handleIn.isZero();
	return bare ? straight(from, to) : cubic(from, leaving, arriving, to);
};

/** paper's closed path as our outline; undefined for an empty one. */
export const outlineOf = (path: paper.Path): Path | undefined => {
	const [first, ...rest] = path.curves.map(segmentOf);
	return first && [first, ...rest];
};
