import path from 'node:path';
import { BadInput } from '#shared/bad-input.ts';
import { didYouMean } from '#shared/nearest-name.ts';
import { FORMATS, SCALES, type Format, type ScaleName } from '#exports/files/pattern-file.ts';
import { onlyOf, onlyOne, parsedWords, type Subject } from './options.ts';

/** What `square-across export` was asked to do. */
export interface ExportOptions {
	readonly id: string;
	readonly input: { readonly kind: 'body' | 'bodies'; readonly file: string };
	/** The file, or for a table of bodies the folder, that is written. */
	readonly to: string;
	readonly format: Format;
	readonly paper: string;
	readonly pieces: readonly string[];
	readonly scale: ScaleName;
	readonly date: Date;
}

const OPTIONS = {
	body: { type: 'string', multiple: true },
	bodies: { type: 'string', multiple: true },
	to: { type: 'string', multiple: true },
	as: { type: 'string', multiple: true },
	paper: { type: 'string', multiple: true },
	pieces: { type: 'string', multiple: true },
	scale: { type: 'string', multiple: true },
	date: { type: 'string', multiple: true },
	help: { type: 'boolean', short: 'h' }
} as const;

/** The date that files carry where none was given: the same for everybody, so that the same input gives the same bytes. */
const NO_DATE = '2000-01-01T00:00:00Z';

const isFormat = (text: string): text is Format => FORMATS.some((each) => each === text);
const isScale = (text: string): text is ScaleName => text in SCALES;

const readFormat = (to: string, as: string | undefined): Format => {
	const wanted = (as ?? path.extname(to).slice(1)).toLowerCase();
	if (isFormat(wanted)) return wanted;
	throw new BadInput(
		'export',
		as === undefined
			? `"${to}" does not end in .${FORMATS.join(', .')}; say --as ${FORMATS.join('|')}`
			: `there is no kind of file "${as}"${didYouMean(as, FORMATS)}; there are ${FORMATS.join(', ')}`
	);
};

const readScale = (text: string): ScaleName => {
	if (isScale(text)) return text;
	const scales = Object.keys(SCALES);
	throw new BadInput(
		'export',
		`there is no scale "${text}"${didYouMean(text, scales)}; there are ${scales.join(', ')}`
	);
};

const readDate = (text: string): Date => {
	const date = new Date(text);
	if (Number.isNaN(date.getTime()))
		throw new BadInput('export', `"${text}" is not a date such as 2026-01-31`);
	return date;
};

const GARMENT: Subject = { word: 'garment', ask: 'name the garment, such as linnet-dress' };

/** Reads the words after `square-across export`; 'help' where that was asked for. Throws BadInput. */
export const readExportOptions = (words: readonly string[]): ExportOptions | 'help' => {
	const { values, positionals } = parsedWords('export', OPTIONS, words);
	if (values.help) return 'help';
	const id = onlyOf('export', GARMENT, positionals);
	const one = (flag: Exclude<keyof typeof OPTIONS, 'help'>): string | undefined =>
		onlyOne('export', values[flag], `--${flag}`);
	const [body, bodies, to] = [one('body'), one('bodies'), one('to')];
	if (body !== undefined && bodies !== undefined)
		throw new BadInput('export', `give --body or --bodies, not both (${body}, ${bodies})`);
	const file = body ?? bodies;
	if (file === undefined)
		throw new BadInput('export', 'give --body FILE for one body, or --bodies FILE.csv for many');
	if (to === undefined)
		throw new BadInput('export', 'give --to FILE, such as dress.pdf, or for --bodies a folder');
	return {
		id,
		input: { kind: body === undefined ? 'bodies' : 'body', file },
		to,
		format: bodies === undefined ? readFormat(to, one('as')) : readFormat('', one('as') ?? 'pdf'),
		paper: one('paper') ?? 'a4',
		pieces: (one('pieces') ?? '').split(',').filter(Boolean),
		scale: readScale(one('scale') ?? 'full'),
		date: readDate(one('date') ?? NO_DATE)
	};
};
