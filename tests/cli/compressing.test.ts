import { once } from 'node:events';
import { createServer, get, type IncomingMessage, type RequestListener, type Server } from 'node:http';
import { buffer } from 'node:stream/consumers';
import { brotliDecompressSync, gunzipSync, gzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { compressing } from '../../src/cli/compressing.ts';

const PAGE = `<!doctype html><p>${'A seam and its allowance. '.repeat(400)}</p>`;
const PACKED = gzipSync(PAGE);

/** Answers by path, as the app does: a page whole or in parts, data, a picture, a file that was packed before, a stream of events. */
const answer: RequestListener = (request, response) => {
	const html = { 'content-type': 'text/html; charset=utf-8' };
	if (request.url === '/page') response.writeHead(200, html).end(PAGE);
	if (request.url === '/parts') {
		response.writeHead(200, html);
		response.write(PAGE.slice(0, 5_000));
		setImmediate(() => response.end(PAGE.slice(5_000)));
	}
	if (request.url === '/data')
		response.writeHead(200, { 'content-type': 'application/json' }).end(JSON.stringify({ PAGE }));
	if (request.url === '/picture') response.writeHead(200, { 'content-type': 'image/png' }).end(PAGE);
	if (request.url === '/short') response.writeHead(200, { ...html, 'content-length': 10 }).end('<p>Yes</p>');
	if (request.url === '/packed') response.writeHead(200, { ...html, 'content-encoding': 'gzip' }).end(PACKED);
	if (request.url === '/events') {
		response.writeHead(200, { 'content-type': 'text/event-stream', 'cache-control': 'no-store' });
		response.write('event: first\ndata: 1\n\n');
	}
};

describe('what is made on request', () => {
	let server: Server;
	beforeAll(async () => {
		server = createServer(await compressing(answer)).listen(0, '127.0.0.1');
		await once(server, 'listening');
	});
	afterAll(() => {
		server.closeAllConnections();
		server.close();
	});

	const ask = (path: string, takes?: string): Promise<IncomingMessage> =>
		new Promise((resolve, reject) => {
			const address = server.address();
			const port = typeof address === 'object' && address ? address.port : 0;
			const headers = takes === undefined ? {} : { 'accept-encoding': takes };
			get({ host: '127.0.0.1', port, path, headers }, resolve).on('error', reject);
		});

	it.each([
		['br', brotliDecompressSync],
		['gzip', gunzipSync]
	] as const)('is sent compressed by %s, whole and in parts, pages and data', async (how, unpacked) => {
		for (const path of ['/page', '/parts', '/data']) {
			const found = await ask(path, how);
			expect(found.headers['content-encoding'], path).toBe(how);
			expect(found.headers.vary, path).toMatch(/accept-encoding/i);
			const bytes = await buffer(found);
			expect(bytes.length, path).toBeLessThan(PAGE.length / 10);
			expect(unpacked(bytes).toString('utf8'), path).toBe(path === '/data' ? JSON.stringify({ PAGE }) : PAGE);
		}
	});

	it('is sent by brotli to whoever takes both, and as it is to whoever takes neither', async () => {
		expect((await ask('/page', 'gzip, deflate, br')).headers['content-encoding']).toBe('br');
		for (const takes of [undefined, 'identity', 'other']) {
			const found = await ask('/page', takes);
			expect(found.headers['content-encoding']).toBeUndefined();
			expect((await buffer(found)).toString('utf8')).toBe(PAGE);
		}
	});

	it.each(['/picture', '/short'])('is not compressed where that is no gain: %s', async (path) => {
		expect((await ask(path, 'gzip, br')).headers['content-encoding']).toBeUndefined();
	});

	it('is not compressed again that was so before', async () => {
		const found = await ask('/packed', 'gzip, br');
		expect(found.headers['content-encoding']).toBe('gzip');
		expect(await buffer(found)).toEqual(PACKED);
	});

	it('arrives at once where it is an event of a stream that goes on', async () => {
		const found = await ask('/events', 'gzip, br');
		expect(found.headers['content-encoding']).toBeUndefined();
		const [first] = (await once(found, 'data')) as [Buffer];
		expect(first.toString('utf8')).toBe('event: first\ndata: 1\n\n');
		found.destroy();
	});
});
