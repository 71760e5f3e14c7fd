import { didYouMean } from '#shared/nearest-name.ts';
import { buildCommand } from './app-build.ts';
import { checkCommand } from './check-command.ts';
import { draftCommand } from './draft-command.ts';
import { BAD_USE } from './exit-code.ts';
import { allowClosedPipes, complain } from './output.ts';
import { serveCommand } from './serve.ts';

const COMMANDS = ['draft', 'pattern', 'export', 'check', 'serve', 'build', 'help'];

const USAGE = `Usage:
  square-across draft METHOD --body FILE.json [--json]   draft one body from its measurements (- reads standard input)
  square-across draft METHOD --bodies FILE.csv           draft a table of bodies: one line of JSON a row
  square-across pattern GARMENT --body FILE.json [--json]   every piece of a garment for one body, and how its seams agree
  square-across pattern GARMENT --bodies FILE.csv        the same for a table of bodies: one line of JSON a row
  square-across export GARMENT --body FILE.json --to FILE   the pattern at true scale: .pdf, .svg, .dxf, .csv or .json; METHOD for a draft
  square-across export GARMENT --bodies FILE.csv --to FOLDER   a file for each row of a table
  square-across check METHOD --body FILE.json --placements FILE.json [--json]   check work that was handed in
  square-across check METHOD --stdin                     the same for many learners: one line of JSON each
  square-across serve [--port N] [--host H]              serve the lessons on this machine (builds them when needed)
  square-across build                                    build the lessons for serving

METHOD is back-block or another id of lessons/*/method.yaml; \`draft --help\` says how a body is written.
GARMENT is linnet-dress or another id of lessons/*/garment.yaml; \`pattern --help\` says what may be chosen for it.
`;

/**
 * Runs one command line and gives its exit code: 0 done, 1 our fault, 2 a wrong command or value.
 *
 * @param words the arguments after the program's name
 */
export const main = async (words: readonly string[]): Promise<number> => {
	allowClosedPipes();
	const [command, ...rest] = words;
	switch (command) {
		case 'draft':
			return draftCommand(rest);
		case 'pattern':
			// It alone loads what finds where outlines cross, which takes longer than a draft does.
			return (await import('./pattern-command.ts')).patternCommand(rest);
		case 'export':
			return (await import('./export-command.ts')).exportCommand(rest);
		case 'check':
			return checkCommand(rest);
		case 'serve':
			return serveCommand(rest);
		case 'build':
			return buildCommand(rest);
		case 'help':
		case '--help':
		case '-h':
			process.stdout.write(USAGE);
			return 0;
		case undefined:
			process.stderr.write(USAGE);
			return BAD_USE;
		default:
			complain(`There is no command "${command}"${didYouMean(command, COMMANDS)}. Try square-across --help.`);
			return BAD_USE;
	}
};
