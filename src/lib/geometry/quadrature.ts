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

const halved = (
	f: (t: number) => number,
	from: number,
	to: number,
	whole: number,
	error: number,
	depth: number
): number => {
	const middle = (from + to) / 2;
	const [left, right] = [once(f, from, middle), once(f, middle, to)];
	if (depth >= DEEPEST || Math.abs(left + right - whole) <= error) return left + right;
	return (
		halved(f, from, middle, left, error / 2, depth + 1) + halved(f, middle, to, right, error / 2, depth + 1)
	);
};

/** The integral of `f` from `from` to `to` within `error`, by Gauss-Legendre quadrature with halving where needed. */
export const integral = (f: (t: number) => number, from: number, to: number, error: number): number =>
	halved(f, from, to, once(f, from, to), error, 0);
