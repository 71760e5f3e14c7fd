// The build for browsers, which runs everywhere: the other leans on Node's Buffer.
import { stringify, type Options } from 'csv-stringify/browser/esm/sync';

export type Row = readonly (string | number)[];

/** Rows as a CSV file; a cell that a spreadsheet would take for a formula is kept from being one, a heading as well. */
export const csv = (rows: readonly Row[], more: Options = {}): string =>
	stringify(
		rows.map((row) => [...row]),
		{ escape_formulas: true, record_delimiter: '\r\n', ...more }
	);
