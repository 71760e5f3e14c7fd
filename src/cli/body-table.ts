import { parse, CsvError } from 'csv-parse/sync';
import type { Allowance } from '#shared/allowances.ts';
import { BadInput, shown, slipWords } from '#shared/bad-input.ts';
import { englishIn } from '#shared/speech/english-for-now.ts';
import { readAllowance, readMeasurement, type Body } from '#shared/body.ts';
import { isMeasurementKey, MEASUREMENT_KEYS, type MeasurementKey } from '#shared/measurements.ts';
import { didYouMean } from '#shared/nearest-name.ts';
import type { Mm, Unit } from '#shared/units.ts';
import type { InputFile } from './input-file.ts';

/** A row of a table: a body, or what is wrong with the row. */
export type BodyRow =
	{ readonly name: string; readonly body: Body } | { readonly name: string; readonly problem: string };

/** A table of bodies. `ignored` is one line about columns of no known name, where there are any. */
export interface BodyTable {
	readonly ignored: string | undefined;
	rows(): Iterable<BodyRow>;
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

/**
 * A spreadsheet whose decimal sign is a comma parts its cells with semicolons; a heading holds
 * neither sign, so the first line tells. Inch marks stand in cells unquoted, so loose quotes are let be.
 */
const readLines = ({ text, place }: InputFile): readonly Line[] => {
	const [heading = ''] = text.split(/[\r\n]/, 1);
	try {
		const records = parse(text, {
			delimiter: heading.includes(';') ? ';' : ',',
			record_delimiter: ['\r\n', '\n', '\r'],
			relax_column_count: true,
			relax_quotes: true,
			skip_empty_lines: true,
			skip_records_with_empty_values: true,
			trim: true,
			info: true
		}) as unknown as readonly {
			readonly record: readonly string[];
			readonly info: { readonly lines: number };
		}[];
		return records.map(({ record, info }) => ({ cells: record, line: info.lines }));
	} catch (problem) {
		if (problem instanceof CsvError) throw new BadInput(place, `this is not a table: ${problem.message}`);
		throw problem;
	}
};

const checkColumns = (columns: readonly string[], wanted: Wanted, place: string): void => {
	const twice = columns.find((column, i) => column !== '' && columns.indexOf(column) !== i);
	if (twice !== undefined) throw new BadInput(place, `two columns are called "${twice}"`);
	const missing = wanted.measurements.filter((key) => !columns.includes(key));
	const [first] = missing;
	if (first === undefined) return;
	const spare = columns.filter((column) => !isMeasurementKey(column) && !OTHERS.includes(column));
	const near = missing.length === 1 ? didYouMean(first, spare) : '';
	throw new BadInput(
		`${place}: column ${missing.join(', ')}`,
		`missing${near}; ${wanted.id} needs ${wanted.measurements.join(', ')}`
	);
};

const ignoredLine = (
	columns: readonly string[],
	known: readonly string[],
	place: string
): string | undefined => {
	const unknown = columns.filter((column) => column !== '' && !known.includes(column));
	if (unknown.length === 0) return undefined;
	const named = unknown.map((column) => `${shown(column)}${didYouMean(column, known)}`);
	return `${place}: ignored, because no column has this name: ${named.join(', ')}`;
};

/** What every row of a table is read with. */
interface Reading {
	readonly columns: readonly string[];
	readonly wanted: Wanted;
}

/** A decimal comma without quotes makes two cells of one, and would shift all after it. */
const checkWidth = (cells: readonly string[], { columns }: Reading, place: string): void => {
	const extra = cells.slice(columns.length).filter((cell) => cell !== '');
	if (extra.length === 0) return;
	throw new BadInput(
		place,
		`${cells.length} cells under ${columns.length} headings; put a decimal comma between quotes: "96,5"`
	);
};

const unitOf = (written: string, place: string): Unit => {
	if (written === '') return 'cm';
	if (isUnit(written)) return written;
	throw new BadInput(`${place}unit`, `a unit is cm, mm or in, not ${shown(written)}`);
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
			if (needed) throw new BadInput(place + column, `empty; ${wanted.id} needs this measurement`);
		} else if (isMeasurementKey(column)) {
			measurements[column] = readMeasurement(column, cell, unit, place);
		} else if (wanted.allowances.some(({ key }) => key === column)) {
			allowances[column] = readAllowance(column, cell, unit, wanted.allowances, place);
		}
	}
	return { name, unit, measurements, allowances };
};

/** Each row is read on its own: what is wrong with one says nothing of the others. */
const readRow = ({ cells, line }: Line, number: number, reading: Reading, file: string): BodyRow => {
	const cell = (column: string): string => cells[reading.columns.indexOf(column)] ?? '';
	const name = cell('name') || cell('id') || String(number);
	const place = `${file}: row ${number} (line ${line})`;
	try {
		checkWidth(cells, reading, place);
		return { name, body: bodyOf(name, cells, reading, `${place}, column `) };
	} catch (error) {
		if (error instanceof BadInput) return { name, problem: slipWords(error, englishIn('cm')) };
		throw error;
	}
};

/**
 * Reads a CSV table of bodies: a heading of measurement and allowance keys, then a body a row, in
 * centimetres unless a column `unit` says otherwise. Throws BadInput where the whole table is of no
 * use: empty, malformed, or without a column that is wanted.
 */
export const readBodyTable = (file: InputFile, wanted: Wanted): BodyTable => {
	const { place } = file;
	const [heading, ...lines] = readLines(file);
	if (!heading) throw new BadInput(place, 'the file is empty');
	const columns = heading.cells;
	checkColumns(columns, wanted, place);
	if (lines.length === 0) throw new BadInput(place, 'there is a heading, but no row below it');
	const known = [...MEASUREMENT_KEYS, ...wanted.allowances.map(({ key }) => key), ...OTHERS];
	return {
		ignored: ignoredLine(columns, known, place),
		*rows() {
			for (const [i, line] of lines.entries()) yield readRow(line, i + 1, { columns, wanted }, place);
		}
	};
};
