// The build for browsers, which runs everywhere: the other leans on Node's Buffer.
import { the } from '#shared/speech/en/grammar.ts';
import { stringify } from 'csv-stringify/browser/esm/sync';
import type { Draft } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import type { Pattern, ReportedNumber } from '#garment/pattern.ts';
import type { Piece } from '#garment/piece.ts';
import type { SeamReport } from '#garment/seams.ts';

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
	const labels = new Map(method.steps.map(({ name, label }) => [name, the(label)]));
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

const HEADINGS: Row = [
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
];

const yesOrNo = (within: boolean): string => (within ? 'yes' : 'no');

/** The edges of a piece from where each begins, and its notches. */
const pieceRows = ({ name: piece, edges, notches }: Piece): readonly Row[] => [
	...edges.map(({ name, kind, length, allowance, path }): Row => {
		const { x, y } = path[0].from;
		return ['edge', piece, name, kind, number(x), number(y), number(length), number(allowance), '', ''];
	}),
	...notches.map(({ edge, at, along, style }): Row => [
		'notch',
		piece,
		edge,
		style,
		number(at.x),
		number(at.y),
		number(along),
		'',
		'',
		''
	])
];

const seamRow = ({ label, firstLength, secondLength, within }: SeamReport): Row => [
	...['seam', '', label, '', '', ''],
	number(firstLength),
	'',
	number(secondLength),
	yesOrNo(within)
];

/** A length stands in millimetres; a plain number under the name of what it is. */
const numberRow = ({ label, kind, value, within }: ReportedNumber): Row => [
	...['number', '', label, kind === 'ratio' ? value.toFixed(3) : kind, '', ''],
	kind === 'length' ? number(value) : '',
	'',
	'',
	yesOrNo(within)
];

/** A pattern's edges, notches, seam pairs and numbers as a table, in millimetres. */
export const patternCsv = ({ pieces, seams, numbers }: Pattern): string =>
	csv([HEADINGS, ...pieces.flatMap(pieceRows), ...seams.map(seamRow), ...numbers.map(numberRow)]);
