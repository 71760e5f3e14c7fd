import { at, type SheetPoint } from '#geometry/point.ts';
import type { Motion } from '#geometry/motion.ts';
import { lyingOn } from './sightings.ts';

/** A place that was found, and the computed one that it should be. */
export interface Pair {
	readonly found: SheetPoint;
	readonly right: SheetPoint;
	/** How much it counts. */
	readonly weight: number;
}

/** How found places lie on the draft. */
export interface Aligned {
	readonly motion: Motion;
	/** Whether they had to be turned over, as a draft of the other side is. */
	readonly mirrored: boolean;
}

/** The way back of a motion. What keeps every length is undone by its own numbers turned over. */
export const undone = ({ a, b, c, d, e, f }: Motion): Motion => ({
	a,
	b: c,
	c: b,
	d,
	e: -(a * e + c * f),
	f: -(b * e + d * f)
});

const moved = ({ a, b, c, d, e, f }: Motion, { x, y }: SheetPoint): SheetPoint =>
	at(a * x + b * y + e, c * x + d * y + f);

/** What a pair that is far off counts for, in millimetres: within it, all count alike. */
const NEAR = 1.5;
const ROUNDS = 40;

const fitted = (pairs: readonly Pair[], mirrored: boolean): { motion: Motion; cost: number } => {
	const turnedOver = pairs.map(({ found, right, weight }) => ({
		own: mirrored ? at(-found.x, found.y) : found,
		sheet: right,
		weight
	}));
	let weights = pairs.map(({ weight }) => weight);
	let motion: Motion = { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 };
	let cost = Infinity;
	for (let round = 0; round < ROUNDS; round++) {
		const { x, y, turn } = lyingOn(turnedOver.map((pair, i) => ({ ...pair, weight: weights[i] ?? 0 })));
		const [cos, sin, side] = [Math.cos(turn), Math.sin(turn), mirrored ? -1 : 1];
		motion = { a: side * cos, b: -sin, c: side * sin, d: cos, e: x, f: y };
		const off = pairs.map(({ found, right }) => {
			const place = moved(motion, found);
			return Math.hypot(place.x - right.x, place.y - right.y);
		});
		cost = pairs.reduce((sum, { weight }, i) => sum + weight * (off[i] ?? 0), 0);
		weights = pairs.map(({ weight }, i) => weight / Math.max(NEAR, off[i] ?? 0));
	}
	return { motion, cost };
};

/** By how much the turned-over places must lie better before they are taken to be: places in a row lie alike both ways. */
const CLEARLY = 0.5;

/**
 * How found places must be turned and shifted, and if need be turned over, to lie on the computed ones, so that the sum of the
 * distances is least: one that was drawn wrong does not drag the others with it. Undefined for fewer than two.
 */
export const aligned = (pairs: readonly Pair[]): Aligned | undefined => {
	if (pairs.length < 2) return undefined;
	const [plain, over] = [fitted(pairs, false), fitted(pairs, true)];
	const mirrored = pairs.length > 2 && over.cost < CLEARLY * plain.cost;
	return { motion: (mirrored ? over : plain).motion, mirrored };
};
