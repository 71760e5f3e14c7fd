/** What is worked from covariances: small matrices, row by row. */
export type Matrix = readonly (readonly number[])[];

/** The sum of two lists' products, item by item. */
export const dot = (a: readonly number[], b: readonly number[]): number =>
	a.reduce((sum, value, i) => sum + value * (b[i] ?? 0), 0);

/**
 * The lower triangle L for which L times its own mirror image is the given matrix (Cholesky). Throws
 * where there is none: the matrix is then no covariance.
 */
export const lowerTriangle = (matrix: Matrix): Matrix => {
	const lower: number[][] = [];
	matrix.forEach((row, i) => {
		const made: number[] = [];
		for (let j = 0; j <= i; j++) {
			const above = j < i ? (lower[j] ?? []) : made;
			const left = (row[j] ?? NaN) - dot(above.slice(0, j), made);
			if (j === i && !(left > 0)) throw new Error(`row ${i + 1} of the matrix is not that of a covariance`);
			made.push(j === i ? Math.sqrt(left) : left / (above[j] ?? NaN));
		}
		lower.push(made);
	});
	return lower;
};

/** The inverse of a lower triangle: one column after the other, from its diagonal down. */
const inverseTriangle = (lower: Matrix): Matrix => {
	const inverse = lower.map(() => lower.map(() => 0));
	lower.forEach((_, column) => {
		for (let i = column; i < lower.length; i++) {
			const row = lower[i] ?? [];
			let sum = i === column ? 1 : 0;
			for (let k = column; k < i; k++) sum -= (row[k] ?? 0) * (inverse[k]?.[column] ?? 0);
			const into = inverse[i];
			if (into) into[column] = sum / (row[i] ?? NaN);
		}
	});
	return inverse;
};

/** The inverse of a covariance, and the logarithm of its determinant. Throws where it is none. */
export const inverted = (
	covariance: Matrix
): { readonly precision: Matrix; readonly logDeterminant: number } => {
	const lower = lowerTriangle(covariance);
	const back = inverseTriangle(lower);
	const columns = back.map((_, j) => back.map((row) => row[j] ?? 0));
	return {
		precision: columns.map((a) => columns.map((b) => dot(a, b))),
		logDeterminant: 2 * lower.reduce((sum, row, i) => sum + Math.log(row[i] ?? NaN), 0)
	};
};
