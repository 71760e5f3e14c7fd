import { setImmediate } from 'node:timers/promises';

/** How long one piece of work may hold up everybody else, in milliseconds. */
const SLICE = 8;

let last: Promise<unknown> = Promise.resolve();

/** Does work when all that was begun before it is done, so that what is long is never done twice at once. */
export const inTurn = async <T>(work: () => Promise<T>): Promise<T> => {
	const before = last;
	const own = before.then(work, work);
	last = own.catch(() => undefined);
	return own;
};

/** Does work that can be left at each of its steps in slices, between which others are answered. */
export const inSlices = async <T>(work: Generator<unknown, T, undefined>): Promise<T> => {
	for (;;) {
		const until = performance.now() + SLICE;
		do {
			const step = work.next();
			if (step.done) return step.value;
		} while (performance.now() < until);
		await setImmediate();
	}
};
