/**
 * The programs of others that the tests read PDF files back with: those that are installed, or that this file
 * installs. Run by itself (`npx tsx tests/support/pdf-readers.ts`) it says whether all are there.
 */
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { canUseDebian, fromDebian } from './debian.ts';

/** The packages of Debian, and how each of their programs that the tests run is asked for its version. */
const READERS: Readonly<Record<string, readonly (readonly [program: string, flag: string])[]>> = {
	'poppler-utils': [
		['pdfinfo', '-v'],
		['pdffonts', '-v'],
		['pdftotext', '-v'],
		['pdftoppm', '-v']
	],
	qpdf: [['qpdf', '--version']]
};

/** Longest wait for a program to say its version, in milliseconds. */
const ANSWER_WITHIN = 20_000;

const starts = (program: string, flag: string): boolean =>
	spawnSync(program, [flag], { timeout: ANSWER_WITHIN, stdio: 'ignore' }).status === 0;

/** The packages of which a program is missing or does not start. */
const missingReaders = (): readonly string[] =>
	Object.entries(READERS)
		.filter(([, programs]) => !programs.every(([program, flag]) => starts(program, flag)))
		.map(([name]) => name);

const whatToDo = (missing: readonly string[]): string =>
	`The tests read PDF files back with other programs, and ${missing.join(' and ')} could neither be found nor installed.
Do one of these, then run the tests again:
  - Debian or Ubuntu, as root:   apt-get update && apt-get install -y ${missing.join(' ')}
  - macOS, with Homebrew:        brew install ${missing.map((name) => (name === 'qpdf' ? name : 'poppler')).join(' ')}
  - any other system:            put pdfinfo, pdffonts, pdftotext, pdftoppm (of poppler) and qpdf on the PATH`;

/**
 * Makes sure that every reader is there, after installing them if need be.
 *
 * @throws Error that says what to do where one is missing and could not be installed
 */
export const ensurePdfReaders = (): void => {
	const missing = missingReaders();
	if (missing.length === 0) return;
	if (canUseDebian()) {
		console.log(`No ${missing.join(', no ')} found; installing (once).`);
		fromDebian(...missing);
	}
	const still = missingReaders();
	if (still.length > 0) throw new Error(whatToDo(still));
};

if (process.argv[1] === fileURLToPath(import.meta.url)) {
	try {
		ensurePdfReaders();
		console.log(`All are there: ${Object.keys(READERS).join(', ')}.`);
	} catch (problem) {
		console.error(problem instanceof Error ? problem.message : problem);
		process.exitCode = 1;
	}
}
