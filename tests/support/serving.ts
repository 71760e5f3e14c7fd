import { spawn, type ChildProcess } from 'node:child_process';
import path from 'node:path';

/** A server of the app, as a process of its own. */
export interface Serving {
	readonly child: ChildProcess;
	/** Where it is: http://localhost:PORT. */
	readonly address: string;
	/** All that it has said so far. */
	said(): string;
	/** Stops it, and waits until it has ended. */
	stop(): Promise<void>;
}

/**
 * Serves the app of a project's folder on a free port, and waits until it says its address; it is built first when it must be.
 *
 * @param limits what a shell is to say before, as `ulimit -n 256`
 * @param env variables of its own; without them it serves no classes, which would be kept in the project's folder
 * @throws Error with all that it said where it ends instead
 */
export const serveFrom = (
	folder: string,
	limits?: string,
	env: Readonly<Record<string, string>> = { SQUARE_ACROSS_DATA: 'none' }
): Promise<Serving> =>
	new Promise((resolve, reject) => {
		const how = {
			stdio: ['ignore', 'pipe', 'pipe'] as ['ignore', 'pipe', 'pipe'],
			env: { ...process.env, ...env }
		};
		const words = [path.join(folder, 'src/cli/square-across.js'), 'serve', '--port', '0'];
		const child =
			limits === undefined
				? spawn(process.execPath, words, how)
				: spawn('sh', ['-c', `${limits} && exec "$0" "$@"`, process.execPath, ...words], how);
		const ended = new Promise<void>((done) => child.once('exit', () => done()));
		let said = '';
		const listen = (part: Buffer): void => {
			said += part.toString('utf8');
			const address = /http:\/\/\S+/.exec(said)?.[0];
			if (address === undefined) return;
			resolve({
				child,
				address,
				said: () => said,
				stop: async () => {
					child.kill();
					await ended;
				}
			});
		};
		child.stdout.on('data', listen);
		child.stderr.on('data', listen);
		child.on('error', reject);
		child.on('exit', (code) => {
			reject(new Error(`serving ended with exit code ${String(code)}:\n${said}`));
		});
	});
