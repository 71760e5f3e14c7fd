import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { Live } from '#ui/pages/class/teaching/live.svelte.ts';

/** A stream of events that tells what the test has it tell. */
class Stream extends EventTarget {
	static last: Stream;
	static begun = 0;
	readyState = 2;
	constructor() {
		super();
		Stream.last = this;
		Stream.begun += 1;
	}
	close(): void {
		this.readyState = 2;
	}
	tell(found: unknown): void {
		this.dispatchEvent(new MessageEvent('now', { data: JSON.stringify(found) }));
	}
}

describe('what the server tells of something that changes', () => {
	/** What is asked for on plain HTTP is answered when the test says so. */
	let answer: (found: unknown) => void;
	const asked = vi.fn();
	beforeEach(() => {
		vi.useFakeTimers();
		asked.mockReset();
		Stream.begun = 0;
		vi.stubGlobal('EventSource', Object.assign(Stream, { CLOSED: 2 }));
		vi.stubGlobal('fetch', () => {
			asked();
			return new Promise((done) => (answer = (found) => done(Response.json(found))));
		});
	});
	afterEach(() => {
		vi.useRealTimers();
		vi.unstubAllGlobals();
	});

	it('is not taken from an answer that is older than what was told meanwhile', async () => {
		const live = new Live<{ readonly marks: number }>('/class/1/live');
		const end = live.start();
		await vi.advanceTimersByTimeAsync(6_100);
		expect(asked).toHaveBeenCalledTimes(1);
		await vi.advanceTimersByTimeAsync(10);
		Stream.last.tell({ marks: 2 });
		answer({ marks: 1 });
		await vi.advanceTimersByTimeAsync(10);
		expect(live.found).toEqual({ marks: 2 });
		expect(live.link).toBe('live');
		end();
	});

	it('is asked for no more once nobody listens, though an answer was on its way', async () => {
		const live = new Live('/class/1/live');
		const end = live.start();
		await vi.advanceTimersByTimeAsync(6_100);
		end();
		answer({});
		await vi.advanceTimersByTimeAsync(20_000);
		expect(asked).toHaveBeenCalledTimes(1);
		expect(Stream.begun).toBe(1);
	});
});
