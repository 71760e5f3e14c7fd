import { download } from '#ui/keeping/download.ts';
import { begin } from './begin.ts';
import type { Job, MadeFile, Said } from './job.ts';

/** How the making of files stands. */
export type Stand =
	| { readonly kind: 'idle' }
	| { readonly kind: 'working'; readonly done: number; readonly of: number }
	| { readonly kind: 'made'; readonly files: readonly MadeFile[]; readonly note: string }
	| { readonly kind: 'stopped' }
	| { readonly kind: 'refused'; readonly words: string }
	| { readonly kind: 'not-loaded' }
	| { readonly kind: 'our-fault'; readonly told: string };

/** What becomes of files before they are saved, and what is to be said of them. */
export type Finish = (
	files: readonly MadeFile[]
) => Promise<{ readonly files: readonly MadeFile[]; readonly note: string }>;

const asTheyAre: Finish = (files) => Promise.resolve({ files, note: '' });

/** Makes files one job at a time: says how far it is, can be stopped, and saves a single file at once. */
export class FileMaker {
	stand: Stand = $state.raw({ kind: 'idle' });
	#end: () => void = () => undefined;
	/** Counts the jobs, so that what comes late of a stopped one is not taken for the next one's. */
	#job = 0;

	/** Begins a job; one that is under way is stopped. */
	make(job: Job, finish: Finish = asTheyAre): void {
		this.#end();
		const mine = ++this.#job;
		this.stand = { kind: 'working', done: 0, of: 0 };
		this.#end = begin(job, (said) => {
			if (mine === this.#job) void this.#hear(said, mine, finish);
		});
	}

	/** Says why nothing is begun. */
	refuse(words: string): void {
		this.#end();
		this.#job++;
		this.stand = { kind: 'refused', words };
	}

	/** Stops what is under way. */
	cancel(): void {
		this.#end();
		this.#job++;
		if (this.stand.kind === 'working') this.stand = { kind: 'stopped' };
	}

	/** Lets go of what was said of the last job, once something else is asked for; one under way goes on. */
	forget(): void {
		if (this.stand.kind !== 'working') this.stand = { kind: 'idle' };
	}

	async #hear(said: Said, mine: number, finish: Finish): Promise<void> {
		if (said.kind === 'progress') {
			this.stand = { kind: 'working', done: said.done, of: said.of };
			return;
		}
		if (said.kind !== 'files') {
			if (said.kind !== 'pages') this.stand = said;
			return;
		}
		try {
			const { files, note } = await finish(said.files);
			if (mine !== this.#job) return;
			this.stand = { kind: 'made', files, note };
			const [only, ...others] = files;
			if (only && others.length === 0) download(only.name, only.content);
		} catch (error) {
			if (mine !== this.#job) return;
			this.stand = { kind: 'our-fault', told: error instanceof Error ? error.message : String(error) };
		}
	}
}
