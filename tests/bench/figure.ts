/** One measured figure beside its goal. */
export interface Figure {
	readonly name: string;
	/** The figure as it is printed, with its unit. */
	readonly figure: string;
	readonly goal: string;
	readonly met: boolean;
}

/** The value in the middle. */
export const median = (values: readonly number[]): number => quantile(values, 0.5);

/** The value below which this share of the others lies. */
export const quantile = (values: readonly number[], share: number): number => {
	const sorted = [...values].sort((a, b) => a - b);
	return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? NaN;
};
