import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import path from 'node:path';

/** Longest wait for one installation, in milliseconds: a slow line, 200 MB. */
const INSTALL_WITHIN = 15 * 60_000;

/** Whether the tests run as the one who may install packages, for whom a browser refuses to start with its sandbox. */
export const isRoot = process.getuid?.() === 0;

/** Runs one installation step, and shows what it said when it failed; true when it went well. */
export const installStep = (command: string, words: readonly string[]): boolean => {
	console.log(`$ ${[path.basename(command), ...words].join(' ')}`);
	const { status, stdout, stderr, error } = spawnSync(command, words, {
		timeout: INSTALL_WITHIN,
		stdio: ['ignore', 'pipe', 'pipe'],
		encoding: 'utf8',
		maxBuffer: 64 * 1024 * 1024,
		env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' }
	});
	if (status === 0) return true;
	console.log([stdout, stderr, error?.message].filter(Boolean).join('\n').trimEnd());
	return false;
};

/** Whether Debian's packages can be installed here: they need its installer, and root. */
export const canUseDebian = (): boolean =>
	isRoot && process.platform === 'linux' && existsSync('/usr/bin/apt-get');

/** Installs packages from Debian; true when it went well. */
export const fromDebian = (...packages: readonly string[]): boolean =>
	installStep('apt-get', ['update']) &&
	installStep('apt-get', ['install', '-y', '--no-install-recommends', ...packages]);
