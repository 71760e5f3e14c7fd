/** Square symmetric matrices as the normal equations of least squares need them: small, dense, row by row in one array. */

/** How small a pivot may be beside its row's own size before the equations leave something open. */
const SINGULAR = 1e-10;

/** The lower triangle L with L Lᵀ = `matrix`; undefined where the equations leave something open. */
const cholesky = (matrix: Float64Array, size: number): Float64Array | undefined => {
	const lower = new Float64Array(size * size);
	const of = (all: Float64Array, row: number, column: number): number => all[row * size + column] ?? 0;
	for (let column = 0; column < size; column++) {
		let pivot = of(matrix, column, column);
		for (let k = 0; k < column; k++) pivot -= of(lower, column, k) ** 2;
		if (!(pivot > SINGULAR * of(matrix, column, column))) return undefined;
		const root = Math.sqrt(pivot);
		lower[column * size + column] = root;
		for (let row = column + 1; row < size; row++) {
			let sum = of(matrix, row, column);
			for (let k = 0; k < column; k++) sum -= of(lower, row, k) * of(lower, column, k);
			lower[row * size + column] = sum / root;
		}
	}
	return lower;
};

/** L Lᵀ x = `right`, solved for x. */
const backAndForth = (lower: Float64Array, right: Float64Array, size: number): Float64Array => {
	const x = Float64Array.from(right);
	for (let row = 0; row < size; row++) {
		let sum = x[row] ?? 0;
		for (let k = 0; k < row; k++) sum -= (lower[row * size + k] ?? 0) * (x[k] ?? 0);
		x[row] = sum / (lower[row * size + row] ?? 1);
	}
	for (let row = size - 1; row >= 0; row--) {
		let sum = x[row] ?? 0;
		for (let k = row + 1; k < size; k++) sum -= (lower[k * size + row] ?? 0) * (x[k] ?? 0);
		x[row] = sum / (lower[row * size + row] ?? 1);
	}
	return x;
};

/** The x with `matrix` x = `right`; undefined where the equations leave something open. */
export const solved = (matrix: Float64Array, right: Float64Array, size: number): Float64Array | undefined => {
	const lower = cholesky(matrix, size);
	return lower && backAndForth(lower, right, size);
};

/** The inverse; undefined where the equations leave something open. */
export const inverted = (matrix: Float64Array, size: number): Float64Array | undefined => {
	const lower = cholesky(matrix, size);
	if (!lower) return undefined;
	const inverse = new Float64Array(size * size);
	for (let column = 0; column < size; column++) {
		const unit = new Float64Array(size);
		unit[column] = 1;
		inverse.set(backAndForth(lower, unit, size), column * size);
	}
	return inverse;
};

/** The greater of the two eigenvalues of a symmetric matrix of two rows. */
export const greatestOf = (xx: number, xy: number, yy: number): number =>
	(xx + yy) / 2 + Math.sqrt(((xx - yy) / 2) ** 2 + xy * xy);
