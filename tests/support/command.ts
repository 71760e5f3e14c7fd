import { spawn, type ChildProcess } from 'node:child_process';

/** How a command ended, and all that it said. */
export interface Outcome {
	readonly ok: boolean;
	readonly output: string;
	readonly seconds: number;
}

/** Longer than this and a stage hangs, in milliseconds; the slowest takes a few minutes on a slow machine. */
const STAGE_LIMIT = 20 * 60_000;

const running = new Set<ChildProcess>();
const onWindows = process.platform === 'win32';

/** Ends a command together with everything that it started. */
const end = (child: ChildProcess): void => {
	if (child.pid === undefined || child.exitCode !== null) return;
	try {
		if (onWindows) child.kill('SIGTERM');
		else process.kill(-child.pid, 'SIGTERM');
	} catch {
		// It ended by itself in between.
	}
};

/** Ends every command that is still running. */
export const endAll = (): void => {
	running.forEach(end);
};

/** npm itself, as the one who runs us said; from any other start, the npm on the path. */
const npm = (): { command: string; words: string[] } => {
	const cli = process.env['npm_execpath'];
	if (cli?.endsWith('.js')) return { command: process.execPath, words: [cli] };
	return { command: onWindows ? 'npm.cmd' : 'npm', words: [] };
};

/**
 * Runs one script of package.json and keeps its output.
 *
 * @param script the script's name
 * @param more further arguments for it
 * @param env variables to add
 */
export const runScript = (
	script: string,
	more: readonly string[] = [],
	env: Readonly<Record<string, string>> = {}
): Promise<Outcome> => {
	const { command, words } = npm();
	const start = performance.now();
	return new Promise((resolve) => {
		const child = spawn(command, [...words, 'run', '--silent', script, '--', ...more], {
			env: { ...process.env, ...env },
			stdio: ['ignore', 'pipe', 'pipe'],
			// A group of its own on Unix, so that it can be ended together with what it starts.
			detached: !onWindows,
			shell: onWindows && words.length === 0
		});
		running.add(child);
		const output: string[] = [];
		const keep = (part: Buffer): number => output.push(part.toString('utf8'));
		child.stdout.on('data', keep);
		child.stderr.on('data', keep);
		const limit = setTimeout(() => {
			output.push(`\nEnded after ${String(STAGE_LIMIT / 60_000)} minutes.\n`);
			end(child);
		}, STAGE_LIMIT);
		const finish = (ok: boolean): void => {
			clearTimeout(limit);
			running.delete(child);
			resolve({ ok, output: output.join(''), seconds: (performance.now() - start) / 1000 });
		};
		child.on('error', (problem) => {
			output.push(problem.message);
			finish(false);
		});
		child.on('close', (code) => {
			finish(code === 0);
		});
	});
};
