import type { Job, Said } from './job.ts';

/**
 * Has a job done by a worker of its own, which ends with it; `tell` hears how far it is and then the answer. Gives the
 * way to put an end to it. Nothing leaves this browser.
 */
export const begin = (job: Job, tell: (said: Said) => void): (() => void) => {
	const worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
	const end = (): void => {
		worker.terminate();
	};
	worker.addEventListener('message', ({ data }: MessageEvent<Said>) => {
		if (data.kind !== 'progress') end();
		tell(data);
	});
	worker.addEventListener('error', ({ message }) => {
		end();
		// A worker that could not be fetched says nothing of why.
		tell(message ? { kind: 'our-fault', told: message } : { kind: 'not-loaded' });
	});
	worker.postMessage(job);
	return end;
};
