import { pipeline, Readable } from 'node:stream';
import { CsvError, parse as parser } from 'csv-parse';
import type { Allowance } from '#shared/allowances.ts';
import { BadInput, cut, shown } from '#shared/bad-input.ts';
import { checkUnit, readAllowance, readMeasurement, type Body } from '#shared/body.ts';
import {
	isMeasurementKey,
	MEASUREMENT_KEYS,
	measurementNow,
	type MeasurementKey
} from '#shared/measurements.ts';
import { nearestName } from '#shared/nearest-name.ts';
import { message } from '#shared/speech/message.ts';
import type { Speech } from '#shared/speech/speech.ts';
import type { Mm, Unit } from '#shared/units.ts';
import type { LongFile } from './input-file.ts';
import { tellFormer } from './former-names.ts';

/** A row of a table: a body, or what is wrong with the row. */
export type BodyRow =
	{ readonly name: string; readonly body: Body } | { readonly name: string; readonly problem: BadInput };

/** A table of bodies. `ignored` is one line about columns of no known name, where there are any. */
export interface BodyTable {
	readonly ignored: string | undefined;
	rows(): AsyncIterable<BodyRow>;
}

/** What a table is read for: the measurements that it must have, and the allowances that it may have. */
export interface Wanted {
	readonly id: string;
	readonly measurements: readonly MeasurementKey[];
	readonly allowances: readonly Allowance[];
}

interface Line {
	readonly cells: readonly string[];
	/** The line of the file on which the row ends. */
	readonly line: number;
}

const UNITS: readonly string[] = ['cm', 'mm', 'in'] satisfies Unit[];
/** Columns that are neither measurements nor allowances. */
const OTHERS: readonly string[] = ['name', 'id', 'unit', 'note', 'about'];

const isUnit = (text: string): text is Unit => UNITS.includes(text);

/** How a table is parted that has this first line. Inch marks stand in cells unquoted, so loose quotes are let be. */
export const partedBy = (firstLine: string) => ({
	// A spreadsheet whose decimal sign is a comma parts its cells with semicolons; a heading holds neither sign.
	delimiter: firstLine.includes(';') ? ';' : ',',
	record_delimiter: ['\r\n', '\n', '\r'],
	relax_column_count: true,
	relax_quotes: true,
	skip_empty_lines: true,
	skip_records_with_empty_values: true,
	trim: true,
	info: true
});

const firstLineOf = async (file: LongFile): Promise<string> => {
	let line = '';
	for await (const piece of file.pieces()) {
		const text = piece.toString('latin1');
		line += text;
		if (/[\r\n]/.test(text)) break;
	}
	return /^[^\r\n]*/.exec(line)?.[0] ?? '';
};

/** The records of a table one after the other, the heading first: however long the table, few are held at once. Throws BadInput where it cannot be parted. */
async function* linesOf(file: LongFile, firstLine: string): AsyncIterable<Line> {
	const records = parser(partedBy(firstLine));
	// Whoever takes the records is told of what goes wrong on the way here.
	pipeline(Readable.from(file.pieces()), records, () => undefined);
	try {
		for await (const { record, info } of records as AsyncIterable<{
			readonly record: readonly string[];
			readonly info: { readonly lines: number };
		}>)
			yield { cells: record, line: info.lines };
	} catch (problem) {
		if (problem instanceof CsvError)
			throw new BadInput(file.place, message('command', 'notTable', { problem: problem.message }));
		throw problem;
	}
}

/** A table that was gone through once, so that one that cannot be parted is refused before any row is worked. */
interface Overview {
	readonly firstLine: string;
	readonly heading: readonly string[] | undefined;
	/** How many rows follow the heading. */
	readonly rows: number;
}

const overview = async (file: LongFile): Promise<Overview> => {
	const firstLine = await firstLineOf(file);
	let heading: readonly string[] | undefined;
	let records = 0;
	for await (const { cells } of linesOf(file, firstLine)) {
		heading ??= cells;
		records += 1;
	}
	return { firstLine, heading, rows: records - 1 };
};

const checkColumns = (columns: readonly string[], wanted: Wanted, place: string, speech: Speech): void => {
	const twice = columns.find((column, i) => column !== '' && columns.indexOf(column) !== i);
	if (twice !== undefined) throw new BadInput(place, message('command', 'twoColumns', { name: cut(twice) }));
	const missing = wanted.measurements.filter((key) => !columns.includes(key));
	const [first] = missing;
	if (first === undefined) return;
	const spare = columns.filter((column) => !isMeasurementKey(column) && !OTHERS.includes(column));
	throw new BadInput(
		`${place}: ${speech.words.command.columns({ names: missing })}`,
		message('command', 'missingColumns', {
			id: wanted.id,
			count: missing.length,
			near: missing.length === 1 ? nearestName(first, spare) : undefined,
			needed: wanted.measurements
		})
	);
};

