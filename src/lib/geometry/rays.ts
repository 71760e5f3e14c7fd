import { mm, type Mm } from '#shared/units.ts';
import { moved, type Direction, type SheetPoint } from './point.ts';

/** Where two endless lines meet, with the signed distance along each from its own start. */
export interface Meeting {
	readonly point: SheetPoint;
	readonly alongFirst: Mm;
	readonly alongSecond: Mm;
}

/** Sine of the angle below which two lines count as parallel: they would meet a kilometre off the sheet. */
const PARALLEL = 1e-9;

/** Where the line through `p` along `u` meets the line through `q` along `v`; undefined where they are parallel. */
export const lineMeeting = (
	p: SheetPoint,
	u: Direction,
	q: SheetPoint,
	v: Direction
): Meeting | undefined => {
	const cross = u.dx * v.dy - u.dy * v.dx;
	if (Math.abs(cross) < PARALLEL) return undefined;
	const [x, y] = [q.x - p.x, q.y - p.y];
	const alongFirst = mm((x * v.dy - y * v.dx) / cross);
	return { point: moved(p, u, alongFirst), alongFirst, alongSecond: mm((x * u.dy - y * u.dx) / cross) };
};

/**
 * The place on a level (a line square across at depth `level`) that lies `length` from `centre`, on
 * the outer side or the inner. Undefined where the length does not reach the level.
 */
export const swungToLevel = (
	centre: SheetPoint,
	length: Mm,
	level: Mm,
	side: 'outward' | 'inward'
): SheetPoint | undefined => {
	const drop = level - centre.y;
	if (length < Math.abs(drop)) return undefined;
	const out = Math.sqrt(length * length - drop * drop);
	return { x: mm(centre.x + (side === 'outward' ? out : -out)), y: level };
};
