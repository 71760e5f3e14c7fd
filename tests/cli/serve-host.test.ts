import { once } from 'node:events';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { describe, expect, it } from 'vitest';
import { listenSomewhere } from '../../src/cli/serve.ts';
import { commandHere } from './run-here.ts';
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

it('a port that another program has is told of before anything is built or opened', async () => {
	const other = createServer().listen(0, '127.0.0.1');
	await once(other, 'listening');
	const { port } = other.address() as AddressInfo;
	const { code, out, err } = await commandHere('serve', '--host', '127.0.0.1', '--port', String(port));
	other.close();
	expect({ code, out }).toEqual({ code: 2, out: '' });
	expect(err).toContain(String(port));
});

it.each(['serve', 'build'])('%s says with --help what it is asked for', async (command) => {
	const { code, out, err } = await commandHere(command, '--help');
	expect({ code, err }).toEqual({ code: 0, err: '' });
	expect(out).toContain(`square-across ${command} `);
});
