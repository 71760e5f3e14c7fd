/**
 * A Chromium for the browser tests: one that is installed, or one that this file installs. Run by
 * itself (`npx tsx tests/support/chromium.ts`) it prints the path that the tests would use.
 */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium as playwrightsOwn } from '@playwright/test';
import { canUseDebian, fromDebian, installStep, isRoot } from './debian.ts';

/** Names a browser of one's own choice; it is then the only one considered. */
export const CHOSEN = 'SQUARE_ACROSS_CHROMIUM';

/** The one without a window first: the same engine, and the browser tests take about half as long. */
const NAMES = [
	'chromium-headless-shell',
	'chromium',
	'chromium-browser',
	'google-chrome',
	'google-chrome-stable',
	'chrome'
];

const USUAL_PLACES: Partial<Record<NodeJS.Platform, readonly string[]>> = {
	linux: ['/usr/bin', '/usr/local/bin', '/opt/google/chrome', '/snap/bin'].flatMap((folder) =>
		NAMES.map((name) => `${folder}/${name}`)
	),
	darwin: [
		'/Applications/Chromium.app/Contents/MacOS/Chromium',
		'/Applications/Google Chrome.app/Contents/MacOS/Google Chrome'
	],
	win32: ['PROGRAMFILES', 'PROGRAMFILES(X86)', 'LOCALAPPDATA'].flatMap((variable) => {
		const folder = process.env[variable];
		return folder
			? [`${folder}\\Chromium\\Application\\chrome.exe`, `${folder}\\Google\\Chrome\\Application\\chrome.exe`]
			: [];
	})
};

/** Longest wait for a browser to say its version, in milliseconds. */
const ANSWER_WITHIN = 20_000;

/**
 * Switches for a browser under test: no sandbox for root (Chromium refuses to start with one), and none
 * of the calls that a browser makes home by itself.
 */
export const CHROMIUM_SWITCHES: readonly string[] = [
	...(isRoot ? ['--no-sandbox'] : []),
	'--disable-background-networking',
	'--disable-component-update',
	'--disable-sync'
];

/** A file of the right name may still be a stub that only says how to install the real one. */
const runs = (file: string): boolean => {
	if (!existsSync(file)) return false;
	// On Windows, asking for the version opens a window instead.
	if (process.platform === 'win32') return true;
	const answer = spawnSync(file, ['--version'], { timeout: ANSWER_WITHIN, stdio: 'ignore' });
	return answer.status === 0;
};

const onThePath = (): string[] => {
	const ending = process.platform === 'win32' ? '.exe' : '';
	const folders = (process.env['PATH'] ?? '').split(path.delimiter).filter(Boolean);
	return folders.flatMap((folder) => NAMES.map((name) => path.join(folder, name + ending)));
};

const places = (): readonly string[] => [
	...new Set([...(USUAL_PLACES[process.platform] ?? []), ...onThePath(), playwrightsOwn.executablePath()])
];

/**
 * The path of an installed Chromium or Chrome that starts, or undefined.
 *
 * @throws Error when SQUARE_ACROSS_CHROMIUM names something that does not start
 */
export const findChromium = (): string | undefined => {
	const chosen = process.env[CHOSEN];
	if (chosen) {
		if (runs(chosen)) return chosen;
		throw new Error(`${CHOSEN} names a browser that does not start: ${chosen}`);
	}
	return places().find(runs);
};

const fromPlaywright = (): boolean => {
	const cli = path.join(path.dirname(fileURLToPath(import.meta.resolve('@playwright/test'))), 'cli.js');
	return installStep(process.execPath, [cli, 'install', '--no-shell', 'chromium']);
};

const WHAT_TO_DO = `No Chromium was found, and none could be installed, so the browser tests cannot run.
Do one of these, then run the tests again:
  - Debian or Ubuntu, as root:   apt-get update && apt-get install -y chromium-headless-shell
  - any system, with a network:  npx playwright install --with-deps chromium
  - a browser of your own:       ${CHOSEN}=/path/to/chrome npm test`;

/**
 * The path of a Chromium that starts, after installing one if need be.
 *
 * @throws Error that says what to do when there is none and none could be installed
 */
export const ensureChromium = (): string => {
	const found = findChromium();
	if (found) return found;
	console.log('No Chromium found; installing one (once).');
	const debian = ['chromium-headless-shell', 'chromium'].map((name) => () => fromDebian(name));
	const ways = [...(canUseDebian() ? debian : []), fromPlaywright];
	for (const way of ways) {
		const installed = way() ? findChromium() : undefined;
		if (installed) return installed;
	}
	throw new Error(WHAT_TO_DO);
};

/** The one with a window, as people have it, where there is one: what is told of "a browser" is told of it. */
export const windowedChromium = (): string =>
	(process.env[CHOSEN] ? undefined : places().find((file) => !file.includes('headless') && runs(file))) ??
	ensureChromium();

if (process.argv[1] === fileURLToPath(import.meta.url)) {
	try {
		console.log(ensureChromium());
	} catch (problem) {
		console.error(problem instanceof Error ? problem.message : problem);
		process.exitCode = 1;
	}
}
