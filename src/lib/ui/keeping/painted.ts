/** Resolves once the frame that comes next has been painted, and the one after it has begun. */
export const painted = (): Promise<void> =>
	new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(resolve))));
