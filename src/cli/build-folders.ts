import { existsSync, rmSync, writeFileSync } from 'node:fs';
import { mkdir, readdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

/** The project's folder, whatever folder the command was typed in. */
export const PROJECT = fileURLToPath(new URL('../../', import.meta.url));

/** Each build has a folder of its own in here: a server that runs goes on serving the one that it began with. */
const BUILDS = path.join(PROJECT, 'build');
/** Says how many seconds the last build took. */
const SECONDS_FILE = path.join(BUILDS, 'seconds');

/** `app-HASH-TIME`: a finished build, by the hash of its sources; `making-PROCESS`: one at work, or given up. */
const MADE = 'app-';
const MAKING = 'making-';
/** In a build's folder: a process that serves it. */
const SERVING = 'serving-';

const HASH_LETTERS = 16;
const nameOf = (sources: string): string => `${MADE}${sources.slice(0, HASH_LETTERS)}-`;

const namesIn = (folder: string): Promise<readonly string[]> => readdir(folder).catch(() => []);

/** The folder of the latest build from these sources, given by their hash; undefined where there is none. */
export const builtFrom = async (sources: string): Promise<string | undefined> => {
	const name = (await namesIn(BUILDS))
		.filter((each) => each.startsWith(nameOf(sources)))
		.sort()
		.at(-1);
	const folder = name === undefined ? undefined : path.join(BUILDS, name);
	return folder !== undefined && existsSync(path.join(folder, 'handler.js')) ? folder : undefined;
};

/** How long the last build took; undefined before the first. */
export const lastBuildSeconds = async (): Promise<number | undefined> => {
	const seconds = Number(await readFile(SECONDS_FILE, 'utf8').catch(() => ''));
	return seconds > 0 ? seconds : undefined;
};

/** An empty folder to build in, of this process alone. */
export const newBuildFolder = async (): Promise<string> => {
	const folder = path.join(BUILDS, `${MAKING}${String(process.pid)}`);
	await rm(folder, { recursive: true, force: true });
	await mkdir(folder, { recursive: true });
	return folder;
};

/** Whether a process runs, by the number at the end of a name. */
const isRunning = (name: string): boolean => {
	const [number] = /\d+/.exec(name) ?? [];
	try {
		return process.kill(Number(number), 0);
	} catch (problem) {
		// One that runs may belong to another person.
		return problem instanceof Error && 'code' in problem && problem.code === 'EPERM';
	}
};

const isNeeded = async (name: string): Promise<boolean> => {
	if (name.startsWith(MAKING)) return isRunning(name);
	if (!name.startsWith(MADE)) return true;
	const inside = await namesIn(path.join(BUILDS, name));
	return inside.some((each) => each.startsWith(SERVING) && isRunning(each));
};

/** Removes the builds that nobody serves and nobody makes, but for the one that was just made. */
const removeOld = async (but: string): Promise<void> => {
	for (const name of await namesIn(BUILDS)) {
		if (name === but || (await isNeeded(name))) continue;
		// What cannot be removed now can be the next time.
		await rm(path.join(BUILDS, name), { recursive: true, force: true }).catch(() => undefined);
	}
};

/** Puts a build under its name, as soon as it is whole, and removes older ones. Gives its folder. */
export const finishBuild = async (making: string, sources: string, seconds: number): Promise<string> => {
	const name = nameOf(sources) + Date.now().toString(36);
	const folder = path.join(BUILDS, name);
	await rename(making, folder);
	await writeFile(SECONDS_FILE, String(seconds));
	await rm(`${making}.kit`, { recursive: true, force: true });
	await removeOld(name);
	return folder;
};

/** Lets nobody remove a build as long as this process runs. */
export const keepWhileServing = (folder: string): void => {
	const note = path.join(folder, SERVING + String(process.pid));
	try {
		writeFileSync(note, '');
	} catch {
		// Where nothing can be written nothing is removed either.
		return;
	}
	process.once('exit', () => {
		rmSync(note, { force: true });
	});
};
