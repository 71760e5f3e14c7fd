import { parseArgs } from 'node:util';
import { BadInput } from '#shared/bad-input.ts';
import { didYouMean } from '#shared/nearest-name.ts';

/** What `square-across draft` was asked to do. */
export interface DraftOptions {
	/** The id of a method, such as `back-block`. */
	readonly method: string;
	/** One body, or a table of them. */
	readonly input: { readonly kind: 'body' | 'bodies'; readonly file: string };
	readonly json: boolean;
}

const OPTIONS = {
	body: { type: 'string', multiple: true },
	bodies: { type: 'string', multiple: true },
	json: { type: 'boolean' },
	help: { type: 'boolean', short: 'h' }
} as const;

const FLAGS = Object.keys(OPTIONS).map((name) => `--${name}`);

/** Node's own words about a flag run over several lines and speak of `--`; these say what to write instead. */
const inOneLine = (problem: unknown): BadInput => {
	if (!(problem instanceof TypeError) || !('code' in problem)) throw problem;
	const flag = /'(-[^\s']*)/.exec(problem.message)?.[1] ?? '';
	if (problem.code === 'ERR_PARSE_ARGS_UNKNOWN_OPTION') {
		return new BadInput('draft', `there is no option ${flag}${didYouMean(flag, FLAGS)}`);
	}
	const takesFile = flag.startsWith('--bod');
	return new BadInput(
		'draft',
		takesFile ? `${flag} needs the name of a file after it` : `${flag} takes no value`
	);
};

const parsed = (words: readonly string[]) => {
	try {
		return parseArgs({ args: [...words], options: OPTIONS, allowPositionals: true });
	} catch (problem) {
		throw inOneLine(problem);
	}
};

const onlyOne = (files: readonly string[], flag: string): string | undefined => {
	if (files.length > 1) throw new BadInput('draft', `${flag} was given twice: ${files.join(', ')}`);
	return files[0];
};

/**
 * Reads the words after `square-across draft`; 'help' where that was asked for. Throws BadInput,
 * naming the word that is wrong or missing.
 */
export const readDraftOptions = (words: readonly string[]): DraftOptions | 'help' => {
	const { values, positionals } = parsed(words);
	if (values.help) return 'help';
	const [method, ...more] = positionals;
	if (method === undefined) throw new BadInput('draft', 'name the method to draft, such as back-block');
	if (more.length > 0)
		throw new BadInput('draft', `one method at a time; "${more.join(' ')}" is one word too many`);
	const body = onlyOne(values.body ?? [], '--body');
	const bodies = onlyOne(values.bodies ?? [], '--bodies');
	if (body !== undefined && bodies !== undefined) {
		throw new BadInput('draft', `give --body or --bodies, not both (${body}, ${bodies})`);
	}
	const json = values.json ?? false;
	if (body !== undefined) return { method, input: { kind: 'body', file: body }, json };
	if (bodies !== undefined) return { method, input: { kind: 'bodies', file: bodies }, json };
	throw new BadInput('draft', 'give --body FILE for one body, or --bodies FILE.csv for many');
};
