/** What a page is told while it is open: streams of events, which end before the server does. */

/** A sign of life for whoever stands between, in milliseconds: below the minute after which a silent connection is closed. */
const SIGN_OF_LIFE = 20_000;
/** After how long a browser asks again whose stream has ended, in milliseconds. */
const AGAIN_AFTER = 3_000;

/** Sends one event of a stream: its name, and what goes with it as JSON. */
export type Send = (event: string, data: unknown) => void;

const open = new Set<() => void>();
let closing = false;

/**
 * Answers with a stream of events.
 *
 * @param begin starts it; gives what ends it, which is done once, when the browser has left or the server stops
 */
export const eventStream = (begin: (send: Send) => () => void): Response => {
	let end = (): void => undefined;
	const body = new ReadableStream<Uint8Array>({
		start: (controller) => {
			const encoder = new TextEncoder();
			const write = (text: string): void => controller.enqueue(encoder.encode(text));
			write(`retry: ${AGAIN_AFTER}\n\n`);
			if (closing) {
				controller.close();
				return;
			}
			const life = setInterval(() => write(':\n\n'), SIGN_OF_LIFE);
			const finish = begin((event, data) => {
				if (open.has(close)) write(`event: ${event}\ndata: ${JSON.stringify(data)}\n\n`);
			});
			end = () => {
				if (!open.delete(close)) return;
				clearInterval(life);
				finish();
			};
			const close = (): void => {
				end();
				controller.close();
			};
			open.add(close);
		},
		cancel: () => end()
	});
	return new Response(body, {
		headers: { 'content-type': 'text/event-stream', 'cache-control': 'no-store' }
	});
};

/** Whether the server was told to stop: whoever shares the work out is to send nobody here any more. */
export const isClosing = (): boolean => closing;

/** Ends all streams, and those that are asked for later at once. A server waits for its answers to end, and these never would. */
export const closeStreams = (): void => {
	closing = true;
	for (const close of [...open]) close();
};
