/**
 * Even draws of normal numbers: always the same ones, without a seed, and spread more evenly than chance would spread them, so that far
 * fewer say as much. The places are those of a Kronecker sequence whose steps are powers of the generalised golden ratio (the real root of
 * x^(d + 1) = x + 1); two of its coordinates make two normal numbers (Box and Muller's way).
 */

/** The real root of x^(dimensions + 1) = x + 1, by repeated substitution, which draws in. */
const goldenRatio = (dimensions: number): number => {
	let x = 2;
	for (let i = 0; i < 64; i++) x = (1 + x) ** (1 / (dimensions + 1));
	return x;
};

/** `count` draws of `wanted` normal numbers each: mean 0, standard deviation 1, unconnected. */
export const evenNormals = (wanted: number, count: number): readonly (readonly number[])[] => {
	const dimensions = wanted + (wanted % 2);
	const ratio = goldenRatio(dimensions);
	const steps = Array.from({ length: dimensions }, (_, i) => ratio ** -(i + 1));
	return Array.from({ length: count }, (_, n) => {
		const places = steps.map((step) => (0.5 + (n + 1) * step) % 1);
		return Array.from({ length: wanted }, (_, i) => {
			const pair = i - (i % 2);
			const [radius, angle] = [
				Math.sqrt(-2 * Math.log(1 - (places[pair] ?? 0))),
				2 * Math.PI * (places[pair + 1] ?? 0)
			];
			return radius * (i % 2 === 0 ? Math.cos(angle) : Math.sin(angle));
		});
	});
};
