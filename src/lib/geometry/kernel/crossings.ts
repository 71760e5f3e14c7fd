import { at, type SheetPoint } from '../point.ts';
import type { Path } from '../path.ts';
import { paperLine, paperOutline } from './outline.ts';

/** Every place where two paths cross or touch. */
export const crossings = (first: Path, second: Path): readonly SheetPoint[] =>
	paperLine(first)
		.getIntersections(paperLine(second))
		.map(({ point }) => at(point.x, point.y));

/** Every place where a closed outline crosses itself; a sound outline has none. */
export const selfCrossings = (outline: Path): readonly SheetPoint[] => {
	const closed = paperOutline(outline);
	return closed.getCrossings(closed).map(({ point }) => at(point.x, point.y));
};
