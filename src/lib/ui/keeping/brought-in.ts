/** How browsers, and what loads the styles of a script, say that it did not come: nothing else tells it from a script that has come and fails. */
const FAILED_LOAD = /dynamically imported module|Importing a module script failed|Unable to preload/i;

/** Whether a part of the page did not come, as where the connection has gone. */
export const didNotCome = (problem: unknown): boolean =>
	problem instanceof Error && FAILED_LOAD.test(problem.message);

/** How long is waited before a part is asked for again, in milliseconds: twice as long each time, up to the most. */
const FIRST_WAIT = 500;
const LONGEST_WAIT = 8_000;

/**
 * Brings in a part of the page that is loaded when it is first wanted. One that does not come is asked for again until it does:
 * the page itself says meanwhile that the server does not answer, and that the rest comes when it does. Throws what the part
 * throws once it has come.
 */
export const broughtIn = async <T>(load: () => Promise<T>): Promise<T> => {
	for (let wait = FIRST_WAIT; ; wait = Math.min(2 * wait, LONGEST_WAIT)) {
		try {
			return await load();
		} catch (problem) {
			if (!didNotCome(problem)) throw problem;
		}
		const pause = wait;
		await new Promise((resolve) => {
			setTimeout(resolve, pause);
			addEventListener('online', resolve, { once: true });
		});
	}
};
