import { stringify } from 'csv-stringify/sync';
import type { Draft } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import type { Pattern } from '#garment/pattern.ts';

/** Decimals of a length in millimetres. */
const DIGITS = 3;
const number = (value: number): number => Math.round(value * 10 ** DIGITS) / 10 ** DIGITS + 0;

type Row = readonly (string | number)[];

/** Rows as a CSV file; a cell that a spreadsheet would take for a formula is kept from being one. */
const csv = (rows: readonly Row[]): string =>
	stringify(
		rows.map((row) => [...row]),
		{ escape_formulas: true, record_delimiter: '\r\n' }
	);

/** A draft's points and lines as a table, in millimetres from the corner. */
export const draftCsv = (method: Method, draft: Draft): string => {
	const labels = new Map(method.steps.map(({ name, label }) => [name, label]));
	const label = (name: string): string => labels.get(name) ?? '';
	return csv([
		['what', 'name', 'label', 'across_mm', 'down_mm', 'length_mm'],
		...Object.entries(draft.points).map(([name, { x, y }]): Row => [
			'point',
			name,
			label(name),
			number(x),
			number(y),
			''
		]),
		...Object.entries(draft.lines).map(([name, { length }]): Row => [
			'line',
			name,
			label(name),
			'',
			'',
			number(length)
		])
	]);
};

/** A pattern's edges, notches, seam pairs and numbers as a table, in millimetres. */
export const patternCsv = ({ pieces, seams, numbers }: Pattern): string =>
	csv([
		[
			'what',
			'piece',
			'name',
			'kind',
			'across_mm',
			'down_mm',
			'length_mm',
			'allowance_mm',
			'other_length_mm',
			'within'
		],
		...pieces.flatMap((piece) => [
			...piece.edges.map(({ name, kind, length, allowance, path }): Row => {
				const { from } = path[0];
				return [
					'edge',
					piece.name,
					name,
					kind,
					number(from.x),
					number(from.y),
					number(length),
					number(allowance),
					'',
					''
				];
			}),
			...piece.notches.map(({ edge, at, along, style }): Row => [
				'notch',
				piece.name,
				edge,
				style,
				number(at.x),
				number(at.y),
				number(along),
				'',
				'',
				''
			])
		]),
		...seams.map(({ label, firstLength, secondLength, within }): Row => [
			'seam',
			'',
			label,
			'',
			'',
			'',
			number(firstLength),
			'',
			number(secondLength),
			within ? 'yes' : 'no'
		]),
		...numbers.map(({ label, kind, value, within }): Row => [
			'number',
			'',
			label,
			kind,
			'',
			'',
			kind === 'length' ? number(value) : '',
			'',
			kind === 'ratio' ? value.toFixed(3) : '',
			within ? 'yes' : 'no'
		])
	]);
