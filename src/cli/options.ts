import { parseArgs, type ParseArgsConfig } from 'node:util';
import { BadInput } from '#shared/bad-input.ts';
import { didYouMean } from '#shared/nearest-name.ts';

type Options = NonNullable<ParseArgsConfig['options']>;

/** Node's own words about a flag run over several lines and speak of `--`; these say what to write instead. */
const inOneLine = (command: string, options: Options, problem: unknown): BadInput => {
	if (!(problem instanceof TypeError) || !('code' in problem)) throw problem;
	const flag = /'(-[^\s']*)/.exec(problem.message)?.[1] ?? '';
	if (problem.code === 'ERR_PARSE_ARGS_UNKNOWN_OPTION') {
		const flags = Object.keys(options).map((name) => `--${name}`);
		return new BadInput(command, `there is no option ${flag}${didYouMean(flag, flags)}`);
	}
	const takesFile = options[flag.replace(/^--/, '')]?.type === 'string';
	return new BadInput(
		command,
		takesFile ? `${flag} needs the name of a file after it` : `${flag} takes no value`
	);
};

/** Splits the words after a command into flags and the rest. Throws BadInput in one line, naming the wrong word. */
export const parsedWords = <const O extends Options>(
	command: string,
	options: O,
	words: readonly string[]
) => {
	try {
		return parseArgs({ args: [...words], options, allowPositionals: true });
	} catch (problem) {
		throw inOneLine(command, options, problem);
	}
};

/** The one file of a flag. Throws BadInput where it was given twice. */
export const onlyOne = (
	command: string,
	files: readonly string[] | undefined,
	flag: string
): string | undefined => {
	if (files && files.length > 1) throw new BadInput(command, `${flag} was given twice: ${files.join(', ')}`);
	return files?.[0];
};

/** What a command is about: the word for it, and how it is asked for where it was not named. */
export interface Subject {
	readonly word: 'method' | 'garment';
	readonly ask: string;
}

/** The id of the one method or garment that a command is about. Throws BadInput. */
export const onlyOf = (command: string, { word, ask }: Subject, positionals: readonly string[]): string => {
	const [id, ...more] = positionals;
	if (id === undefined) throw new BadInput(command, ask);
	if (more.length > 0)
		throw new BadInput(command, `one ${word} at a time; "${more.join(' ')}" is one word too many`);
	return id;
};
