import type { IncomingMessage, RequestListener, Server, ServerResponse } from 'node:http';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Speech } from '#shared/speech/speech.ts';
import { writeLog } from '#server/log.ts';
import type { Settings } from '#server/settings.ts';
import { compressing } from './compressing.ts';
import { sendToLanguage } from './page-language.ts';
import { policiesOf } from './page-policies.ts';

/** Tells the built app how it was asked; overwritten on every request, so a visitor cannot set it. */
const OWN_PROTOCOL_HEADER = 'x-square-across-protocol';
/** In which the app tells which route has answered: src/hooks.server.ts. Taken off what a visitor sends. */
const ROUTE_HEADER = 'x-square-across-route';

/** Sent with every answer, whatever it is. */
const ALWAYS = {
	'x-content-type-options': 'nosniff',
	// An address may hold a link that makes a teacher: no other site is told it.
	'referrer-policy': 'same-origin'
} as const;

const pathOf = ({ url = '/' }: IncomingMessage): string => {
	const [asked = '/'] = url.split('?');
	try {
		return decodeURIComponent(asked);
	} catch {
		return asked;
	}
};

/** Writes what came of a request, once it is answered. What is no route and was answered is a file of the site: its path is nobody's own. */
const logged = (request: IncomingMessage, response: ServerResponse, log: Settings['log']): void => {
	const start = performance.now();
	response.once('close', () => {
		const { statusCode: status } = response;
		const route = request.headers[ROUTE_HEADER];
		writeLog(log, {
			event: 'request',
			method: request.method ?? '',
			route: typeof route === 'string' ? route : status === 200 || status === 304 ? pathOf(request) : 'none',
			status,
			milliseconds: Math.round(performance.now() - start)
		});
	});
};

/** Refuses at once what says beforehand that it is too long. What does not say is counted by the app while it comes. */
const isTooLong = (
	request: IncomingMessage,
	response: ServerResponse,
	{ most }: Settings,
	{ words }: Speech
): boolean => {
	const length = Number(request.headers['content-length'] ?? 0);
	if (!(length > most)) return false;
	response
		.writeHead(413, { 'content-type': 'text/plain; charset=utf-8', connection: 'close' })
		.end(`${words.server.tooLong({ most, length })}\n`);
	return true;
};

/**
 * The answer of an app that is built in a folder. What stands at an address changes with the next build, so a browser
 * asks each time whether it did; files that are named by their content are told by the app to be kept.
 */
export const answersOf = async (
	folder: string,
	settings: Settings,
	speech: Speech
): Promise<RequestListener> => {
	// The app cannot see whether it was asked over http or https; behind a proxy ORIGIN says so, here we do.
	if (!process.env['ORIGIN']) process.env['PROTOCOL_HEADER'] ??= OWN_PROTOCOL_HEADER;
	const policyOf = policiesOf(folder, settings.frames);
	const file = pathToFileURL(path.join(folder, 'handler.js')).href;
	const { handler } = (await import(/* @vite-ignore */ file)) as { handler: RequestListener };
	const answer = await compressing(handler);
	return (request, response) => {
		Reflect.deleteProperty(request.headers, ROUTE_HEADER);
		logged(request, response, settings.log);
		for (const [name, value] of Object.entries(ALWAYS)) response.setHeader(name, value);
		response.setHeader('content-security-policy', policyOf(pathOf(request)));
		// A file that cannot be read, as where too many are open, ends its own request and no other.
		response.on('pipe', (source) => {
			source.on('error', () => {
				response.destroy();
			});
		});
		if (isTooLong(request, response, settings, speech)) return;
		if (sendToLanguage(request, response)) return;
		response.setHeader('cache-control', 'no-cache');
		request.headers[OWN_PROTOCOL_HEADER] = 'http';
		answer(request, response);
	};
};

/** What a connection is told that does not speak HTTP, or too slowly, or with too long a head: no request, so the app never sees it. */
const WRONG: Readonly<Record<string, string>> = {
	HPE_HEADER_OVERFLOW: '431 Request Header Fields Too Large',
	ERR_HTTP_REQUEST_TIMEOUT: '408 Request Timeout'
};

/** Answers what is no request as every other answer is sent. */
export const answerWrongRequests = (server: Server): void => {
	server.on('clientError', (problem: Error & { readonly code?: string }, socket) => {
		if (problem.code === 'ECONNRESET' || !socket.writable) return void socket.destroy();
		const head = {
			...ALWAYS,
			'content-security-policy': "default-src 'none'; frame-ancestors 'none'",
			'content-length': '0',
			connection: 'close'
		};
		const lines = Object.entries(head).map(([name, value]) => `${name}: ${value}`);
		socket.end([`HTTP/1.1 ${WRONG[problem.code ?? ''] ?? '400 Bad Request'}`, ...lines, '', ''].join('\r\n'));
	});
};
