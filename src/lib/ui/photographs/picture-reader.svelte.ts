import type { PicturePoint } from '#photograph/picture.ts';
import type { Looked } from '#photograph/reading.ts';
import type { Asked, Refused, Said } from './messages.ts';

/** How the reading of a picture stands. */
export type Stand =
	| { readonly kind: 'idle' }
	| { readonly kind: 'working'; readonly done: number; readonly of: number }
	| { readonly kind: 'looked'; readonly looked: Looked; readonly bitmap: ImageBitmap; readonly took: number }
	| { readonly kind: 'refused'; readonly why: Refused }
	| { readonly kind: 'stopped' }
	| { readonly kind: 'not-loaded' }
	| { readonly kind: 'our-fault'; readonly told: string };

/** Reads pictures, one at a time, in a worker that keeps the last: nothing of it leaves this browser. */
export class PictureReader {
	stand: Stand = $state.raw({ kind: 'idle' });
	#worker: Worker | undefined;
	#asked = 0;
	readonly #crossings = new Map<number, (found: PicturePoint | undefined) => void>();

	/** Reads a file. */
	read(file: Blob): void {
		this.#begin({ kind: 'file', file });
	}

	/** Reads a picture of the camera. */
	readPicture(bitmap: ImageBitmap): void {
		this.#begin({ kind: 'picture', bitmap }, bitmap);
	}

	/** Where two lines cross near a place, if they do. */
	crossing(at: PicturePoint, near: number): Promise<PicturePoint | undefined> {
		const worker = this.#worker;
		if (!worker) return Promise.resolve(undefined);
		const id = ++this.#asked;
		return new Promise((resolve) => {
			this.#crossings.set(id, resolve);
			worker.postMessage({ kind: 'crossing', id, at, near } satisfies Asked);
		});
	}

	/** Stops what is under way. */
	cancel(): void {
		this.end();
		if (this.stand.kind === 'working') this.stand = { kind: 'stopped' };
	}

	/** Lets go of the worker and of the picture in it. */
	end(): void {
		this.#worker?.terminate();
		this.#worker = undefined;
		for (const resolve of this.#crossings.values()) resolve(undefined);
		this.#crossings.clear();
	}

	#begin(asked: Asked, ...moved: Transferable[]): void {
		this.end();
		const worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
		this.#worker = worker;
		this.stand = { kind: 'working', done: 0, of: 0 };
		worker.addEventListener('message', ({ data }: MessageEvent<Said>) => {
			if (worker === this.#worker) this.#hear(data);
		});
		worker.addEventListener('error', ({ message }) => {
			if (worker !== this.#worker) return;
			this.end();
			// A worker that could not be fetched says nothing of why.
			this.stand = message ? { kind: 'our-fault', told: message } : { kind: 'not-loaded' };
		});
		worker.postMessage(asked, moved);
	}

	#hear(said: Said): void {
		if (said.kind === 'crossing') {
			this.#crossings.get(said.id)?.(said.found);
			this.#crossings.delete(said.id);
			return;
		}
		this.stand = said.kind === 'progress' ? { ...said, kind: 'working' } : said;
	}
}
