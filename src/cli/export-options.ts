import path from 'node:path';
import { BadInput } from '#shared/bad-input.ts';
import { didYouMean } from '#shared/nearest-name.ts';
import { ALL_PAPERS, FORMATS, SCALES, type Format, type ScaleName } from '#exports/files/pattern-file.ts';
import { onlyOf, onlyOne, parsedWords, type Subject } from './options.ts';
import { NO_DATE } from './written-file.ts';

/** What `square-across export` was asked to do. */
export interface ExportOptions {
	/** The id of a garment or of a method. */
	readonly id: string;
	readonly input: { readonly kind: 'body' | 'bodies'; readonly file: string };
	/** The file that is written; a folder for a table of bodies, and where each piece has a file of its own. */
	readonly to: string;
	readonly format: Format;
	/** Whether each piece is a file of its own. */
	readonly apart: boolean;
	readonly paper: string;
	/** The keys of the pieces that are wanted; all where none is named. */
	readonly pieces: readonly string[];
	readonly scale: ScaleName;
	readonly date: Date;
}

const OPTIONS = {
	body: { type: 'string', multiple: true },
	bodies: { type: 'string', multiple: true },
	to: { type: 'string', multiple: true },
	as: { type: 'string', multiple: true },
	apart: { type: 'boolean' },
	paper: { type: 'string', multiple: true },
	pieces: { type: 'string', multiple: true },
	scale: { type: 'string', multiple: true },
	date: { type: 'string', multiple: true },
	help: { type: 'boolean', short: 'h' }
} as const;

/** Options that only some kinds of file take; an option without an effect would be a surprise on paper. */
const ONLY_FOR: Readonly<Partial<Record<keyof typeof OPTIONS, readonly Format[]>>> = {
	apart: ['pdf', 'svg', 'dxf'],
	paper: ['pdf'],
	scale: ['pdf', 'svg'],
	date: ['pdf']
};

const isFormat = (text: string): text is Format => FORMATS.some((each) => each === text);
const isScale = (text: string): text is ScaleName => Object.hasOwn(SCALES, text);

const bad = (text: string): BadInput => new BadInput('export', text);

/** The one of these names that a text is, whatever its capitals. Throws BadInput with the nearest. */
const oneOf = (word: string, names: readonly string[], text: string): string => {
	const name = text.toLowerCase();
	if (names.includes(name)) return name;
	throw bad(`there is no ${word} "${text}"${didYouMean(name, names)}; there are ${names.join(', ')}`);
};

const formatOf = (text: string): Format => {
	const name = oneOf('kind of file', FORMATS, text);
	return isFormat(name) ? name : 'pdf';
};

/** The kind of file that a file's name ends in. */
const endingOf = (to: string): Format | undefined => {
	const ending = path.extname(to).slice(1).toLowerCase();
	return isFormat(ending) ? ending : undefined;
};

const fileFormat = (to: string, as: string | undefined): Format => {
	const [wanted, ending] = [as === undefined ? undefined : formatOf(as), endingOf(to)];
	if (wanted && ending && wanted !== ending) throw bad(`"${to}" ends in .${ending}, but --as says ${wanted}`);
	const format = wanted ?? ending;
	if (format) return format;
	throw bad(`"${to}" does not end in .${FORMATS.join(', .')}; say --as ${FORMATS.join('|')}`);
};

const folderFormat = (to: string, as: string | undefined, usual: Format): Format => {
	const ending = endingOf(to);
	if (ending)
		throw bad(`many files go into a folder, and "${to}" is a file's name; say --to FOLDER --as ${ending}`);
	return as === undefined ? usual : formatOf(as);
};

const readScale = (text: string): ScaleName => {
	const name = oneOf('scale', Object.keys(SCALES), text);
	return isScale(name) ? name : 'full';
};

/** A day of the calendar, as its midnight in Greenwich: the same on every machine. */
const readDate = (text: string): Date => {
	const date = new Date(`${text}T00:00:00Z`);
	if (/^\d{4}-\d\d-\d\d$/.test(text) && !Number.isNaN(date.getTime()) && date.toISOString().startsWith(text))
		return date;
	throw bad(`"${text}" is not a date such as 2026-01-31`);
};

const readPieces = (text: string | undefined): readonly string[] => {
	if (text === undefined) return [];
	const pieces = text
		.split(',')
		.map((each) => each.trim())
		.filter(Boolean);
	if (pieces.length === 0) throw bad('no piece is named after --pieces, so there is nothing to draw');
	return pieces;
};

const SUBJECT: Subject = { word: 'garment', ask: 'name the garment or the method, such as linnet-dress' };

/** Which bodies, from where. */
const readInput = (body: string | undefined, bodies: string | undefined): ExportOptions['input'] => {
	if (body !== undefined && bodies !== undefined)
		throw bad(`give --body or --bodies, not both (${body}, ${bodies})`);
	if (body !== undefined) return { kind: 'body', file: body };
	if (bodies !== undefined) return { kind: 'bodies', file: bodies };
	throw bad('give --body FILE for one body, or --bodies FILE.csv for many');
};

/** Reads the words after `square-across export`; 'help' where that was asked for. Throws BadInput. */
export const readExportOptions = (words: readonly string[]): ExportOptions | 'help' => {
	const { values, positionals } = parsedWords('export', OPTIONS, words);
	if (values.help) return 'help';
	const id = onlyOf('export', SUBJECT, positionals);
	const one = (flag: Exclude<keyof typeof OPTIONS, 'help' | 'apart'>): string | undefined =>
		onlyOne('export', values[flag], `--${flag}`);
	const input = readInput(one('body'), one('bodies'));
	const [to, as, apart] = [one('to'), one('as'), values.apart ?? false];
	if (to === undefined || to === '')
		throw bad('give --to FILE, such as dress.pdf, or for many files a folder');
	const format =
		input.kind === 'body' && !apart ? fileFormat(to, as) : folderFormat(to, as, apart ? 'svg' : 'pdf');
	for (const [flag, formats] of Object.entries(ONLY_FOR))
		if (flag in values && !formats.includes(format))
			throw bad(`--${flag} is for ${formats.join(', ')}, not for ${format}`);
	return {
		id,
		input,
		to,
		format,
		apart,
		paper: oneOf(
			'paper',
			ALL_PAPERS.map((each) => each.id),
			one('paper') ?? 'a4'
		),
		pieces: readPieces(one('pieces')),
		scale: readScale(one('scale') ?? 'full'),
		date: readDate(one('date') ?? NO_DATE)
	};
};
