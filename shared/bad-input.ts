import type { Message } from './speech/message.ts';
import type { Speech } from './speech/speech.ts';

/** The longest that a value or a name is shown: a message is read in one glance, whatever was written. */
const LONGEST = 60;
/** The longest that a place is: a file's path, a field and a name in it. */
const LONGEST_PLACE = 160;

/** A text as far as it is shown. */
export const cut = (text: string, longest = LONGEST): string =>
	text.length > longest ? `${text.slice(0, longest - 3)}...` : text;

/** A text of somebody else's on one line: without line breaks, terminal codes and signs that turn the way of writing. */
export const onOneLine = (text: string): string =>
	text.replace(/[\p{Cc}\u2028\u2029\u202A-\u202E\u2066-\u2069]+/gu, ' ');

/** JSON of a value, only so far as `room` is left: every level and every item takes some, so it neither goes deep nor reads on. */
const beginning = (value: unknown, room: number): string => {
	if (typeof value === 'string') return JSON.stringify(value.slice(0, room + 1));
	// JSON has no word for what is not a finite number, and would call it null.
	if (typeof value !== 'object' || value === null) return String(value);
	const isList = Array.isArray(value);
	let text = isList ? '[' : '{';
	for (const key in value) {
		const item = (value as Readonly<Record<string, unknown>>)[key];
		if (text.length > room) break;
		if (item === undefined && !isList) continue;
		if (text.length > 1) text += ',';
		if (!isList) text += `${beginning(key, room)}:`;
		text += beginning(item, room - text.length);
	}
	return text + (isList ? ']' : '}');
};

/** Shows a value in an error message: strings quoted, long ones cut. Neither throws nor takes long, however deep or long the value. */
export const shown = (value: unknown): string =>
	cut(typeof value === 'string' ? `"${value.slice(0, LONGEST)}"` : beginning(value, LONGEST));

/**
 * Input that a person can put right: `place` is where it stands (a file and field, a step; the same in every
 * language), `slip` the rule that it breaks, with the values seen. It is never used for a fault of the program's own.
 */
export class BadInput extends Error {
	readonly place: string;

	constructor(
		place: string,
		readonly slip: Message
	) {
		const short = cut(place, LONGEST_PLACE);
		super(`${short}: ${slip.area}.${slip.key} ${beginning(slip.values, LONGEST_PLACE)}`);
		this.place = short;
		this.name = 'BadInput';
	}
}

/** The rule that bad input breaks, said to whoever sees the place before them. */
export const ruleWords = ({ slip }: BadInput, speech: Speech): string => speech.tell(slip);

/** The longest that a line about bad input is. */
const LONGEST_LINE = 399;

/** Bad input in one line: its place, where it has one, and the rule. */
export const slipWords = (error: BadInput, speech: Speech): string =>
	cut([error.place, ruleWords(error, speech)].filter(Boolean).join(': '), LONGEST_LINE);
