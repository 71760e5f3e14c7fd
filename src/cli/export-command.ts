import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import path from 'node:path';
import { BadInput } from '#shared/bad-input.ts';
import type { Body } from '#shared/body.ts';
import { fileNames } from '#exports/files/file-name.ts';
import { patternFile } from '#exports/files/pattern-file.ts';
import type { Garment } from '#garment/garment.ts';
import { makePattern, type Choices } from '#garment/pattern.ts';
import { readBodyTable } from './body-table.ts';
import { readMaker } from './edge-allowances.ts';
import { exitCodeOf } from './exit-code.ts';
import { readExportOptions, type ExportOptions } from './export-options.ts';
import { garmentOf } from './garment-files.ts';
import { readInputFile } from './input-file.ts';
import { complain, writeOut } from './output.ts';
import { checkComplete, reasons } from './refusals.ts';

const EXPORT_USAGE = `Usage:
  square-across export GARMENT --body FILE.json --to FILE     a pattern at true scale, as .pdf, .svg, .dxf, .csv or .json
  square-across export GARMENT --bodies FILE.csv --to FOLDER  a file for each row, named after it

  --as pdf|svg|dxf|csv|json   the kind of file, where the name does not say it
  --paper a4|letter|a3|a0|roll-60|roll-90   (a4)
  --pieces front,back         only these pieces
  --scale full|half|quarter   smaller for class work (full)
  --date 2026-01-31           the date that a PDF carries; the same input and date give the same bytes

The drawing file keeps to the layers of ASTM D6673 (withdrawn), from memory: no conformity is promised.
`;

/** The typeface that is put into PDF files: the lessons' own. */
const fontFile = (): Promise<Uint8Array> =>
	readFile(
		createRequire(import.meta.url).resolve('@fontsource/literata/files/literata-latin-400-normal.woff')
	);

/** Why a file could not be written, for the cases that a person can put right. */
const REASONS: Readonly<Record<string, string>> = {
	ENOENT: 'there is no such folder',
	EISDIR: 'this is a folder, not a file',
	ENOTDIR: 'a part of this path is not a folder',
	EEXIST: 'this is a file, not a folder',
	EACCES: 'this user may not write here'
};

const telling = async <T>(place: string, write: () => Promise<T>): Promise<T> => {
	try {
		return await write();
	} catch (problem) {
		const reason = problem instanceof Error && 'code' in problem ? REASONS[String(problem.code)] : undefined;
		if (reason === undefined) throw problem;
		throw new BadInput(place, reason);
	}
};

const bytesFor = async (
	garment: Garment,
	body: Body,
	edges: Choices['edges'],
	place: string,
	{ format, pieces, paper, scale, date }: ExportOptions
): Promise<Uint8Array> => {
	checkComplete(garment, body, place);
	const work = makePattern(garment, body, { allowances: {}, edges });
	if (work.kind === 'refused') throw new BadInput(place, reasons(work.refusals, body));
	return patternFile(garment, work.pattern, {
		format,
		pieces,
		paper,
		scale,
		date,
		unit: body.unit,
		font: fontFile
	});
};

const exportOne = async (garment: Garment, options: ExportOptions): Promise<void> => {
	const file = await readInputFile(options.input.file);
	const { body, edges } = readMaker(file, garment);
	const bytes = await bytesFor(garment, body, edges, file.place, options);
	await telling(options.to, () => writeFile(options.to, bytes));
};

/** A row that cannot be made is told, and the others are made all the same. */
const exportMany = async (garment: Garment, options: ExportOptions): Promise<void> => {
	const file = await readInputFile(options.input.file);
	const table = readBodyTable(file, garment);
	if (table.ignored !== undefined) complain(table.ignored);
	await telling(options.to, () => mkdir(options.to, { recursive: true }));
	const rows = [...table.rows()];
	const names = fileNames(rows.map(({ name }) => name));
	for (const [i, row] of rows.entries()) {
		const place = `${file.place}: ${row.name}`;
		const to = path.join(options.to, `${names[i] ?? 'pattern'}.${options.format}`);
		try {
			if ('problem' in row) throw new BadInput(place, row.problem);
			const bytes = await bytesFor(garment, row.body, {}, place, options);
			await telling(to, () => writeFile(to, bytes));
			await writeOut(`${to}\n`);
		} catch (problem) {
			if (!(problem instanceof BadInput)) throw problem;
			complain(problem.message);
		}
	}
};

/**
 * `square-across export GARMENT --body FILE --to FILE`: writes a garment's pattern at true scale, and gives the exit code: 0
 * done, 2 for what a person can put right, told in one line.
 */
export const exportCommand = (words: readonly string[]): Promise<number> =>
	exitCodeOf(async () => {
		const options = readExportOptions(words);
		if (options === 'help') {
			await writeOut(EXPORT_USAGE);
			return;
		}
		const garment = await garmentOf(options.id, 'export');
		await (options.input.kind === 'body' ? exportOne : exportMany)(garment, options);
	});
