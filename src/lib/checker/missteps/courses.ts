import { mm, type Mm } from '#shared/units.ts';
import { pathLength, pointAtLength, type Path } from '#geometry/path.ts';
import { directionTo, distance, moved, type Direction, type SheetPoint } from '#geometry/point.ts';
import { STRAY } from './priors.ts';
import type { Stand } from './stand.ts';

/** How a length is laid off. */
export interface Course {
	/** Where a length leads. */
	readonly at: (length: Mm) => SheetPoint | undefined;
	/** Whether a length may lead to where the mark was put: looked at first, since lengths are many. */
	readonly near: (length: number) => boolean;
}

/** The farthest that a place may lie from a mark that meant it. */
const REACH = STRAY * Math.SQRT2;

/** Straight on from a start. */
export const straightCourse = ({ placed }: Stand, start: SheetPoint, way: Direction): Course => {
	const at = (length: Mm): SheetPoint => moved(start, way, length);
	if (!placed) return { at, near: () => true };
	const [x, y] = [placed.x - start.x, placed.y - start.y];
	const isBeside = Math.abs(x * way.dy - y * way.dx) <= REACH;
	const along = x * way.dx + y * way.dy;
	return { at, near: (length) => isBeside && Math.abs(length - along) <= REACH };
};

/** Straight toward another place; none where that is the start. */
export const courseToward = (stand: Stand, start: SheetPoint, end: SheetPoint): Course => {
	const way = directionTo(start, end);
	return way ? straightCourse(stand, start, way) : { at: () => undefined, near: () => false };
};

/** Every so many millimetres of a curved course it is seen how far the mark lies from it; nearer by, at closer places. */
const SEEN_EVERY = [32, 4] as const;

/** Along a drawn line from its start. A place on it cannot lie further from another than the line is long between them. */
export const courseOnLine = ({ placed }: Stand, path: Path): Course => {
	const at = (length: Mm): SheetPoint | undefined => pointAtLength(path, length);
	if (!placed) return { at, near: () => true };
	const [whole, seen] = [pathLength(path), new Map<number, number>()];
	const farFrom = (length: number): number => {
		const known = seen.get(length);
		if (known !== undefined) return known;
		const place = at(mm(length));
		const far = place ? distance(place, placed) : 0;
		seen.set(length, far);
		return far;
	};
	const near = (length: number): boolean =>
		SEEN_EVERY.every((every) => {
			const looked = Math.min(whole, Math.max(0, Math.round(length / every) * every));
			return farFrom(looked) <= REACH + Math.abs(length - looked);
		});
	return { at, near };
};
