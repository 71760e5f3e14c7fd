/**
 * Curves for the dress worked by hand: plain numbers in centimetres, no code of the program. Lengths are Simpson's,
 * places at a length and points that go on until a length fits are found by halving.
 */
import type { Spot } from './back-block.ts';

/** Start, two handles, end. */
export type Cubic = readonly [Spot, Spot, Spot, Spot];
/** Cubics end to end. */
export type Curve = readonly Cubic[];

export const ACROSS: Spot = [1, 0];
export const DOWN: Spot = [0, 1];
export const UP: Spot = [0, -1];

export const apart = (a: Spot, b: Spot): number => Math.sqrt((a[0] - b[0]) ** 2 + (a[1] - b[1]) ** 2);
/** The place so far from `a` along a way of length one. */
export const gone = (a: Spot, way: Spot, far: number): Spot => [a[0] + way[0] * far, a[1] + way[1] * far];
/** The way of length one from `a` to `b`. */
export const way = (a: Spot, b: Spot): Spot => [(b[0] - a[0]) / apart(a, b), (b[1] - a[1]) / apart(a, b)];
export const onTheWay = (a: Spot, b: Spot, far: number): Spot => gone(a, way(a, b), far);
export const middle = (a: Spot, b: Spot): Spot => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
/** Of the two ways square to this one, the one that has more of `toward`. */
export const square = (of: Spot, toward: Spot): Spot => {
	const one: Spot = [-of[1], of[0]];
	return one[0] * toward[0] + one[1] * toward[1] >= 0 ? one : [of[1], -of[0]];
};
/** A place turned about another, from x toward y. */
export const turned = (about: Spot, by: number, place: Spot): Spot => {
	const [x, y] = [place[0] - about[0], place[1] - about[1]];
	const [c, s] = [Math.cos(by), Math.sin(by)];
	return [about[0] + x * c - y * s, about[1] + x * s + y * c];
};
/** The angle at `about` from one place to another, from x toward y, between half a turn back and half a turn on. */
export const angleAt = (about: Spot, from: Spot, to: Spot): number => {
	const raw =
		Math.atan2(to[1] - about[1], to[0] - about[0]) - Math.atan2(from[1] - about[1], from[0] - about[0]);
	return raw - 2 * Math.PI * Math.round(raw / (2 * Math.PI));
};

/** A cubic whose handles lie a third of the straight distance from its ends: along u from p, and back along v from q. */
export const byThirds = (p: Spot, u: Spot, q: Spot, v: Spot): Cubic => {
	const third = apart(p, q) / 3;
	return [p, gone(p, u, third), gone(q, v, -third), q];
};

/** The block's corner rule: handles 0.5523 of the way to where the two ways meet, ahead of both; by thirds where they do not. */
export const byCorner = (p: Spot, u: Spot, q: Spot, v: Spot): Cubic => {
	const cross = u[0] * v[1] - u[1] * v[0];
	const [dx, dy] = [q[0] - p[0], q[1] - p[1]];
	const [a, b] = [(dx * v[1] - dy * v[0]) / cross, (u[0] * dy - u[1] * dx) / cross];
	if (!(Math.abs(cross) > 1e-12) || !(a > 0) || !(b > 0)) return byThirds(p, u, q, v);
	const share = (4 / 3) * (Math.SQRT2 - 1);
	return [p, gone(p, u, share * a), gone(q, v, -share * b), q];
};

export const placeOn = ([a, b, c, d]: Cubic, t: number): Spot => {
	const s = 1 - t;
	const at = (i: 0 | 1): number =>
		s * s * s * a[i] + 3 * s * s * t * b[i] + 3 * s * t * t * c[i] + t * t * t * d[i];
	return [at(0), at(1)];
};

/** How a cubic runs at t, in centimetres per unit of t. */
const runOf = ([a, b, c, d]: Cubic, t: number): Spot => {
	const s = 1 - t;
	const at = (i: 0 | 1): number =>
		3 * s * s * (b[i] - a[i]) + 6 * s * t * (c[i] - b[i]) + 3 * t * t * (d[i] - c[i]);
	return [at(0), at(1)];
};

/** The way of length one in which a cubic runs at t. */
export const wayOn = (cubic: Cubic, t: number): Spot => {
	const [x, y] = runOf(cubic, t);
	const size = Math.sqrt(x * x + y * y);
	return [x / size, y / size];
};

const simpson = (of: (t: number) => number, to: number, parts: number): number => {
	let sum = of(0) + of(to);
	for (let i = 1; i < parts; i++) sum += (i % 2 === 1 ? 4 : 2) * of((to * i) / parts);
	return (sum * to) / (3 * parts);
};

/** The length of a cubic up to t. */
export const lengthTo = (cubic: Cubic, t: number, parts = 200): number =>
	simpson((at) => Math.hypot(...runOf(cubic, at)), t, parts);

export const lengthOf = (curve: Curve): number => curve.reduce((sum, cubic) => sum + lengthTo(cubic, 1), 0);

/** Where a function that grows from below 0 to above it is 0. */
const halved = (of: (at: number) => number, least: number, most: number): number => {
	let [low, high] = [least, most];
	for (let i = 0; i < 52; i++) {
		const at = (low + high) / 2;
		if (of(at) < 0) low = at;
		else high = at;
	}
	return (low + high) / 2;
};

/** Where on a cubic so much of its length is behind. */
export const shareAt = (cubic: Cubic, length: number): number =>
	halved((t) => lengthTo(cubic, t) - length, 0, 1);

/** The first place, going from the least to the most, where a function passes 0; undefined where it does not. */
export const firstPassing = (
	of: (at: number) => number,
	least: number,
	most: number,
	steps: number
): number | undefined => {
	let before = of(least);
	for (let i = 1; i <= steps; i++) {
		const at = least + ((most - least) * i) / steps;
		const value = of(at);
		const from = at - (most - least) / steps;
		if (before < 0 && value >= 0) return halved(of, from, at);
		if (before > 0 && value <= 0) return halved((x) => -of(x), from, at);
		before = value;
	}
	return undefined;
};

/** How far a cubic turns per unit of its length at t, from x toward y. */
const bend = (cubic: Cubic, t: number): number => {
	const [a, b, c, d] = cubic;
	const at = (i: 0 | 1): number => 6 * (1 - t) * (c[i] - 2 * b[i] + a[i]) + 6 * t * (d[i] - 2 * c[i] + b[i]);
	const [x, y] = runOf(cubic, t);
	return (x * at(1) - y * at(0)) / (x * x + y * y) ** 1.5;
};

/** The length of the line beside a cubic up to t, `by` to the right of someone who walks along it: its run is 1 - by bend of the cubic's. */
export const besideLength = (cubic: Cubic, by: number, t: number): number =>
	simpson((at) => Math.hypot(...runOf(cubic, at)) * Math.abs(1 - by * bend(cubic, at)), t, 400);

/** The place at half the length of the line beside a cubic. */
export const besideMiddle = (cubic: Cubic, by: number): Spot => {
	const half = besideLength(cubic, by, 1) / 2;
	const t = halved((at) => besideLength(cubic, by, at) - half, 0, 1);
	const [x, y] = wayOn(cubic, t);
	return gone(placeOn(cubic, t), [-y, x], by);
};
