import { mm, radians, type Mm, type Radians } from '#shared/units.ts';

/** How a place strays from where it is drawn: the second moments of the way across and down, in square millimetres. */
export interface Moments {
	readonly xx: number;
	readonly xy: number;
	readonly yy: number;
}

/** A vector of a stray, in millimetres. */
export interface Stray {
	readonly dx: number;
	readonly dy: number;
}

export const NO_MOMENTS: Moments = { xx: 0, xy: 0, yy: 0 };

/** The moments with one stray more. */
export const withStray = ({ xx, xy, yy }: Moments, { dx, dy }: Stray, weight = 1): Moments => ({
	xx: xx + weight * dx * dx,
	xy: xy + weight * dx * dy,
	yy: yy + weight * dy * dy
});

/** The two principal variances of a spread, the greater first, and which way the greater runs: the turn from across toward down. */
export interface Axes {
	readonly greater: number;
	readonly lesser: number;
	readonly turn: Radians;
}

/** The principal axes of moments (the eigenvalues of a symmetric 2 by 2 matrix, in closed form). */
export const axesOf = ({ xx, xy, yy }: Moments): Axes => {
	const [middle, half] = [(xx + yy) / 2, Math.hypot((xx - yy) / 2, xy)];
	return {
		greater: middle + half,
		lesser: Math.max(0, middle - half),
		turn: radians(Math.atan2(2 * xy, xx - yy) / 2)
	};
};

/** The share of cases that is meant wherever it is said how far something can move: nineteen of twenty. */
export const COVERAGE = 0.95;

/** Directions by which the share within a distance is averaged: a smooth function of the direction, so that few are exact. */
const DIRECTIONS = 64;
const HALVINGS = 40;
/** Between these many standard deviations of the greater axis the distance lies: 1.96 for a line, 2.45 for a circle. */
const LEAST_REACH = 1.9;
const MOST_REACH = 2.5;

/** Which share of a normal spread lies within `distance` of its middle: for each direction of the round one it was made from, in closed form. */
const shareWithin = (distance: number, { greater, lesser }: Axes): number => {
	let sum = 0;
	for (let i = 0; i < DIRECTIONS; i++) {
		const angle = ((i + 0.5) / DIRECTIONS) * (Math.PI / 2);
		const variance = greater * Math.cos(angle) ** 2 + lesser * Math.sin(angle) ** 2;
		sum += 1 - Math.exp(-(distance ** 2) / (2 * variance));
	}
	return sum / DIRECTIONS;
};

/** How far from its middle a normal spread with these axes reaches in nineteen cases of twenty. */
export const normalReach = (axes: Axes): Mm => {
	const deviation = Math.sqrt(axes.greater);
	if (deviation === 0) return mm(0);
	let [low, high] = [LEAST_REACH * deviation, MOST_REACH * deviation];
	for (let i = 0; i < HALVINGS; i++) {
		const half = (low + high) / 2;
		if (shareWithin(half, axes) < COVERAGE) low = half;
		else high = half;
	}
	return mm((low + high) / 2);
};

/** The distance that nineteen of twenty of these do not exceed. Asked of at least one. */
export const reachAmong = (distances: readonly number[]): Mm => {
	const sorted = distances.toSorted((a, b) => a - b);
	const place = COVERAGE * (sorted.length - 1);
	const [below = 0, above = below] = [sorted[Math.floor(place)], sorted[Math.ceil(place)]];
	return mm(below + (above - below) * (place - Math.floor(place)));
};
