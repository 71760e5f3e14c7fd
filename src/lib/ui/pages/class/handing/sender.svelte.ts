import type { Answered, Done } from '#shared/hand-in.ts';
import { MOST_AT_ONCE } from '#shared/hand-in-limits.ts';
import { Queue, random, type Waiting } from './queue.ts';

/** The last receipt of a learner's work: how many events the server has, and since when by its clock. */
export interface Receipt {
	readonly number: number;
	readonly at: number;
}

/** Where it is handed in, in whatever language. */
const ADDRESS = '/class/hand-in';
/** How long an answer may take, and how long is waited before the next try, in milliseconds: twice as long each time, up to the most. */
const PATIENCE = 20_000;
const FIRST_WAIT = 2_000;
const LONGEST_WAIT = 60_000;

/** *away*: no answer, it is sent again by itself; *signIn*: somebody has to sign in first. */
type Trouble = 'none' | 'away' | 'signIn';
/** What came of one sending. */
type Came = readonly Answered[] | 'away' | 'signIn' | 'unreadable';

const sent = async (learner: string, events: readonly Waiting[]): Promise<Came> => {
	const body = JSON.stringify({ learner, events: events.map(({ key, done }) => ({ key, done })) });
	try {
		const response = await fetch(ADDRESS, {
			method: 'POST',
			headers: { 'content-type': 'application/json' },
			body,
			signal: AbortSignal.timeout(PATIENCE)
		});
		if (response.status === 401 || response.status === 403) return 'signIn';
		const { answers } = (await response.json()) as { readonly answers?: readonly Answered[] };
		return answers ?? (response.status === 400 ? 'unreadable' : 'away');
	} catch {
		return 'away';
	}
};

/**
 * Hands in what a learner does: each event waits in the browser's own database until the server has given a receipt for it, and
 * nothing else takes it out. It is sent over plain HTTP when it is made, when the connection is back, when the page is looked at
 * again, and else now and then.
 */
export class Sender {
	/** How many events are kept here and have no receipt yet, of all pages of this browser. */
	kept = $state(0);
	/** How many were done on this page and are not kept yet: each for a moment, and gone if the page is closed within it. */
	#coming = $state(0);
	/** How many the server did not take. */
	aside = $state(0);
	trouble: Trouble = $state('none');
	/** Whether the browser keeps what waits. */
	keeps = $state(true);
	receipt: Receipt | undefined = $state.raw();

	readonly #queue: Queue;
	/** Made anew with each page, so that two pages never write under one key. */
	readonly #tab = random();
	#sequence = 0;
	#sending = false;
	#again = false;
	#wait = FIRST_WAIT;
	#timer: ReturnType<typeof setTimeout> | undefined;
	/** Events are put into the queue one after the other. */
	#putting: Promise<void> = Promise.resolve();

	constructor(
		readonly learner: string,
		receipt?: Receipt
	) {
		this.#queue = new Queue(learner);
		this.receipt = receipt;
	}

	/** How many events have no receipt yet. */
	get waiting(): number {
		return this.kept + this.#coming;
	}

	/** Takes something up that was done. */
	add(done: Done): void {
		this.#sequence += 1;
		const sequence = this.#sequence;
		this.#coming += 1;
		this.#putting = this.#putting.then(async () => {
			const device = await this.#queue.device();
			await this.#queue.put({ device, tab: this.#tab, sequence }, done);
			this.#coming -= 1;
			this.kept += 1;
			this.keeps = this.#queue.keeps;
			void this.flush();
		});
	}

	/** What waits of an attempt at an assignment, for who opens it again before it was sent. */
	async unsent(assignment: string, attempt: number): Promise<readonly Done[]> {
		await this.#putting;
		const all = await this.#queue.waiting();
		return all
			.map(({ done }) => done)
			.filter((done) => done.assignment === assignment && (done.attempt ?? 1) === attempt);
	}

	/** Sends all that waits, a request at a time. */
	async flush(): Promise<void> {
		this.#again = true;
		if (this.#sending) return;
		this.#sending = true;
		try {
			while (this.#again) {
				this.#again = false;
				await this.#sendAll();
			}
		} catch {
			// The browser's database failed: what waits is sent once more, and has the same receipts.
			this.#later('away');
		} finally {
			this.#sending = false;
		}
	}

	async #sendAll(atOnce = MOST_AT_ONCE): Promise<void> {
		clearTimeout(this.#timer);
		const all = await this.#queue.waiting();
		this.kept = all.length;
		const events = all.slice(0, atOnce);
		const [first] = events;
		if (!first) {
			this.#rest();
			return;
		}
		const came = await sent(this.learner, events);
		if (came === 'away' || came === 'signIn') {
			this.#later(came);
			return;
		}
		if (came === 'unreadable') {
			// One of them is in the way of all: each is then sent by itself.
			if (events.length > 1) return this.#sendAll(1);
			await this.#queue.setAside(first, came);
			this.aside += 1;
		} else await this.#take(events, came);
		this.#again = true;
	}

	/** Takes out what has a receipt, and puts by what never will. */
	async #take(events: readonly Waiting[], answers: readonly Answered[]): Promise<void> {
		const received: Waiting[] = [];
		for (const [index, event] of events.entries()) {
			const answer = answers[index];
			if (!answer) continue;
			if ('refused' in answer) {
				await this.#queue.setAside(event, answer.refused);
				this.aside += 1;
				continue;
			}
			received.push(event);
			if (answer.number > (this.receipt?.number ?? 0)) this.receipt = answer;
		}
		await this.#queue.remove(received);
	}

	#rest(): void {
		this.trouble = 'none';
		this.#wait = FIRST_WAIT;
	}

	#later(trouble: Trouble): void {
		this.trouble = trouble;
		// Not all browsers of a class at once.
		this.#timer = setTimeout(() => void this.flush(), this.#wait * (0.5 + Math.random()));
		this.#wait = Math.min(LONGEST_WAIT, this.#wait * 2);
	}

	/** Sends what was left from before, and again whenever it may go well. Gives what ends that. */
	start(): () => void {
		const now = (): void => {
			if (document.visibilityState === 'visible') void this.flush();
		};
		addEventListener('online', now);
		document.addEventListener('visibilitychange', now);
		void this.flush();
		return () => {
			clearTimeout(this.#timer);
			removeEventListener('online', now);
			document.removeEventListener('visibilitychange', now);
		};
	}
}
