import { BadInput } from '#shared/bad-input.ts';
import { onlyOf, onlyOne, parsedWords, type Subject } from './options.ts';

/** What a command that works for bodies was asked to do. */
export interface BodyOptions {
	/** The id of a method or of a garment, such as `back-block`. */
	readonly id: string;
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
 * Reads the words after a command that works `subject` out for bodies, such as `square-across draft`; 'help'
 * where that was asked for. Throws BadInput, naming the word that is wrong or missing.
 */
export const readBodyOptions = (
	command: string,
	subject: Subject,
	words: readonly string[]
): BodyOptions | 'help' => {
	const { values, positionals } = parsedWords(command, OPTIONS, words);
	if (values.help) return 'help';
	const id = onlyOf(command, subject, positionals);
	const body = onlyOne(command, values.body, '--body');
	const bodies = onlyOne(command, values.bodies, '--bodies');
	if (body !== undefined && bodies !== undefined) {
		throw new BadInput(command, `give --body or --bodies, not both (${body}, ${bodies})`);
	}
	const json = values.json ?? false;
	if (body !== undefined) return { id, input: { kind: 'body', file: body }, json };
	if (bodies !== undefined) return { id, input: { kind: 'bodies', file: bodies }, json };
	throw new BadInput(command, 'give --body FILE for one body, or --bodies FILE.csv for many');
};
