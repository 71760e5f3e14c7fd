import path from 'node:path';
import { BadInput, cut } from '#shared/bad-input.ts';
import { oneOf } from '#shared/reading.ts';
import { message, type Message } from '#shared/speech/message.ts';
import { ALL_PAPERS, FORMATS, SCALES, type Format, type ScaleName } from '#exports/files/pattern-file.ts';
import { bodiesInput, FOR_BODIES, onlyOf, onlyOne, parsedWords, type BodiesInput } from './options.ts';
import { NO_DATE } from './written-file.ts';

/** Several standard sizes on one sheet, and a body's file where one of them is an own body. */
export interface SizesInput {
	readonly kind: 'sizes';
	readonly text: string;
	readonly body: string | undefined;
}

/** What `square-across export` was asked to do. */
export interface ExportOptions {
	/** The id of a garment or of a method. */
	readonly id: string;
	readonly input: BodiesInput | SizesInput;
	/** The file that is written; a folder for a table of bodies, and where each piece has a file of its own. */
	readonly to: string;
	readonly format: Format;
	/** Whether each piece is a file of its own. */
	readonly apart: boolean;
	/** Whether it is cut in cheap cloth, to be tried on. */
	readonly toile: boolean;
	readonly paper: string;
	/** The keys of the pieces that are wanted; all where none is named. */
	readonly pieces: readonly string[];
	readonly scale: ScaleName;
	readonly date: Date;
	/** Whether the date was said. */
	readonly dated: boolean;
}

const OPTIONS = {
	...FOR_BODIES,
	sizes: { type: 'string', multiple: true },
	to: { type: 'string', multiple: true },
	as: { type: 'string', multiple: true },
	apart: { type: 'boolean' },
	toile: { type: 'boolean' },
	paper: { type: 'string', multiple: true },
	pieces: { type: 'string', multiple: true },
	scale: { type: 'string', multiple: true },
	date: { type: 'string', multiple: true }
} as const;

/** Options that only some kinds of file take; an option without an effect would be a surprise on paper. */
const ONLY_FOR: Readonly<Partial<Record<keyof typeof OPTIONS, readonly Format[]>>> = {
	apart: ['pdf', 'svg', 'dxf'],
	paper: ['pdf'],
	scale: ['pdf', 'svg'],
	date: ['pdf']
};

const isFormat = (text: string): text is Format => FORMATS.some((each) => each === text);

const bad = (slip: Message): BadInput => new BadInput('export', slip);

/** The one of these names that a text is, whatever its capitals. Throws BadInput with the nearest. */
const named = <T extends string>(kind: 'format' | 'paper' | 'scale', text: string, names: readonly T[]): T =>
	names.find((each) => each === text.toLowerCase()) ?? oneOf(kind, text, names, 'export', names);

/** The kind of file that a file's name ends in. */
const endingOf = (to: string): Format | undefined => {
	const ending = path.extname(to).slice(1).toLowerCase();
	return isFormat(ending) ? ending : undefined;
};

const fileFormat = (to: string, as: string | undefined): Format => {
	const [wanted, ending] = [as === undefined ? undefined : named('format', as, FORMATS), endingOf(to)];
	if (wanted && ending && wanted !== ending)
		throw bad(message('command', 'endsOther', { to, ending, format: wanted }));
	const format = wanted ?? ending;
	if (format) return format;
	throw bad(message('command', 'noEnding', { to, formats: FORMATS }));
};

const folderFormat = (to: string, as: string | undefined, usual: Format): Format => {
	const ending = endingOf(to);
	if (ending) throw bad(message('command', 'isFileName', { to, ending }));
	return as === undefined ? usual : named('format', as, FORMATS);
};

/** A day of the calendar, as its midnight in Greenwich: the same on every machine. */
const readDate = (text: string): Date => {
	const date = new Date(`${text}T00:00:00Z`);
	if (/^\d{4}-\d\d-\d\d$/.test(text) && !Number.isNaN(date.getTime()) && date.toISOString().startsWith(text))
		return date;
	throw bad(message('command', 'notDate', { text: cut(text) }));
};

const readPieces = (text: string | undefined): readonly string[] => {
	if (text === undefined) return [];
	const pieces = text
		.split(',')
		.map((each) => each.trim())
		.filter(Boolean);
	if (pieces.length === 0) throw bad(message('command', 'noPieceNamed'));
	return pieces;
};

/** Several sizes, and at most one body of one's own. Throws BadInput for what does not go with them. */
const sizesInput = (
	text: string,
	values: {
		readonly body?: readonly string[];
		readonly bodies?: unknown;
		readonly size?: unknown;
		readonly apart?: boolean;
		readonly toile?: boolean;
	}
): SizesInput => {
	const other = (['bodies', 'size', 'apart', 'toile'] as const).find((flag) => values[flag] !== undefined);
	if (other) throw bad(message('nested', 'notWith', { flag: `--${other}` }));
	return { kind: 'sizes', text, body: onlyOne('export', values.body, '--body') };
};

/** Reads the words after `square-across export`; 'help' where that was asked for. Throws BadInput. */
export const readExportOptions = (words: readonly string[]): ExportOptions | 'help' => {
	const { values, positionals } = parsedWords('export', OPTIONS, words);
	if (values.help) return 'help';
	const id = onlyOf({ command: 'export', kind: 'garment' }, positionals);
	const one = (
		flag: Exclude<keyof typeof OPTIONS, 'help' | 'apart' | 'toile' | 'body' | 'bodies' | 'size'>
	): string | undefined => onlyOne('export', values[flag], `--${flag}`);
	const sizes = one('sizes');
	const input = sizes === undefined ? bodiesInput('export', values) : sizesInput(sizes, values);
	const [to, as, apart] = [one('to'), one('as'), values.apart ?? false];
	if (to === undefined || to === '') throw bad(message('command', 'giveTo'));
	const format =
		input.kind !== 'bodies' && !apart ? fileFormat(to, as) : folderFormat(to, as, apart ? 'svg' : 'pdf');
	for (const [flag, formats] of Object.entries(ONLY_FOR))
		if (flag in values && !formats.includes(format))
			throw bad(message('command', 'onlyFor', { flag: `--${flag}`, formats, format }));
	return {
		id,
		input,
		to,
		format,
		apart,
		toile: values.toile ?? false,
		paper: named(
			'paper',
			one('paper') ?? 'a4',
			ALL_PAPERS.map((each) => each.id)
		),
		pieces: readPieces(one('pieces')),
		scale: named('scale', one('scale') ?? 'full', Object.keys(SCALES) as ScaleName[]),
		date: readDate(one('date') ?? NO_DATE),
		dated: values.date !== undefined
	};
};
