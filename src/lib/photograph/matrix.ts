/** A table of numbers, row by row. */
export type Rows = readonly (readonly number[])[];

const entry = (rows: Rows, row: number, column: number): number => rows[row]?.[column] ?? 0;

/** The product of a table turned over with itself: symmetric, and so what its rows have in common. */
export const gram = (rows: Rows): number[][] => {
	const width = rows[0]?.length ?? 0;
	const out = Array.from({ length: width }, () => new Array<number>(width).fill(0));
	for (const row of rows)
		for (const [i, a] of row.entries()) {
			if (a === 0) continue;
			const sums = out[i] ?? [];
			for (const [j, b] of row.entries()) sums[j] = (sums[j] ?? 0) + a * b;
		}
	return out;
};

/**
 * The inverse of a symmetric table whose quadratic form is positive (Cholesky); undefined where it is not, to the
 * precision of numbers.
 */
export const inverted = (rows: Rows): number[][] | undefined => {
	const size = rows.length;
	const lower = Array.from({ length: size }, () => new Array<number>(size).fill(0));
	for (let i = 0; i < size; i++)
		for (let j = 0; j <= i; j++) {
			let sum = entry(rows, i, j);
			for (let k = 0; k < j; k++) sum -= entry(lower, i, k) * entry(lower, j, k);
			const target = lower[i] ?? [];
			if (i !== j) target[j] = sum / entry(lower, j, j);
			else if (sum > 0) target[j] = Math.sqrt(sum);
			else return undefined;
		}
	const columns = Array.from({ length: size }, (_, c) => {
		const forward = new Array<number>(size).fill(0);
		for (let i = 0; i < size; i++) {
			let sum = i === c ? 1 : 0;
			for (let k = 0; k < i; k++) sum -= entry(lower, i, k) * (forward[k] ?? 0);
			forward[i] = sum / entry(lower, i, i);
		}
		const back = new Array<number>(size).fill(0);
		for (let i = size - 1; i >= 0; i--) {
			let sum = forward[i] ?? 0;
			for (let k = i + 1; k < size; k++) sum -= entry(lower, k, i) * (back[k] ?? 0);
			back[i] = sum / entry(lower, i, i);
		}
		return back;
	});
	return columns;
};

/** What a table makes of a column of numbers. */
export const times = (rows: Rows, column: readonly number[]): number[] =>
	rows.map((row) => row.reduce((sum, each, i) => sum + each * (column[i] ?? 0), 0));

/** Turns two rows and two columns of a symmetric table so that the entry where they cross is nothing, and the directions with it. */
const turnAway = (a: number[][], directions: number[][], p: number, q: number): void => {
	const off = entry(a, p, q);
	if (off === 0) return;
	const theta = (entry(a, q, q) - entry(a, p, p)) / (2 * off);
	const t = (theta < 0 ? -1 : 1) / (Math.abs(theta) + Math.hypot(theta, 1));
	const c = 1 / Math.hypot(t, 1);
	const s = t * c;
	const mix = (row: number[], other: number[]): void => {
		for (let i = 0; i < row.length; i++) {
			const [x, y] = [row[i] ?? 0, other[i] ?? 0];
			row[i] = c * x - s * y;
			other[i] = s * x + c * y;
		}
	};
	mix(a[p] ?? [], a[q] ?? []);
	for (const row of a) {
		const [x, y] = [row[p] ?? 0, row[q] ?? 0];
		row[p] = c * x - s * y;
		row[q] = s * x + c * y;
	}
	mix(directions[p] ?? [], directions[q] ?? []);
};

/** Rounds of Jacobi's method: eight settle a table of nine rows to the last digit. */
const ROUNDS = 12;

/** The main directions of a symmetric table with what each is stretched by, the least first (Jacobi's method). */
export const mainDirections = (
	rows: Rows
): readonly { readonly stretch: number; readonly direction: readonly number[] }[] => {
	const a = rows.map((row) => [...row]);
	const directions = rows.map((_, i) => rows.map((__, j) => (i === j ? 1 : 0)));
	for (let round = 0; round < ROUNDS; round++)
		for (let p = 0; p < a.length; p++) for (let q = p + 1; q < a.length; q++) turnAway(a, directions, p, q);
	return directions
		.map((direction, i) => ({ stretch: entry(a, i, i), direction }))
		.sort((x, y) => x.stretch - y.stretch);
};
