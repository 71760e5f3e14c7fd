import { mm, radians, type Mm, type Radians } from '#shared/units.ts';

/** A place on the sheet, in millimetres: x runs outward from the centre line, y runs down from the corner. */
export interface SheetPoint {
	readonly x: Mm;
	readonly y: Mm;
}

/** A direction on the sheet as a vector of length one. */
export interface Direction {
	readonly dx: number;
	readonly dy: number;
}

/** The place x millimetres out and y millimetres down. */
export const at = (x: number, y: number): SheetPoint => ({ x: mm(x), y: mm(y) });

/** The length of a vector. A sheet's numbers neither over- nor underflow, so the slow care of Math.hypot is not needed. */
const sizeOf = (dx: number, dy: number): number => Math.sqrt(dx * dx + dy * dy);

/** The straight distance between two places. */
export const distance = (a: SheetPoint, b: SheetPoint): Mm => mm(sizeOf(b.x - a.x, b.y - a.y));

/** The place a share of the way from `a` (0) to `b` (1). */
export const between = (a: SheetPoint, b: SheetPoint, share: number): SheetPoint =>
	at(a.x + (b.x - a.x) * share, a.y + (b.y - a.y) * share);

/** The place reached from `from` by going `length` along `direction`; a negative length goes the other way. */
export const moved = (from: SheetPoint, direction: Direction, length: Mm): SheetPoint =>
	at(from.x + direction.dx * length, from.y + direction.dy * length);

/** The direction of a vector, or undefined for one of no length. */
export const directionOf = (dx: number, dy: number): Direction | undefined => {
	const size = sizeOf(dx, dy);
	return size === 0 ? undefined : { dx: dx / size, dy: dy / size };
};

/** The direction from one place to another, or undefined where they are the same place. */
export const directionTo = (from: SheetPoint, to: SheetPoint): Direction | undefined =>
	directionOf(to.x - from.x, to.y - from.y);

/** The direction square to this one; of the two, the one for which a turn from x toward y is a quarter. */
export const squareTo = ({ dx, dy }: Direction): Direction => ({ dx: -dy, dy: dx });

/** The opposite direction. */
export const opposite = ({ dx, dy }: Direction): Direction => ({ dx: -dx, dy: -dy });

/** How far one direction runs along another: 1 the same, 0 square, -1 opposite. */
export const alongness = (a: Direction, b: Direction): number => a.dx * b.dx + a.dy * b.dy;

/** The angle from one direction to the other, 0 to pi. */
export const angleBetween = (a: Direction, b: Direction): Radians =>
	radians(Math.atan2(Math.abs(a.dx * b.dy - a.dy * b.dx), alongness(a, b)));
