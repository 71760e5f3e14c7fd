/** One node of a quadrature rule on -1..1. */
interface QuadratureNode {
	readonly x: number;
	readonly weight: number;
}

/** The Legendre polynomial of degree n at x, and its derivative. */
const legendre = (n: number, x: number): readonly [value: number, slope: number] => {
	let [before, value] = [1, x];
	for (let k = 2; k <= n; k++) [before, value] = [value, ((2 * k - 1) * x * value - (k - 1) * before) / k];
	return [value, (n * (x * value - before)) / (x * x - 1)];
};

/** The roots are found by Newton's method from Tricomi's first guess; six rounds reach the last digit. */
const gaussLegendre = (n: number): readonly QuadratureNode[] =>
	Array.from({ length: n }, (_, i) => {
		let x = Math.cos((Math.PI * (i + 0.75)) / (n + 0.5));
		for (let round = 0; round < 6; round++) {
			const [value, slope] = legendre(n, x);
			x -= value / slope;
		}
		const [, slope] = legendre(n, x);
		return { x, weight: 2 / ((1 - x * x) * slope * slope) };
	});

const NODES = gaussLegendre(16);

const once = (f: (t: number) => number, from: number, to: number): number => {
	const half = (to - from) / 2;
	const middle = (from + to) / 2;
	let sum = 0;
	for (const { x, weight } of NODES) sum += weight * f(middle + half * x);
	return sum * half;
};

/** Halvings allowed: only a cusp needs more than a few, and its error falls by half each time. */
const DEEPEST = 24;
/** Share of a part's value below which two sums of it differ by rounding alone. */
const ROUNDING = 8 * Number.EPSILON;
/** Parts that one integral is cut into at the most: a cusp takes some fifty, and what takes more will not settle. */
const MOST_PARTS = 1000;

/** A part of an integral still to be added: its span, its sum so far, the error that it may make and how often it was halved. */
interface Part {
	readonly from: number;
	readonly to: number;
	readonly sum: number;
	readonly error: number;
	readonly depth: number;
}

/**
 * The integral of `f` from `from` to `to` within `error`, by Gauss-Legendre quadrature with halving where needed. What
 * is not a finite number cannot be halved into one: it is given back as it comes.
 */
export const integral = (f: (t: number) => number, from: number, to: number, error: number): number => {
	const waiting: Part[] = [];
	let part: Part | undefined = { from, to, sum: once(f, from, to), error, depth: 0 };
	let total = 0;
	for (let parts = 1; part; part = waiting.pop()) {
		const { to: end, depth }: Part = part;
		const middle = (part.from + end) / 2;
		const left = once(f, part.from, middle);
		const right = once(f, middle, end);
		const sum = left + right;
		const strays = Math.abs(sum - part.sum) > Math.max(part.error, ROUNDING * Math.abs(sum));
		if (!strays || depth >= DEEPEST || parts >= MOST_PARTS) {
			total += sum;
			continue;
		}
		parts += 1;
		const half = { error: part.error / 2, depth: depth + 1 };
		waiting.push(
			{ from: middle, to: end, sum: right, ...half },
			{ from: part.from, to: middle, sum: left, ...half }
		);
	}
	return total;
};
