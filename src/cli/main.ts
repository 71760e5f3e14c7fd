import { cut } from '#shared/bad-input.ts';
import { nearestName } from '#shared/nearest-name.ts';
import { allWords } from '#shared/speech/catalogue.ts';
import { withChecking } from '#shared/speech/checking-words.ts';
import type { Language } from '#shared/speech/language.ts';
import { speechOf, type Speech } from '#shared/speech/speech.ts';
import { BAD_USE, exitCodeOf, type Command } from './exit-code.ts';
import { languageIn } from './options.ts';
import { allowClosedPipes, complain, writeOut } from './output.ts';

/** Each command is loaded only when it is asked for. */
const COMMANDS: Readonly<Record<string, () => Promise<Command>>> = {
	draft: async () => (await import('./work-command.ts')).draftCommand,
	pattern: async () => (await import('./work-command.ts')).patternCommand,
	export: async () => (await import('./export-command.ts')).exportCommand,
	sizes: async () => (await import('./sizes-command.ts')).sizesCommand,
	check: async () => (await import('./check-command.ts')).checkCommand,
	backup: async () => (await import('./store-command.ts')).backupCommand,
	restore: async () => (await import('./store-command.ts')).restoreCommand,
	move: async () => (await import('./store-command.ts')).moveCommand,
	'let-in': async () => (await import('./let-in-command.ts')).letInCommand
};

const speechIn = async (language: Language): Promise<Speech> =>
	speechOf(await withChecking(await allWords(language)), 'cm');

const run = async ([command, ...rest]: readonly string[], speech: Speech): Promise<number> => {
	const { words } = speech;
	const usage = words.command.usage({ of: 'main' });
	if (command === undefined) {
		process.stderr.write(usage);
		return BAD_USE;
	}
	const isHelp = (word: string): boolean => word === '--help' || word === '-h';
	const hasNoHelpOfItsOwn = command === 'serve' || command === 'build';
	if (command === 'help' || isHelp(command) || (hasNoHelpOfItsOwn && rest.some(isHelp)))
		return exitCodeOf(speech, async () => {
			await writeOut(usage);
		});
	if (command === 'serve') return (await import('./serve.ts')).serveCommand(rest, speech);
	if (command === 'build') return (await import('./app-build.ts')).buildCommand(rest, speech);
	const load = Object.hasOwn(COMMANDS, command) ? COMMANDS[command] : undefined;
	if (load) return exitCodeOf(speech, async () => (await load())(rest, speech));
	const near = nearestName(command, [...Object.keys(COMMANDS), 'serve', 'build', 'help']);
	complain(words.command.noCommand({ name: cut(command), near }));
	return BAD_USE;
};

/**
 * Runs one command line and gives its exit code: 0 done, 1 our fault, 2 a wrong command or value.
 *
 * @param words the arguments after the program's name; `--language es` may stand anywhere among them
 */
export const main = async (words: readonly string[]): Promise<number> => {
	allowClosedPipes();
	let code = 0;
	const english = await speechIn('en');
	const refused = await exitCodeOf(english, async () => {
		const { language, rest } = languageIn(words);
		code = await run(rest, language === 'en' ? english : await speechIn(language));
	});
	return refused || code;
};
