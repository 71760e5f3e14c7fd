import { createServer } from 'node:http';
import { describe, expect, it } from 'vitest';
import { listenSomewhere } from '../../src/cli/serve.ts';
import { speechFor } from '../support/speech.ts';

describe('a host that a server cannot listen at', () => {
	// The first two are refused before anybody is asked for them; the last is an address that is nobody's machine (RFC 5737).
	it.each(['xn--', 'y'.repeat(20_000), '192.0.2.1'])('is named in one short line: %.20s', async (host) => {
		const server = createServer();
		const listening = listenSomewhere(server, { host, port: 0 }, speechFor('en').words);
		const told = await listening.then(
			() => 'it listens',
			(problem: unknown) => (problem instanceof Error ? problem.message : '')
		);
		server.close();
		expect(told).toContain(host.slice(0, 20));
		expect(told).not.toContain('getaddrinfo');
		expect(told).not.toContain('\n');
		expect(told.length).toBeLessThan(400);
	});
});
