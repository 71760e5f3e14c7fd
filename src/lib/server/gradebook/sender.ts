import type { World } from '../world.ts';
import { lookAtChanged, sendDue } from './outbox.ts';
import { GradebookService } from './service.ts';

/** How often it is looked whether something is to be sent, in milliseconds. */
const EVERY = 5_000;

/**
 * Sends marks to learning platforms as long as the server runs; gives what ends it. What is under way is then given up, and sent
 * again by whoever comes next: the platform takes the later one.
 *
 * @param told is told what went wrong here
 */
export const startSending = (world: World, told: (problem: unknown) => void): (() => void) => {
	const stopping = new AbortController();
	const service = new GradebookService(world, stopping.signal);
	let timer: NodeJS.Timeout | undefined;
	const round = async (): Promise<void> => {
		try {
			await lookAtChanged(world);
			await sendDue(world, service, stopping.signal);
		} catch (problem) {
			told(problem);
		}
		if (!stopping.signal.aborted) timer = setTimeout(() => void round(), EVERY).unref();
	};
	void round();
	return () => {
		stopping.abort();
		clearTimeout(timer);
	};
};
