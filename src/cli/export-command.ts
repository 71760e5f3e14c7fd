import { mkdir } from 'node:fs/promises';
import path from 'node:path';
import { BadInput, slipWords } from '#shared/bad-input.ts';
import { oneOf } from '#shared/reading.ts';
import { message } from '#shared/speech/message.ts';
import type { Speech } from '#shared/speech/speech.ts';
import { fileName, fileNames } from '#exports/files/file-name.ts';
import { readBodyTable, type BodyRow } from './body-table.ts';
import type { Command } from './exit-code.ts';
import { readExportOptions, type ExportOptions } from './export-options.ts';
import { subjectOf } from './find-subject.ts';
import { lessonCourse } from './lesson-course.ts';
import type { NamedPiece, Request, Subject } from './subject.ts';
import { openLongFile } from './input-file.ts';
import { readOne } from './one-body.ts';
import { complain, writeOut } from './output.ts';
import { fontFile, writeWhole, writing } from './written-file.ts';
import type { Maker } from './edge-allowances.ts';

/** The pieces that are wanted. Throws BadInput, before any body is worked, for what the subject cannot be or does not have. */
const wantedPieces = ({ id, formats, pieces }: Subject, options: ExportOptions): readonly NamedPiece[] => {
	const wanted = options.pieces;
	if (!formats.includes(options.format))
		throw new BadInput('export', message('command', 'isDraft', { id, format: options.format, formats }));
	if (pieces.length === 0 && (options.apart || wanted.length > 0))
		throw new BadInput('export', message('command', 'hasNoPieces', { id }));
	const keys = pieces.map(({ key }) => key);
	for (const key of wanted) oneOf('piece', key, keys, 'export', keys);
	return wanted.length === 0 ? pieces : pieces.filter(({ key }) => wanted.includes(key));
};

/** The toile of what was asked for. Throws BadInput, naming what can be one, where it has none. */
const toileOf = ({ id, toile }: Subject, { language }: Speech): Subject => {
	if (toile) return toile();
	const course = lessonCourse(language);
	const ids = course.garmentIds.filter((each) => course.garment(each)?.toile);
	throw new BadInput('export', message('command', 'noToile', { id, ids }));
};

const requestOf = ({ format, pieces, paper, scale, date, dated }: ExportOptions): Request => ({
	format,
	pieces,
	paper,
	scale,
	date,
	dated,
	font: fontFile
});

/** Writes what was asked for of one body: a file, or a folder with a file for each piece. */
const exportBody = async (
	subject: Subject,
	maker: Maker,
	place: string,
	options: ExportOptions
): Promise<void> => {
	const { to } = options;
	const work = subject.work(maker, place);
	const request = requestOf(options);
	if (!options.apart) {
		const bytes = await work.file(request);
		await writeWhole(to, bytes);
		return;
	}
	await writing(to, () => mkdir(to, { recursive: true }));
	for (const piece of wantedPieces(subject, options)) {
		const bytes = await work.file({ ...request, pieces: [piece.key] });
		const own = path.join(to, `${fileName(piece.fileName)}.${options.format}`);
		await writeWhole(own, bytes);
	}
};

/** Writes what was asked for of every row. A row that cannot be made is told, and the others are made all the same. */
const exportMany = async (
	name: string,
	subject: Subject,
	options: ExportOptions,
	speech: Speech
): Promise<void> => {
	const file = await openLongFile(name, speech);
	const table = await readBodyTable(file, subject, speech);
	if (table.ignored !== undefined) complain(table.ignored);
	await writing(options.to, () => mkdir(options.to, { recursive: true }));
	const rows: BodyRow[] = [];
	for await (const row of table.rows()) rows.push(row);
	const names = fileNames(rows.map(({ name }) => name));
	const ending = options.apart ? '' : `.${options.format}`;
	let failed = 0;
	for (const [i, row] of rows.entries()) {
		const to = path.join(options.to, `${names[i] ?? String(i + 1)}${ending}`);
		const place = `${file.place}: ${row.name}`;
		try {
			if ('problem' in row) throw row.problem;
			await exportBody(subject, { body: row.body, edges: {} }, place, { ...options, to });
			await writeOut(`${to}\n`);
		} catch (problem) {
			if (!(problem instanceof BadInput)) throw problem;
			complain(slipWords(problem, speech));
			failed++;
		}
	}
	if (failed > 0)
		throw new BadInput(file.place, message('command', 'rowsFailed', { failed, rows: rows.length }));
};

/** `square-across export GARMENT|METHOD --body FILE --to FILE`: writes a pattern or a draft at true scale; a row of a table has a line of its own. */
export const exportCommand: Command = async (words, speech) => {
	const options = readExportOptions(words);
	if (options === 'help') {
		await writeOut(speech.words.command.usage({ of: 'export' }));
		return;
	}
	const found = await subjectOf(
		lessonCourse(speech.language),
		'garmentOrMethod',
		options.id,
		'export',
		speech
	);
	const subject = options.toile ? toileOf(found, speech) : found;
	wantedPieces(subject, options);
	const { input } = options;
	if (input.kind === 'sizes') {
		const { exportSizes } = await import('./export-sizes.ts');
		await exportSizes(input, subject, options, requestOf(options), speech);
		return;
	}
	if (input.kind === 'bodies') {
		await exportMany(input.file, subject, options, speech);
		return;
	}
	const { maker, place } = await readOne(input, subject, speech);
	await exportBody(subject, maker, place, options);
};