/** How many columns that are not known are named. */
const NAMED = 4;

const ignoredLine = (
	columns: readonly string[],
	known: readonly string[],
	place: string,
	speech: Speech
): string | undefined => {
	const unknown = columns.filter((column) => column !== '' && !known.includes(column));
	if (unknown.length === 0) return undefined;
	const named = unknown
		.slice(0, NAMED)
		.map((column) => ({ name: shown(column), near: nearestName(column, known) }));
	return `${place}: ${speech.words.command.ignored({ columns: named, more: unknown.length - named.length })}`;
};

/** What every row of a table is read with. */
interface Reading {
	readonly columns: readonly string[];
	readonly wanted: Wanted;
	readonly speech: Speech;
}

/** A decimal comma without quotes makes two cells of one, and would shift all after it. */
const checkWidth = (cells: readonly string[], { columns }: Reading, place: string): void => {
	const extra = cells.slice(columns.length).filter((cell) => cell !== '');
	if (extra.length === 0) return;
	const [count, headings] = [cells.length, columns.length];
	throw new BadInput(place, message('command', 'tooWide', { cells: count, headings }));
};

const unitOf = (written: string, place: string): Unit => {
	if (written === '') return 'cm';
	if (isUnit(written)) return written;
	throw new BadInput(`${place}unit`, message('command', 'notUnit', { seen: shown(written) }));
};

const bodyOf = (
	name: string,
	cells: readonly string[],
	{ columns, wanted }: Reading,
	place: string
): Body => {
	const unit = unitOf(cells[columns.indexOf('unit')] ?? '', place);
	const measurements: Partial<Record<MeasurementKey, Mm>> = {};
	const allowances: Record<string, number> = {};
	for (const [i, column] of columns.entries()) {
		const cell = cells[i] ?? '';
		if (cell === '') {
			const needed = wanted.measurements.some((key) => key === column);
			if (needed) throw new BadInput(place + column, message('command', 'emptyCell', { id: wanted.id }));
		} else if (isMeasurementKey(column)) {
			measurements[column] = readMeasurement(column, cell, unit, place);
		} else if (wanted.allowances.some(({ key }) => key === column)) {
			allowances[column] = readAllowance(column, cell, unit, wanted.allowances, place);
		}
	}
	checkUnit(measurements, unit, `${place}unit`);
	return { name, unit, measurements, allowances };
};

/** Each row is read on its own: what is wrong with one says nothing of the others. */
const readRow = ({ cells, line }: Line, number: number, reading: Reading, file: string): BodyRow => {
	const cell = (column: string): string => cells[reading.columns.indexOf(column)] ?? '';
	const name = cell('name') || cell('id') || String(number);
	const { words } = reading.speech;
	const place = `${file}: ${words.command.row({ number, line })}`;
	try {
		checkWidth(cells, reading, place);
		return {
			name,
			body: bodyOf(name, cells, reading, `${place}, ${words.command.columns({ names: [''] })}`)
		};
	} catch (error) {
		if (error instanceof BadInput) return { name, problem: error };
		throw error;
	}
};

/**
 * Reads a CSV table of bodies: a heading of measurement and allowance keys, then a body a row, in
 * centimetres unless a column `unit` says otherwise. Throws BadInput where the whole table is of no
 * use: empty, malformed, or without a column that is wanted.
 */
export const readBodyTable = async (file: LongFile, wanted: Wanted, speech: Speech): Promise<BodyTable> => {
	const { place } = file;
	const { firstLine, heading, rows } = await overview(file);
	if (!heading) throw new BadInput(place, message('command', 'emptyFile'));
	const columns = heading.map(measurementNow);
	tellFormer(Object.fromEntries(heading.map((name) => [name, ''])), place, speech);
	checkColumns(columns, wanted, place, speech);
	if (rows === 0) throw new BadInput(place, message('command', 'noRows'));
	const known = [...MEASUREMENT_KEYS, ...wanted.allowances.map(({ key }) => key), ...OTHERS];
	return {
		ignored: ignoredLine(columns, known, place, speech),
		async *rows() {
			let number = 0;
			for await (const line of linesOf(file, firstLine)) {
				if (number > 0) yield readRow(line, number, { columns, wanted, speech }, place);
				number += 1;
			}
		}
	};
};
