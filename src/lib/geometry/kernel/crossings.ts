import { mm } from '#shared/units.ts';
import { enclosedArea } from '../area.ts';
import { at, type SheetPoint } from '../point.ts';
import type { Path } from '../path.ts';
import { pathSection } from '../section.ts';
import { outlineOf, paperLine, paperOutline } from './outline.ts';

/** Every place where two paths cross or touch. */
export const crossings = (first: Path, second: Path): readonly SheetPoint[] =>
	paperLine(first)
		.getIntersections(paperLine(second))
		.map(({ point }) => at(point.x, point.y));

/** A loop that encloses less, in square millimetres, is none: noise at a joint, or a line that runs there and back on itself. */
const NOTHING = 1e-3;

/** Whether an outline that meets itself at a place encloses something on both of the ways round. */
const parts = (outline: Path, { offset, intersection }: paper.CurveLocation): boolean => {
	const [from, to] = [Math.min(offset, intersection.offset), Math.max(offset, intersection.offset)];
	const loop = pathSection(outline, mm(from), mm(to));
	if (!loop) return false;
	const [inside, whole] = [enclosedArea(loop), enclosedArea(outline)];
	return Math.min(Math.abs(inside), Math.abs(whole - inside)) > NOTHING;
};

/** Every place where a closed outline crosses itself; a sound outline has none. */
export const selfCrossings = (outline: Path): readonly SheetPoint[] => {
	const closed = paperOutline(outline);
	const whole = outlineOf(closed);
	return closed
		.getCrossings(closed)
		.filter((place) => whole !== undefined && parts(whole, place))
		.map(({ point }) => at(point.x, point.y));
};
