/** Resolves once the frame that comes next has been painted. */
export const painted = (): Promise<void> =>
	new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve)));
