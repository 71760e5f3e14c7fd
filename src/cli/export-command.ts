import { mkdir } from 'node:fs/promises';
import path from 'node:path';
import { BadInput, slipWords } from '#shared/bad-input.ts';
import { englishIn } from '#shared/speech/english-for-now.ts';
import { didYouMean } from '#shared/nearest-name.ts';
import { fileName, fileNames } from '#exports/files/file-name.ts';
import { readBodyTable } from './body-table.ts';
import { exitCodeOf } from './exit-code.ts';
import { readExportOptions, type ExportOptions } from './export-options.ts';
import { exportSubject, type ExportSubject, type NamedPiece, type Request } from './export-subject.ts';
import { readInputFile } from './input-file.ts';
import { complain, writeOut } from './output.ts';
import { fontFile, writeWhole, writing } from './written-file.ts';
import type { Maker } from './edge-allowances.ts';

const EXPORT_USAGE = `Usage:
  square-across export GARMENT --body FILE.json --to FILE     a pattern at true scale, as .pdf, .svg, .dxf, .csv or .json
  square-across export GARMENT --bodies FILE.csv --to FOLDER  a file for each row, named after it
  square-across export METHOD --body FILE.json --to FILE      the same for a draft, which has no .dxf

  --as pdf|svg|dxf|csv|json   the kind of file, where the name does not say it (a folder: pdf)
  --apart                     each piece in a file of its own in the folder --to (svg; also --as pdf or dxf)
  --paper a4|letter|a3|a0|roll-60|roll-90   of a pdf (a4)
  --pieces front,back         only these pieces
  --scale full|half|quarter   of a pdf or svg, smaller for class work (full)
  --date 2026-01-31           the date that a pdf carries; the same input and date give the same bytes

The drawing file keeps to the layers of ASTM D6673 (withdrawn), from memory: no conformity is promised.
A row of a table that cannot be made is told on standard error, and the others are made; the exit code is then 2.
`;

/** The pieces that are wanted. Throws BadInput, before any body is worked, for what the subject cannot be or does not have. */
const wantedPieces = (
	{ id, formats, pieces }: ExportSubject,
	options: ExportOptions
): readonly NamedPiece[] => {
	const wanted = options.pieces;
	if (!formats.includes(options.format))
		throw new BadInput(
			'export',
			`${id} is a draft, and a ${options.format} file holds the pieces of a garment; take ${formats.join(', ')}`
		);
	if (pieces.length === 0 && (options.apart || wanted.length > 0))
		throw new BadInput('export', `${id} is a draft, which has no pieces to choose or to set apart`);
	const keys = pieces.map(({ key }) => key);
	const unknown = wanted.find((key) => !keys.includes(key));
	if (unknown !== undefined)
		throw new BadInput(
			'export',
			`there is no piece "${unknown}"${didYouMean(unknown, keys)}; there are ${keys.join(', ')}`
		);
	return wanted.length === 0 ? pieces : pieces.filter(({ key }) => wanted.includes(key));
};

const requestOf = ({ format, pieces, paper, scale, date }: ExportOptions): Request => ({
	format,
	pieces,
	paper,
	scale,
	date,
	font: fontFile
});

/** Writes what was asked for of one body: a file, or a folder with a file for each piece. */
const exportBody = async (
	subject: ExportSubject,
	maker: Maker,
	place: string,
	options: ExportOptions
): Promise<void> => {
	const { to } = options;
	const file = subject.work(maker, place);
	const request = requestOf(options);
	if (!options.apart) {
		const bytes = await file(request);
		await writeWhole(to, bytes);
		return;
	}
	await writing(to, () => mkdir(to, { recursive: true }));
	for (const piece of wantedPieces(subject, options)) {
		const bytes = await file({ ...request, pieces: [piece.key] });
		const own = path.join(to, `${fileName(piece.fileName)}.${options.format}`);
		await writeWhole(own, bytes);
	}
};

const exportOne = async (subject: ExportSubject, options: ExportOptions): Promise<void> => {
	const file = await readInputFile(options.input.file);
	await exportBody(subject, subject.read(file), file.place, options);
};

/** Writes what was asked for of every row. A row that cannot be made is told, and the others are made all the same. */
const exportMany = async (subject: ExportSubject, options: ExportOptions): Promise<void> => {
	const file = await readInputFile(options.input.file);
	const table = readBodyTable(file, subject);
	if (table.ignored !== undefined) complain(table.ignored);
	await writing(options.to, () => mkdir(options.to, { recursive: true }));
	const rows = [...table.rows()];
	const names = fileNames(rows.map(({ name }) => name));
	const ending = options.apart ? '' : `.${options.format}`;
	let refused = 0;
	for (const [i, row] of rows.entries()) {
		const to = path.join(options.to, `${names[i] ?? String(i + 1)}${ending}`);
		const place = `${file.place}: ${row.name}`;
		try {
			if ('problem' in row) throw new BadInput(place, row.problem);
			await exportBody(subject, { body: row.body, edges: {} }, place, { ...options, to });
			await writeOut(`${to}\n`);
		} catch (problem) {
			if (!(problem instanceof BadInput)) throw problem;
			complain('problem' in row ? row.problem : slipWords(problem, englishIn('cm')));
			refused++;
		}
	}
	if (refused > 0) throw new BadInput(file.place, `${refused} of ${rows.length} rows could not be made`);
};

/**
 * `square-across export GARMENT|METHOD --body FILE --to FILE`: writes a pattern or a draft at true scale, and gives the
 * exit code: 0 done, 2 for what a person can put right, told in one line; a row of a table has a line of its own.
 */
export const exportCommand = (words: readonly string[]): Promise<number> =>
	exitCodeOf(async () => {
		const options = readExportOptions(words);
		if (options === 'help') {
			await writeOut(EXPORT_USAGE);
			return;
		}
		const subject = await exportSubject(options.id);
		wantedPieces(subject, options);
		await (options.input.kind === 'body' ? exportOne : exportMany)(subject, options);
	});
