import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync } from 'node:fs';
import { readdir, readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import path from 'node:path';
import { cut } from '#shared/bad-input.ts';
import type { Speech } from '#shared/speech/speech.ts';
import { builtFrom, finishBuild, lastBuildSeconds, newBuildFolder, PROJECT } from './build-folders.ts';
import { BAD_USE } from './exit-code.ts';
import { complain } from './output.ts';

/** Everything that the built app is made from. */
const SOURCES = [
	'src',
	'lessons',
	'shared',
	'static',
	'package.json',
	'package-lock.json',
	'svelte.config.js',
	'vite.config.ts'
];

/** Parts of the sources that no page contains, so that changing them needs no new build. */
const NOT_IN_THE_APP = /^src\/cli\/|\.test\.ts$/;

/** What a first build takes on a small machine; later ones are announced by the last one's length. */
const FIRST_GUESS_SECONDS = 15;

/** A build that went wrong, with all that the bundler said. */
export class BuildFailed extends Error {
	constructor(output: string) {
		super(output);
		this.name = 'BuildFailed';
	}
}

const filesUnder = async (place: string): Promise<string[]> => {
	const whole = path.join(PROJECT, place);
	if (!existsSync(whole)) return [];
	const entries = await readdir(whole, { withFileTypes: true }).catch((problem: unknown) => {
		if (problem instanceof Error && 'code' in problem && problem.code === 'ENOTDIR') return null;
		throw problem;
	});
	if (entries === null) return [place];
	const nested = await Promise.all(entries.map((entry) => filesUnder(`${place}/${entry.name}`)));
	return nested.flat();
};

/** One hash over the names and contents of all sources, the same on every machine. */
const hashSources = async (): Promise<string> => {
	const files = (await Promise.all(SOURCES.map(filesUnder))).flat();
	const hash = createHash('sha256');
	for (const file of files.filter((name) => !NOT_IN_THE_APP.test(name)).sort()) {
		const content = await readFile(path.join(PROJECT, file));
		hash.update(`${file}\0${String(content.length)}\0`).update(content);
	}
	return hash.digest('hex');
};

/** Runs the bundler quietly into a folder: its output is shown only when it fails. */
const runVite = (folder: string): Promise<void> => {
	const manifest = createRequire(import.meta.url).resolve('vite/package.json');
	const vite = path.join(path.dirname(manifest), 'bin/vite.js');
	return new Promise((resolve, reject) => {
		const child = spawn(process.execPath, [vite, 'build'], {
			cwd: PROJECT,
			// Read by svelte.config.js.
			env: { ...process.env, SQUARE_ACROSS_BUILD: folder },
			stdio: ['ignore', 'pipe', 'pipe']
		});
		const output: Buffer[] = [];
		child.stdout.on('data', (part: Buffer) => output.push(part));
		child.stderr.on('data', (part: Buffer) => output.push(part));
		child.on('error', reject);
		child.on('close', (code) => {
			if (code === 0) resolve();
			else reject(new BuildFailed(Buffer.concat(output).toString('utf8')));
		});
	});
};

/** The hash is taken before the build, so an edit made during it leads to another build next time. Gives the folder. */
const build = async (sources: string, say: (line: string) => void, { words }: Speech): Promise<string> => {
	say(words.command.building({ seconds: (await lastBuildSeconds()) ?? FIRST_GUESS_SECONDS }));
	const start = performance.now();
	const making = await newBuildFolder();
	await runVite(making);
	const seconds = Math.max(1, Math.round((performance.now() - start) / 1000));
	return finishBuild(making, sources, seconds);
};

/**
 * The folder of the app as it is built from the sources; built first unless that was done from the very same ones.
 *
 * @param say shows one line of progress
 * @throws BuildFailed with the bundler's output
 */
export const ensureBuilt = async (say: (line: string) => void, speech: Speech): Promise<string> => {
	const sources = await hashSources();
	return (await builtFrom(sources)) ?? build(sources, say, speech);
};

/** Tells that a build went wrong, and gives the exit code. */
export const tellFailure = ({ message }: BuildFailed, { words }: Speech): number => {
	process.stderr.write(`${words.command.buildFailed}\n${message}\n`);
	return 1;
};

/** `square-across build`: builds, whatever was built before. Gives the exit code. */
export const buildCommand = async (words: readonly string[], speech: Speech): Promise<number> => {
	const { command } = speech.words;
	if (words.length > 0) {
		complain(command.takesNothing({ command: 'build', seen: cut(words.join(' ')) }));
		return BAD_USE;
	}
	try {
		await build(await hashSources(), console.log, speech);
	} catch (problem) {
		if (!(problem instanceof BuildFailed)) throw problem;
		return tellFailure(problem, speech);
	}
	console.log(command.built);
	return 0;
};
