// Brings in the command line. It is read from one bundle of all its sources, since reading hundreds of files takes
// longer than most commands; the bundle is made anew when a source has changed. Plain JavaScript, as nothing can read TypeScript yet.
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { mkdir, readdir, rename, rm, stat, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const PROJECT = fileURLToPath(new URL('../../', import.meta.url));
const ENTRY = 'src/cli/main.ts';
/** Bundles lie as deep as the sources of the command line, so that `../../` leads from both to the project. */
const FOLDER = path.join(PROJECT, 'build');
/** Which bundle is the latest, which files it was made from, and their hash. */
const NOTE = path.join(FOLDER, 'cli.json');
const NAME = /^cli-\d/;
/** Besides its sources: the packages that are bundled, and how. */
const ALWAYS = ['package.json', 'package-lock.json', 'src/cli/bundle.js'];
/** An older bundle may still be read by whoever began with it; in milliseconds. */
const KEPT_FOR = 24 * 60 * 60 * 1000;

/** @typedef {(words: readonly string[]) => Promise<number>} Main */
/** @typedef {{ readonly folder: string, readonly files: readonly string[], readonly hash: string }} Note */

/** @param {readonly string[]} files */
const hashOf = (files) => {
	const hash = createHash('sha256');
	for (const file of files) {
		const content = readFileSync(path.join(PROJECT, file));
		hash.update(`${file}\0${content.length}\0`).update(content);
	}
	return hash.digest('hex');
};

/** @param {string} folder @returns {Promise<Main>} */
const mainIn = async (folder) => (await import(pathToFileURL(path.join(folder, 'main.js')).href)).main;

/** The latest bundle; undefined where there is none, or a source has changed since. @returns {Promise<Main | undefined>} */
const fresh = async () => {
	try {
		/** @type {Note} */
		const { folder, files, hash } = JSON.parse(readFileSync(NOTE, 'utf8'));
		return hashOf(files) === hash ? await mainIn(path.join(FOLDER, folder)) : undefined;
	} catch {
		// No bundle, or one that was cut short: it is made again, and a fault of the sources shows where they are read.
		return undefined;
	}
};

/** Bundles the sources into a folder. Gives the files that they were. @param {string} outDir */
const bundle = async (outDir) => {
	const { build } = await import('vite');
	const result = await build({
		configFile: false,
		root: PROJECT,
		logLevel: 'silent',
		publicDir: false,
		// What the project's tsconfig.json says is for editors and checks, and part of it is not there before `svelte-kit sync`.
		oxc: false,
		ssr: { noExternal: true, external: ['vite', '@photostructure/sqlite', 'pg'] },
		build: {
			ssr: ENTRY,
			outDir,
			minify: false,
			rolldownOptions: {
				tsconfig: false,
				output: { entryFileNames: 'main.js', chunkFileNames: '[name]-[hash].js' }
			}
		}
	});
	const outputs = 'output' in result ? result.output : [];
	const modules = outputs.flatMap((each) => ('moduleIds' in each ? each.moduleIds : []));
	return modules
		.map((id) => path.relative(PROJECT, id).split(path.sep).join('/'))
		.filter((file) => /^(src|shared)\//.test(file))
		.concat(ALWAYS)
		.sort();
};

/** @param {string} but */
const removeOld = async (but) => {
	for (const name of await readdir(FOLDER)) {
		if (!NAME.test(name) || name === but) continue;
		const whole = path.join(FOLDER, name);
		const made = await stat(whole).catch(() => undefined);
		if (made && Date.now() - made.mtimeMs > KEPT_FOR) await rm(whole, { recursive: true, force: true });
	}
};

/** Makes a bundle; undefined where it cannot be made or written. @returns {Promise<Main | undefined>} */
const made = async () => {
	const folder = `cli-${Date.now()}-${process.pid}`;
	const whole = path.join(FOLDER, folder);
	const beside = `${NOTE}.${process.pid}`;
	try {
		// First of all, so that nothing is bundled where nothing can be written.
		await mkdir(whole, { recursive: true });
		const files = await bundle(whole);
		await writeFile(beside, JSON.stringify({ folder, files, hash: hashOf(files) }));
		await rename(beside, NOTE);
		await removeOld(folder);
		return await mainIn(whole);
	} catch {
		await rm(whole, { recursive: true, force: true }).catch(() => undefined);
		return undefined;
	}
};

/** @returns {Promise<Main>} */
const fromSources = async () => {
	const { register } = await import('tsx/esm/api');
	// The reader's own tsconfig.json, in whatever folder they stand, must not change how this program runs.
	register({ tsconfig: false });
	return (await import('./main.ts')).main;
};

/**
 * The command line's own function: from the latest bundle, one that is made now, or the sources themselves.
 *
 * @throws Error ERR_MODULE_NOT_FOUND where the packages are not installed
 */
export const loadMain = async () => (await fresh()) ?? (await made()) ?? fromSources();
