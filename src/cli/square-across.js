#!/usr/bin/env node
// Starts the command line from any folder. Plain JavaScript, because nothing can read TypeScript before it.

/** The oldest Node that the engine and its packages support; package.json "engines" says the same. */
const OLDEST = { major: 20, minor: 19 };

const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
if (major < OLDEST.major || (major === OLDEST.major && minor < OLDEST.minor)) {
	const oldest = `${OLDEST.major}.${OLDEST.minor}`;
	process.stderr.write(
		`Square Across needs Node ${oldest} or later; this is Node ${process.versions.node}.\n`
	);
	process.exit(1);
}

/** @param {unknown} problem */
const isMissingPackage = (problem) =>
	problem instanceof Error && 'code' in problem && problem.code === 'ERR_MODULE_NOT_FOUND';

const { loadMain } = await import('./bundle.js');
const main = await loadMain().catch((problem) => {
	if (!isMissingPackage(problem)) throw problem;
	process.stderr.write('The packages are not installed yet. Run `npm ci` in the project folder first.\n');
	process.exit(1);
});
process.exitCode = await main(process.argv.slice(2));

export {};
