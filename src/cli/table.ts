import type { Noun } from '#shared/speech/noun.ts';
import type { Speech } from '#shared/speech/speech.ts';
import { mm } from '#shared/units.ts';

/** Columns padded to their widest cell: names to the left, numbers to the right, the last as it is. */
export const table = (rows: readonly (readonly string[])[]): string => {
	const widths = (rows[0] ?? []).map((_, column) => Math.max(...rows.map((row) => row[column]?.length ?? 0)));
	const line = (row: readonly string[]): string =>
		row
			.map((cell, column) => {
				if (column === 0) return cell.padEnd(widths[0] ?? 0);
				return column === row.length - 1 ? cell : cell.padStart(widths[column] ?? 0);
			})
			.join('  ');
	return rows.map((row) => `${line(row).trimEnd()}\n`).join('');
};

/** A length in millimetres as a table holds it: the number alone, in centimetres. */
export const cm = (value: number, speech: Speech): string => speech.inUnit('cm').bare(mm(value));

/** A noun as it stands in a table, with its article where it has one: alike in every language. */
export const nounWords = ({ article, name }: Noun): string => (article ? `${article} ${name}` : name);
