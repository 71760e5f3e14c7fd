import { gram, inverted, times, type Rows } from './matrix.ts';

/** What numbers fit observations best, and how well these tell them. */
export interface Fit {
	readonly numbers: readonly number[];
	/** What is left of each observation, in its own measure of error. */
	readonly left: readonly number[];
	/** How each observation changes with each number. */
	readonly rows: Rows;
	/** How the numbers' errors go together, where each observation has an error of one measure. */
	readonly spread: Rows;
}

/** Step of the differences that stand for a derivative. All numbers are scaled to be about one. */
const STEP = 1e-6;
const ROUNDS = 60;
/** A round that makes the sum smaller by less than this share ends the search. */
const SETTLED = 1e-12;

const sumOfSquares = (each: readonly number[]): number => each.reduce((sum, one) => sum + one * one, 0);

/** How each observation changes with each number, by differences to both sides. */
export const slopes = (
	of: (numbers: readonly number[]) => readonly number[],
	at: readonly number[]
): Rows => {
	const columns = at.map((value, i) => {
		const moved = (by: number): readonly number[] => of(at.with(i, value + by));
		const [more, less] = [moved(STEP), moved(-STEP)];
		return more.map((each, row) => (each - (less[row] ?? 0)) / (2 * STEP));
	});
	return (columns[0] ?? []).map((_, row) => columns.map((column) => column[row] ?? 0));
};

/**
 * The numbers for which the sum of the squares of what is left is least, from a first guess, by Gauss and Newton's method with
 * Levenberg's damping. Undefined where the observations do not tell all of the numbers.
 */
export const leastSquares = (
	leftFor: (numbers: readonly number[]) => readonly number[],
	guess: readonly number[]
): Fit | undefined => {
	let numbers = guess;
	let left = leftFor(numbers);
	let sum = sumOfSquares(left);
	let damping = 1e-3;
	for (let round = 0; round < ROUNDS && damping < 1e12; round++) {
		const rows = slopes(leftFor, numbers);
		const normal = gram(rows);
		const downhill = normal.map((_, i) =>
			rows.reduce((total, row, k) => total - (row[i] ?? 0) * (left[k] ?? 0), 0)
		);
		const damped = normal.map((row, i) =>
			row.map((each, j) => (i === j ? each * (1 + damping) + 1e-15 : each))
		);
		const step = times(inverted(damped) ?? [], downhill);
		const next = numbers.map((each, i) => each + (step[i] ?? 0));
		const nextLeft = leftFor(next);
		const nextSum = sumOfSquares(nextLeft);
		if (step.length === 0 || !(nextSum <= sum)) {
			damping *= 10;
			continue;
		}
		const settled = sum - nextSum <= SETTLED * sum;
		[numbers, left, sum] = [next, nextLeft, nextSum];
		damping /= 10;
		if (settled) break;
	}
	const rows = slopes(leftFor, numbers);
	const spread = inverted(gram(rows));
	return spread && Number.isFinite(sum) ? { numbers, left, rows, spread } : undefined;
};
