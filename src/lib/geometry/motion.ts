import type { Radians } from '#shared/units.ts';
import { pathMapped, type Path } from './path.ts';
import { at, type SheetPoint } from './point.ts';

/**
 * A motion that keeps every length: a turn, a shift or a mirroring, and any of them one after the
 * other. The place (x, y) goes to (a x + b y + e, c x + d y + f).
 */
export interface Motion {
	readonly a: number;
	readonly b: number;
	readonly c: number;
	readonly d: number;
	/** In millimetres. */
	readonly e: number;
	/** In millimetres. */
	readonly f: number;
}

/** The motion that leaves everything where it is. */
export const REST: Motion = { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 };

/** A turn about a place; a positive angle turns x toward y, which is clockwise as the sheet is seen. */
export const turning = (about: SheetPoint, angle: Radians): Motion => {
	const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
	return {
		a: cos,
		b: -sin,
		c: sin,
		d: cos,
		e: about.x - cos * about.x + sin * about.y,
		f: about.y - sin * about.x - cos * about.y
	};
};

/** A shift that takes one place to another. */
export const shifting = (from: SheetPoint, to: SheetPoint): Motion => ({
	...REST,
	e: to.x - from.x,
	f: to.y - from.y
});

/** The mirroring on the straight line through two places, which must differ. */
export const mirroring = (first: SheetPoint, second: SheetPoint): Motion => {
	const [x, y] = [second.x - first.x, second.y - first.y];
	const size = x * x + y * y;
	const [a, b] = [(x * x - y * y) / size, (2 * x * y) / size];
	return {
		a,
		b,
		c: b,
		d: -a,
		e: first.x - a * first.x - b * first.y,
		f: first.y - b * first.x + a * first.y
	};
};

/** Two motions, the first and then the second, as one. */
export const followedBy = (first: Motion, second: Motion): Motion => ({
	a: second.a * first.a + second.b * first.c,
	b: second.a * first.b + second.b * first.d,
	c: second.c * first.a + second.d * first.c,
	d: second.c * first.b + second.d * first.d,
	e: second.a * first.e + second.b * first.f + second.e,
	f: second.c * first.e + second.d * first.f + second.f
});

/** Where a motion takes a place. */
export const movedBy = ({ a, b, c, d, e, f }: Motion, { x, y }: SheetPoint): SheetPoint =>
	at(a * x + b * y + e, c * x + d * y + f);

/** Where a motion takes a line. */
export const pathMovedBy = (motion: Motion, path: Path): Path =>
	pathMapped(path, (place) => movedBy(motion, place));
