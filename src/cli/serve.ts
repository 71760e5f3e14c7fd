import { once } from 'node:events';
import { createServer, type Server } from 'node:http';
import { BadInput, cut, slipWords } from '#shared/bad-input.ts';
import type { Speech } from '#shared/speech/speech.ts';
import { writeLog, type LogLine } from '#server/log.ts';
import { HIGHEST_PORT, readSettings, type Settings } from '#server/settings.ts';
import { answersOf, answerWrongRequests } from './answering.ts';
import { BuildFailed, ensureBuilt, tellFailure } from './app-build.ts';
import { keepWhileServing } from './build-folders.ts';
import { boundConnections } from './connections.ts';
import { BAD_USE } from './exit-code.ts';
import { parsedWords } from './options.ts';
import { complain } from './output.ts';
import { prepareClasses } from './store-place.ts';

/** Free on most machines, and easy to remember. */
const USUAL_PORT = 4180;
/** How many ports after the usual one are tried before giving up. */
const PORTS_TO_TRY = 20;

/** How long a page that is still being sent may take once the server was told to stop, in milliseconds. */
const LAST_WORDS = 3_000;

const OPTIONS = { port: { type: 'string' }, host: { type: 'string' } } as const;

interface Address {
	readonly host: string;
	/** Undefined when none was asked for: then the next free port does. */
	readonly port: number | undefined;
}

/** A command line that cannot be followed, said in one line. */
class BadUse extends Error {}

/** Reads `--port N --host H`, which stand before the settings. @throws BadUse naming the option and the value seen, BadInput for a wrong word */
const readAddress = (words: readonly string[], { command }: Speech['words'], settings: Settings): Address => {
	const { values, positionals } = parsedWords('serve', OPTIONS, words);
	const [more] = positionals;
	if (more !== undefined) throw new BadUse(command.takesNothing({ command: 'serve', seen: cut(more) }));
	const host = values.host ?? settings.host;
	if (values.port === undefined) return { host, port: settings.port };
	const port = Number(values.port);
	if (!/^\d+$/.test(values.port) || port > HIGHEST_PORT)
		throw new BadUse(command.wrongPort({ most: HIGHEST_PORT, seen: cut(values.port) }));
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

/** What the system says of a name that is none, that nobody knows just now, or that is not of this machine. */
const NO_HOST = /^(ENOTFOUND|EADDRNOTAVAIL|EINVAL|EAI_\w+)$/;

/** Listens on the port asked for, or else on the first free one from the usual port on. Throws BadUse where it can on none. */
export const listenSomewhere = async (
	server: Server,
	{ host, port }: Address,
	{ command }: Speech['words']
): Promise<void> => {
	const ports =
		port === undefined ? Array.from({ length: PORTS_TO_TRY }, (_, step) => USUAL_PORT + step) : [port];
	for (const candidate of ports) {
		try {
			await listen(server, host, candidate);
			return;
		} catch (problem) {
			const code = errorCode(problem);
			if (code === 'EACCES') throw new BadUse(command.closedPort({ port: candidate }));
			if (code !== undefined && NO_HOST.test(code)) throw new BadUse(command.wrongHost({ seen: cut(host) }));
			if (code !== 'EADDRINUSE') throw problem;
		}
	}
	throw new BadUse(command.takenPort({ first: ports[0] ?? 0, last: ports.at(-1) ?? 0 }));
};

/** Whether there is where to listen, before anything is built for it. Throws BadUse where there is not. */
const tryListening = async (address: Address, words: Speech['words']): Promise<void> => {
	const server = createServer();
	await listenSomewhere(server, address, words);
	const closed = once(server, 'close');
	server.close();
	// Somebody may have asked already; nobody would answer.
	server.closeAllConnections();
	await closed;
};

/** Node's types know only its own events; an app may name others. */
const announcer = process as unknown as { emit(event: string, signal: string): boolean };

/** Resolves when the process is told to stop and the last request has been answered. */
const untilStopped = (server: Server, say: (event: LogLine) => void): Promise<void> =>
	new Promise((resolve) => {
		const stop = (signal: string): void => {
			say({ event: 'stopping' });
			// adapter-node tells its apps only once the server has closed, which waits for streams that they alone can end.
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

/** Where a server is, as a person types it. */
const addressOf = (
	server: Server,
	host: string
): { readonly address: string; readonly everywhere: boolean } => {
	const address = server.address();
	const port = typeof address === 'object' && address !== null ? address.port : '';
	const everywhere = host === '0.0.0.0' || host === '::';
	const name = everywhere ? 'localhost' : host.includes(':') ? `[${host}]` : host;
	return { address: `http://${name}:${String(port)}`, everywhere };
};

/**
 * `square-across serve [--port N] [--host H]`: builds the app when it must, serves it until SIGINT or
 * SIGTERM, and gives the exit code: 0 stopped, 1 the build failed, 2 a wrong option or a port in use.
 */
export const serveCommand = async (words: readonly string[], speech: Speech): Promise<number> => {
	try {
		const settings = readSettings(process.env);
		const say = (line: LogLine): void => writeLog(settings.log, line);
		const address = readAddress(words, speech.words, settings);
		await tryListening(address, speech.words);
		const folder = await ensureBuilt(console.log, speech);
		keepWhileServing(folder);
		const first = await prepareClasses(speech);
		const server = createServer(await answersOf(folder, settings, speech));
		boundConnections(server);
		answerWrongRequests(server);
		await listenSomewhere(server, address, speech.words);
		const stopped = untilStopped(server, say);
		say({ event: 'start' });
		console.log(speech.words.command.serving(addressOf(server, address.host)));
		if (first !== undefined)
			console.log(
				speech.words.server.firstTeacher({ address: addressOf(server, address.host).address + first })
			);
		await stopped;
		say({ event: 'stopped' });
		return 0;
	} catch (problem) {
		if (problem instanceof BuildFailed) return tellFailure(problem, speech);
		if (!(problem instanceof BadUse || problem instanceof BadInput)) throw problem;
		complain(problem instanceof BadUse ? problem.message : slipWords(problem, speech));
		return BAD_USE;
	}
};
