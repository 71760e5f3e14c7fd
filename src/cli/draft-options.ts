import { BadInput } from '#shared/bad-input.ts';
import { onlyMethod, onlyOne, parsedWords } from './options.ts';

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

/**
 * Reads the words after `square-across draft`; 'help' where that was asked for. Throws BadInput,
 * naming the word that is wrong or missing.
 */
export const readDraftOptions = (words: readonly string[]): DraftOptions | 'help' => {
	const { values, positionals } = parsedWords('draft', OPTIONS, words);
	if (values.help) return 'help';
	const method = onlyMethod('draft', positionals);
	const body = onlyOne('draft', values.body, '--body');
	const bodies = onlyOne('draft', values.bodies, '--bodies');
	if (body !== undefined && bodies !== undefined) {
		throw new BadInput('draft', `give --body or --bodies, not both (${body}, ${bodies})`);
	}
	const json = values.json ?? false;
	if (body !== undefined) return { method, input: { kind: 'body', file: body }, json };
	if (bodies !== undefined) return { method, input: { kind: 'bodies', file: bodies }, json };
	throw new BadInput('draft', 'give --body FILE for one body, or --bodies FILE.csv for many');
};
