import type { Server } from 'node:http';
import type { Socket } from 'node:net';

/** More than any class has: some thirty browsers with six connections each, several times over. */
const MOST = 1_000;
/** Files that the program itself has open, or opens at once: most by far when a page is made for the first time, which loads all its parts. */
const OWN_FILES = 150;
/** A request needs two: its connection and the file that is sent. */
const FILES_EACH = 2;
/** However few files the system allows. */
const FEWEST = 8;
/** Connections beyond the bound, all of them busy, before newcomers are turned away. */
const CROWD = 16;

/** Nobody waits so long for the first lines of a request, for all of it, or for a sign of life; in milliseconds. */
const HEADERS_WITHIN = 10_000;
const REQUEST_WITHIN = 30_000;
const SILENT_FOR = 60_000;

/** How many files the system lets this program have open; undefined where it does not say. */
const openFiles = (): number | undefined => {
	// Names of networks are looked up otherwise, which takes seconds where there is no network; older programs do so.
	Object.assign(process.report, { excludeNetwork: true });
	const { userLimits } = process.report.getReport() as {
		readonly userLimits?: { readonly open_files?: { readonly soft: unknown } };
	};
	const soft = Number(userLimits?.open_files?.soft);
	return Number.isFinite(soft) ? soft : undefined;
};

/** How many connections a server may have so that there is still a file for each. */
const mostConnections = (): number =>
	Math.max(FEWEST, Math.min(MOST, Math.floor(((openFiles() ?? Infinity) - OWN_FILES) / FILES_EACH)));

/**
 * Bounds the connections of a server by what the system can bear. Where there are too many, the one that has waited
 * longest without a request makes room, so that those who only hold connections shut nobody out.
 */
export const boundConnections = (server: Server): void => {
	const most = mostConnections();
	server.maxConnections = most + CROWD;
	server.headersTimeout = HEADERS_WITHIN;
	server.requestTimeout = REQUEST_WITHIN;
	server.timeout = SILENT_FOR;

	const open = new Set<Socket>();
	/** Those without a request, the longest waiting first. */
	const waiting = new Set<Socket>();
	server.on('connection', (socket) => {
		open.add(socket);
		waiting.add(socket);
		socket.once('close', () => {
			open.delete(socket);
			waiting.delete(socket);
		});
		const [longest] = waiting;
		if (open.size > most && longest !== socket) longest?.destroy();
	});
	server.on('request', ({ socket }, response) => {
		waiting.delete(socket);
		response.once('close', () => {
			if (open.has(socket)) waiting.add(socket);
		});
	});
};
