import paper from 'paper/dist/paper-core.js';
import { at, type SheetPoint } from '../point.ts';
import { pathData, type Path } from '../path.ts';

/**
 * The only folder that imports paper. It is used for what it does well and we would not write again:
 * finding where curves cross. Items are made with `insert: false`, so that none stays behind.
 */
const DIGITS = 9;

const project = new paper.Project(new paper.Size(1, 1));
project.activate();

const outlineOf = (path: Path, closed: boolean): paper.Path =>
	new paper.Path({ pathData: pathData(path, DIGITS, closed), insert: false });

/** Every place where two paths cross or touch. */
export const crossings = (first: Path, second: Path): readonly SheetPoint[] =>
	outlineOf(first, false)
		.getIntersections(outlineOf(second, false))
		.map(({ point }) => at(point.x, point.y));

/** Every place where a closed outline crosses itself; a sound outline has none. */
export const selfCrossings = (outline: Path): readonly SheetPoint[] => {
	const closed = outlineOf(outline, true);
	return closed.getCrossings(closed).map(({ point }) => at(point.x, point.y));
};
