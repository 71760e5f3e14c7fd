import { expect, it } from 'vitest';
import { closeStreams, eventStream, isClosing, type Send } from '#server/streams.ts';

/** A stream whose sending and ending is looked at from here. */
const begun = () => {
	const seen = { ends: 0, send: ((): void => undefined) as Send };
	const response = eventStream((send) => {
		seen.send = send;
		return () => {
			seen.ends += 1;
		};
	});
	return { seen, response };
};

it('a stream sends its events, and ends once when its reader leaves', async () => {
	const { seen, response } = begun();
	expect(response.headers.get('content-type')).toBe('text/event-stream');
	seen.send('place', { step: 'A' });
	const reader = response.body?.getReader();
	const text = async () => new TextDecoder().decode((await reader?.read())?.value);
	expect(await text()).toBe('retry: 3000\n\n');
	expect(await text()).toBe('event: place\ndata: {"step":"A"}\n\n');
	await reader?.cancel();
	expect(seen.ends).toBe(1);
	// What comes later goes nowhere, and does no harm.
	seen.send('place', {});
});

it('all streams end when the server is told to stop, and later ones at once', async () => {
	const { seen, response } = begun();
	const rest = response.text();
	expect(isClosing()).toBe(false);
	closeStreams();
	expect(await rest).toBe('retry: 3000\n\n');
	expect(seen.ends).toBe(1);
	expect(isClosing()).toBe(true);
	const later = begun();
	expect(await later.response.text()).toBe('retry: 3000\n\n');
	expect(later.seen.ends).toBe(0);
});
