/** How long a first word may take before it is asked for on plain HTTP, and how often that is done, in milliseconds. */
const PATIENCE = 6_000;
const ASKS_EVERY = 5_000;

/** *live*: told as it happens; *asking*: asked for again and again; *lost*: no answer just now; *signedOut*: nobody is signed in any more. */
type Link = 'live' | 'asking' | 'lost' | 'signedOut';

/**
 * What the server tells of something that changes. It comes as a stream of events; where none comes through, or while it is broken, it
 * is asked for on plain HTTP.
 */
export class Live<T> {
	found: T | undefined = $state.raw();
	/** When that came, by this browser's clock. */
	at = $state(0);
	link: Link | undefined = $state();
	#source: EventSource | undefined;
	#timer: ReturnType<typeof setTimeout> | undefined;
	/** Whether nobody listens any more: an answer that comes then is let go. */
	#over = false;

	constructor(
		readonly address: string,
		first?: T
	) {
		this.found = first;
	}

	#take(found: T, link: Link): void {
		[this.found, this.link, this.at] = [found, link, Date.now()];
	}

	#askIn(wait: number): void {
		clearTimeout(this.#timer);
		this.#timer = setTimeout(() => void this.#ask(), wait);
	}

	async #ask(): Promise<void> {
		const { at } = this;
		try {
			const response = await fetch(this.address, {
				headers: { accept: 'application/json' },
				signal: AbortSignal.timeout(PATIENCE)
			});
			if (response.status === 401) {
				this.link = 'signedOut';
				this.#source?.close();
				return;
			}
			if (!response.ok) throw new Error(String(response.status));
			const found = (await response.json()) as T;
			// What was told meanwhile is newer.
			if (this.#over || this.at > at) return;
			this.#take(found, 'asking');
			// A browser gives a stream up for good that was refused once.
			if (this.#source?.readyState === EventSource.CLOSED) this.#listen();
		} catch {
			if (this.#over) return;
			this.link = 'lost';
		}
		this.#askIn(ASKS_EVERY);
	}

	#listen(): void {
		this.#source?.close();
		const source = new EventSource(this.address);
		this.#source = source;
		source.addEventListener('now', ({ data }: MessageEvent<string>) => {
			clearTimeout(this.#timer);
			this.#take(JSON.parse(data) as T, 'live');
		});
		const broken = (): void => {
			this.link = 'lost';
			this.#askIn(ASKS_EVERY / 5);
		};
		source.addEventListener('error', broken);
		source.addEventListener('trouble', broken);
	}

	/** Begins to listen; gives what ends it. */
	start(): () => void {
		this.#over = false;
		this.at = Date.now();
		this.#listen();
		this.#askIn(PATIENCE);
		return () => {
			this.#over = true;
			clearTimeout(this.#timer);
			this.#source?.close();
		};
	}
}
