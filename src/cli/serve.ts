import { createServer, type RequestListener, type Server } from 'node:http';
import path from 'node:path';
import { parseArgs } from 'node:util';
import { pathToFileURL } from 'node:url';
import { BUILD_FOLDER, BuildFailed, ensureBuilt } from './app-build.ts';
import { BAD_USE } from './exit-code.ts';

/** Free on most machines, and easy to remember. */
const USUAL_PORT = 4180;
/** How many ports after the usual one are tried before giving up. */
const PORTS_TO_TRY = 20;
const HIGHEST_PORT = 65_535;

/** How long a page that is still being sent may take once the server was told to stop, in milliseconds. */
const LAST_WORDS = 3_000;

/** Tells the built app how it was asked; overwritten on every request, so a visitor cannot set it. */
const OWN_PROTOCOL_HEADER = 'x-square-across-protocol';

interface Address {
	readonly host: string;
	/** Undefined when none was asked for: then the next free port does. */
	readonly port: number | undefined;
}

/** A command line that cannot be followed, said in one line. */
class BadUse extends Error {}

const parseServeOptions = (words: readonly string[]) => {
	try {
		return parseArgs({
			args: [...words],
			options: { port: { type: 'string' }, host: { type: 'string' } }
		});
	} catch (problem) {
		throw new BadUse(problem instanceof Error ? problem.message : String(problem));
	}
};

/** Reads `--port N --host H`. @throws BadUse naming the option and the value seen */
const readAddress = (words: readonly string[]): Address => {
	const { values } = parseServeOptions(words);
	const host = values.host ?? 'localhost';
	if (values.port === undefined) return { host, port: undefined };
	const port = Number(values.port);
	if (!/^\d+$/.test(values.port) || port > HIGHEST_PORT) {
		throw new BadUse(
			`--port must be a whole number from 0 to ${String(HIGHEST_PORT)}; saw "${values.port}".`
		);
	}
	return { host, port };
};

const errorCode = (problem: unknown): string | undefined =>
	problem instanceof Error && 'code' in problem ? String(problem.code) : undefined;

/** Listens, or fails with Node's own error. */
const listen = (server: Server, host: string, port: number): Promise<void> =>
	new Promise((resolve, reject) => {
		server.once('error', reject);
		server.listen(port, host, () => {
			server.off('error', reject);
			resolve();
		});
	});

/** Listens on the port asked for, or else on the first free one from the usual port on. */
const listenSomewhere = async (server: Server, { host, port }: Address): Promise<void> => {
	const ports =
		port === undefined ? Array.from({ length: PORTS_TO_TRY }, (_, step) => USUAL_PORT + step) : [port];
	for (const candidate of ports) {
		try {
			await listen(server, host, candidate);
			return;
		} catch (problem) {
			const code = errorCode(problem);
			if (code === 'EACCES') throw new BadUse(`This user may not open port ${String(candidate)}.`);
			if (code === 'ENOTFOUND' || code === 'EADDRNOTAVAIL') {
				throw new BadUse(`--host must be an address of this machine; saw "${host}".`);
			}
			if (code !== 'EADDRINUSE') throw problem;
		}
	}
	const seen =
		ports.length > 1 ? `Ports ${String(ports[0])} to ${String(ports.at(-1))} are` : `Port ${String(port)} is`;
	throw new BadUse(`${seen} taken. Choose another with --port.`);
};

/** The built app's answer to a request. */
const loadApp = async (): Promise<RequestListener> => {
	// The app cannot see whether it was asked over http or https; behind a proxy ORIGIN says so, here we do.
	if (process.env['ORIGIN'] === undefined) process.env['PROTOCOL_HEADER'] ??= OWN_PROTOCOL_HEADER;
	const file = pathToFileURL(path.join(BUILD_FOLDER, 'handler.js')).href;
	const { handler } = (await import(file)) as { handler: RequestListener };
	return (request, response) => {
		request.headers[OWN_PROTOCOL_HEADER] = 'http';
		handler(request, response);
	};
};

/** Node's types know only its own events; an app may name others. */
const announcer = process as unknown as { emit(event: string, signal: string): boolean };

/** Resolves when the process is told to stop and the last request has been answered. */
const untilStopped = (server: Server): Promise<void> =>
	new Promise((resolve) => {
		const stop = (signal: string): void => {
			// What adapter-node promises its apps, so that they can close their own files.
			announcer.emit('sveltekit:shutdown', signal);
			server.close(() => {
				resolve();
			});
			server.closeIdleConnections();
			setTimeout(() => {
				server.closeAllConnections();
			}, LAST_WORDS).unref();
		};
		process.once('SIGINT', stop);
		process.once('SIGTERM', stop);
	});

const addressInWords = (server: Server, host: string): string => {
	const address = server.address();
	const port = typeof address === 'object' && address !== null ? address.port : '';
	const everywhere = host === '0.0.0.0' || host === '::';
	const name = everywhere ? 'localhost' : host.includes(':') ? `[${host}]` : host;
	const also = everywhere ? ', and at the other addresses of this machine' : '';
	return `Square Across is at http://${name}:${String(port)}${also} (Ctrl+C stops it)`;
};

/**
 * `square-across serve [--port N] [--host H]`: builds the app when it must, serves it until SIGINT or
 * SIGTERM, and gives the exit code: 0 stopped, 1 the build failed, 2 a wrong option or a port in use.
 */
export const serveCommand = async (words: readonly string[]): Promise<number> => {
	try {
		const address = readAddress(words);
		await ensureBuilt(console.log);
		const server = createServer(await loadApp());
		await listenSomewhere(server, address);
		const stopped = untilStopped(server);
		console.log(addressInWords(server, address.host));
		await stopped;
		return 0;
	} catch (problem) {
		if (!(problem instanceof BadUse || problem instanceof BuildFailed)) throw problem;
		process.stderr.write(`${problem.message}\n`);
		return problem instanceof BadUse ? BAD_USE : 1;
	}
};
