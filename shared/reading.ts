import { BadInput, cut, shown } from './bad-input.ts';
import { nearestName } from './nearest-name.ts';
import { z } from './shape.ts';
import type { Kind } from './speech/en/input.ts';
import { message, type Message } from './speech/message.ts';
import { MM_PER, mm, spellFractions, UNIT_WORDS, type Mm, type Unit } from './units.ts';

/** How input of any kind is read: its shape, the names in it, the lengths in it. What cannot be used is a BadInput at its place. */

/** What is wrong with a name that nothing has: the nearest is named, and all where `known` may be chosen from. */
export const unknownName = (
	kind: Kind,
	name: string,
	names: Iterable<string>,
	listed?: readonly string[]
): Message =>
	message('input', 'unknown', {
		kind,
		name: cut(name),
		near: nearestName(name, names),
		...(listed ? { known: listed } : {})
	});

/** The same where the place ends in the name. */
export const unknownHere = (kind: Kind, name: string, names: Iterable<string>): Message =>
	message('input', 'unknown', { kind, near: nearestName(name, names) });

/** One of the names that there are. Throws BadInput with the nearest. */
export const oneOf = <T extends string>(
	kind: Kind,
	name: string,
	names: readonly T[],
	place: string,
	listed?: readonly string[]
): T => {
	const found = names.find((each) => each === name);
	if (found === undefined) throw new BadInput(place, unknownName(kind, name, names, listed));
	return found;
};

/** No written length has more signs; the patterns below would take long over many. */
const LONGEST = 60;

/**
 * Reads the number part of a written length: `96`, `96.5`, `96,5`, `37 3/4`, `37-3/4`, `3/4`.
 * A comma is a decimal comma. Returns undefined where the text is not such a number.
 */
const numberIn = (text: string): number | undefined => {
	const sign = /^[-−]/.test(text) ? -1 : 1;
	const bare = text.replace(/^[-−+]\s*/, '');
	const mixed = /^(?:(\d+)[\s-]+)?(\d+)\s*\/\s*(\d+)$/.exec(bare);
	if (mixed) {
		const [, whole = '0', top = '', bottom = ''] = mixed;
		return Number(bottom) === 0 ? undefined : sign * (Number(whole) + Number(top) / Number(bottom));
	}
	return /^(\d+([.,]\d*)?|[.,]\d+)$/.test(bare) ? sign * Number(bare.replace(',', '.')) : undefined;
};

/**
 * Reads a written length. `unit` is what a bare number is taken to be in; a unit written after the
 * number wins. Throws BadInput at `place`, naming what was seen, where it is not a length.
 */
export const parseLength = (text: string, unit: Unit, place = ''): Mm => {
	const bare = text.trim();
	const parts =
		bare.length > LONGEST
			? null
			: /^(.*?)\s*(mm|cm|inches|inch|in|"|″|”|'')?$/i.exec(spellFractions(bare).trim());
	const number = numberIn((parts?.[1] ?? '').trim());
	if (number === undefined || !Number.isFinite(number))
		throw new BadInput(place, message('input', 'notLength', { seen: shown(text) }));
	const written = UNIT_WORDS[(parts?.[2] ?? '').toLowerCase()] ?? unit;
	return mm(number * MM_PER[written]);
};

/** Reads a length as a person or a file wrote it; a bare number is in `unit`. Throws BadInput at `place`. */
export const readLength = (value: unknown, unit: Unit, place: string): Mm => {
	if (typeof value !== 'string' && typeof value !== 'number')
		throw new BadInput(place, message('input', 'notWritten', { seen: shown(value) }));
	return parseLength(String(value), unit, place);
};

/** Reads a plain number out of a text. Throws BadInput at `place`. */
export const readNumber = (text: string, place: string): number => {
	const value = text.trim() === '' ? Number.NaN : Number(text);
	if (!Number.isFinite(value))
		throw new BadInput(place, message('input', 'notNumber', { seen: shown(text) }));
	return value;
};

type Path = readonly PropertyKey[];

/** What stands at a path of parsed data. */
const at = (input: unknown, path: Path): unknown =>
	path.reduce<unknown>(
		(value, part) =>
			value && typeof value === 'object' ? (value as Record<PropertyKey, unknown>)[part] : undefined,
		input
	);

const typeOf = (value: unknown): string => {
	if (typeof value === 'number') return Number.isFinite(value) ? 'number' : String(value);
	if (value === null) return 'null';
	return Array.isArray(value) ? 'array' : typeof value;
};

/** Rules of shapes that have a sentence of their own: the schema gives its key instead of words. */
const OWN_RULES = ['pointName', 'lineName', 'pieceName', 'takenName', 'edgeName'] as const;

/** What is wrong with the shape of some data, as a sentence of ours: the validator's own come in English alone. */
export const shapeSlip = (issue: z.core.$ZodIssue, input: unknown): Message => {
	const own = OWN_RULES.find((each) => each === issue.message);
	if (own) return message('reading', own);
	switch (issue.code) {
		case 'invalid_type':
			return message('shapes', 'wrongType', {
				expected: issue.expected,
				received: typeOf(at(input, issue.path))
			});
		case 'invalid_value':
			return message('shapes', 'wrongValue', {
				options: issue.values.map((each) => (typeof each === 'string' ? `"${each}"` : String(each)))
			});
		case 'too_big':
			return message('shapes', 'tooBig', {
				origin: issue.origin,
				limit: Number(issue.maximum),
				inclusive: issue.inclusive ?? false
			});
		case 'too_small':
			return message('shapes', 'tooSmall', {
				origin: issue.origin,
				limit: Number(issue.minimum),
				inclusive: issue.inclusive ?? false
			});
		case 'invalid_format':
			return message('shapes', 'wrongPattern', { pattern: issue.pattern ?? issue.format });
		case 'unrecognized_keys':
			return message('shapes', 'unknownKeys', { keys: issue.keys.slice(0, 3).map((key) => `"${cut(key)}"`) });
		default:
			return message('shapes', 'invalid');
	}
};

/** Where in the data something stands: its path, in one word. */
export type PathWords = (path: Path) => string;

/**
 * Data of a shape. Throws BadInput where it has another: `place` and the path name where, and the path is `whole` where
 * all of it is wrong; `words` may say a path in another way.
 */
export const parsed = <S extends z.core.$ZodType>(
	schema: S,
	input: unknown,
	place: string,
	whole: string,
	words: PathWords = (path) => path.map(String).join('.')
): z.core.output<S> => {
	const result = z.core.safeParse(schema, input);
	if (result.success) return result.data;
	const [issue] = result.error.issues;
	if (!issue) throw new BadInput(`${place}${whole}`, message('shapes', 'invalid'));
	const slip = shapeSlip(issue, input);
	throw new BadInput(
		`${place}${words(issue.path) || whole}`,
		message('shapes', 'withSeen', { slip, seen: shown(at(input, issue.path)) })
	);
};
