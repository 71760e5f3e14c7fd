import { parseArgs, type ParseArgsConfig } from 'node:util';
import { BadInput } from '#shared/bad-input.ts';
import { nearestName } from '#shared/nearest-name.ts';
import { isLanguage, LANGUAGES, type Language } from '#shared/speech/language.ts';
import { message, type Message } from '#shared/speech/message.ts';

type Options = NonNullable<ParseArgsConfig['options']>;

/** The flags of every command that works for bodies. */
export const FOR_BODIES = {
	body: { type: 'string', multiple: true },
	bodies: { type: 'string', multiple: true },
	size: { type: 'string', multiple: true },
	help: { type: 'boolean', short: 'h' }
} as const;

/** Flags whose value is a file or a folder. */
const TAKE_FILES = new Set(['body', 'bodies', 'placements', 'policy', 'marks', 'tape', 'to']);

/** Node's own words about a flag run over several lines and speak of `--`; these say what to write instead. */
const slipOf = (options: Options, problem: unknown): Message => {
	if (!(problem instanceof TypeError) || !('code' in problem)) throw problem;
	const flag = /'(-[^\s']*)/.exec(problem.message)?.[1] ?? '';
	if (problem.code === 'ERR_PARSE_ARGS_UNKNOWN_OPTION') {
		const flags = Object.keys(options).map((name) => `--${name}`);
		return message('command', 'noOption', { flag, near: nearestName(flag, flags) });
	}
	const name = flag.replace(/^--/, '');
	if (options[name]?.type !== 'string') return message('command', 'noValue', { flag });
	return message('command', TAKE_FILES.has(name) ? 'needsFile' : 'needsValue', { flag });
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
		throw new BadInput(command, slipOf(options, problem));
	}
};

/** The one value of a flag. Throws BadInput where it was given twice. */
export const onlyOne = (
	command: string,
	values: readonly string[] | undefined,
	flag: string
): string | undefined => {
	if (values && values.length > 1)
		throw new BadInput(command, message('command', 'givenTwice', { flag, values }));
	return values?.[0];
};

/** What a command is asked for by its id, and what it takes where several are named. */
export interface Asked {
	readonly command: 'draft' | 'pattern' | 'export' | 'check';
	readonly kind: 'method' | 'garment';
}

/** The id of the one method or garment that a command is about. Throws BadInput. */
export const onlyOf = ({ command, kind }: Asked, positionals: readonly string[]): string => {
	const [id, ...more] = positionals;
	if (id === undefined) throw new BadInput(command, message('command', 'ask', { of: command }));
	if (more.length > 0)
		throw new BadInput(command, message('command', 'oneAtATime', { kind, more: more.join(' ') }));
	return id;
};

/** One body, a table of them, or a standard size. */
export type BodiesInput =
	| { readonly kind: 'body' | 'bodies'; readonly file: string }
	| { readonly kind: 'size'; readonly text: string };

/** Which bodies, from where. Throws BadInput where both are given, or none. */
export const bodiesInput = (
	command: string,
	values: {
		readonly body?: readonly string[];
		readonly bodies?: readonly string[];
		readonly size?: readonly string[];
	}
): BodiesInput => {
	const size = onlyOne(command, values.size, '--size');
	const body = onlyOne(command, values.body, '--body');
	const bodies = onlyOne(command, values.bodies, '--bodies');
	if (body !== undefined && bodies !== undefined)
		throw new BadInput(command, message('command', 'bodyOrBodies', { body, bodies }));
	if (size !== undefined && (body ?? bodies) !== undefined)
		throw new BadInput(command, message('sizes', 'oneOfBodies'));
	if (size !== undefined) return { kind: 'size', text: size };
	if (body !== undefined) return { kind: 'body', file: body };
	if (bodies !== undefined) return { kind: 'bodies', file: bodies };
	throw new BadInput(command, message('command', 'giveBody'));
};

/** The language of a command line, and its other words. An unknown one is a BadInput, told in English. */
export const languageIn = (
	words: readonly string[]
): { readonly language: Language; readonly rest: readonly string[] } => {
	const at = words.findIndex((word) => word === '--language' || word.startsWith('--language='));
	if (at < 0) return { language: 'en', rest: words };
	const word = words[at] ?? '';
	const isApart = word === '--language';
	const seen = isApart ? (words[at + 1] ?? '""') : word.slice('--language='.length);
	if (!isLanguage(seen))
		throw new BadInput('square-across', message('command', 'noLanguage', { seen, known: LANGUAGES }));
	return { language: seen, rest: [...words.slice(0, at), ...words.slice(at + (isApart ? 2 : 1))] };
};
