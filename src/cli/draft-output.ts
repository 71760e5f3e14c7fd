import { mm, printNumber } from '#shared/units.ts';
import { pathData } from '#geometry/path.ts';
import type { Draft } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';

/** Decimals of a printed point or length in millimetres: far below a hundredth, far above floating-point noise. */
const DIGITS = 9;
const SCALE = 10 ** DIGITS;
/** Decimals of path data, which is for drawing. */
const PATH_DIGITS = 6;

/** JSON writes a negative nought as 0. */
const rounded = (value: number): number => Math.round(value * SCALE) / SCALE;

/** A draft as one line of JSON, in millimetres. */
export const draftJson = (draft: Draft, body: string): string => {
	const points = Object.entries(draft.points).map(
		([name, { x, y }]) => [name, [rounded(x), rounded(y)]] as const
	);
	const lines = Object.entries(draft.lines).map(
		([name, { path, length }]) =>
			[name, { length: rounded(length), path: pathData(path, PATH_DIGITS) }] as const
	);
	return JSON.stringify({
		method: draft.method,
		body,
		unit: 'mm',
		points: Object.fromEntries(points),
		lines: Object.fromEntries(lines),
		comparisons: Object.fromEntries(
			draft.comparisons.map(({ name, difference, within }) => [
				name,
				{ difference: rounded(difference), within }
			])
		),
		warnings: draft.warnings
	});
};

/** Columns padded to their widest cell: names to the left, numbers to the right, the last as it is. */
const table = (rows: readonly (readonly string[])[]): string => {
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

const cm = (value: number): string => printNumber(mm(value), 'cm');

/** A draft as a table for reading, in centimetres. */
export const draftTable = (method: Method, draft: Draft, body: string): string => {
	const labels = new Map(method.steps.map((step) => [step.name, step.label]));
	const label = (name: string): string => labels.get(name) ?? '';
	const points = Object.entries(draft.points).map(([name, { x, y }]) => [name, cm(x), cm(y), label(name)]);
	const lines = Object.entries(draft.lines).map(([name, { length }]) => [name, cm(length), label(name)]);
	return [
		`${method.name} for ${body}, in cm from the corner\n`,
		table([['point', 'across', 'down', ''], ...points]),
		table([['line', 'length', ''], ...lines])
	].join('\n');
};
