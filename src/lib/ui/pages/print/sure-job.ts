import type { Body } from '#shared/body.ts';
import type { MeasurementKey } from '#shared/measurements.ts';
import type { Mm } from '#shared/units.ts';
import type { Draft } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import type { DraftSureness } from '#drafting/sureness/how-sure.ts';

/** A draft whose sureness is to be worked out, and how far each measurement may stray. */
export interface SureJob {
	readonly method: Method;
	readonly body: Body;
	readonly draft: Draft;
	readonly errors: Readonly<Partial<Record<MeasurementKey, Mm>>>;
}

/**
 * Has the sureness of a draft worked out by a worker, so that the page stays at hand meanwhile; `tell` hears what came of it, undefined
 * where it failed. Gives the way to put an end to it.
 */
export const workOutSureness = (
	job: SureJob,
	tell: (sure: DraftSureness | undefined) => void
): (() => void) => {
	const worker = new Worker(new URL('./sure-worker.ts', import.meta.url), { type: 'module' });
	const end = (): void => {
		worker.terminate();
	};
	worker.addEventListener('message', ({ data }: MessageEvent<DraftSureness>) => {
		end();
		tell(data);
	});
	worker.addEventListener('error', () => {
		end();
		tell(undefined);
	});
	// As plain data: what Svelte watches cannot be sent, and its own way to make it plain would go into every page.
	worker.postMessage(JSON.parse(JSON.stringify(job)));
	return end;
};
