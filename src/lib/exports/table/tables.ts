import type { Speech } from '#shared/speech/speech.ts';
import type { Draft } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import type { Pattern, ReportedNumber } from '#garment/pattern.ts';
import type { Piece } from '#garment/piece.ts';
import type { SeamReport } from '#garment/seams.ts';
import { csv, type Row } from './csv.ts';

/** Decimals of a length in millimetres. */
const DIGITS = 3;
const number = (value: number): number => Math.round(value * 10 ** DIGITS) / 10 ** DIGITS + 0;

/** A draft's points and lines as a table, in millimetres from the corner. */
export const draftCsv = (method: Method, draft: Draft, { words: { paper } }: Speech): string => {
	const { what, name: named, label: heading, across, down, length: along } = paper.columns;
	const labels = new Map(method.steps.map(({ name, label }) => [name, paper.label({ noun: label })]));
	const label = (name: string): string => labels.get(name) ?? '';
	return csv([
		[what, named, heading, across, down, along],
		...Object.entries(draft.points).map(([name, { x, y }]): Row => [
			paper.rows.point,
			name,
			label(name),
			number(x),
			number(y),
			''
		]),
		...Object.entries(draft.lines).map(([name, { length }]): Row => [
			paper.rows.line,
			name,
			label(name),
			'',
			'',
			number(length)
		])
	]);
};

/** The edges of a piece from where each begins, and its notches. */
const pieceRows = (
	{ name: piece, edges, notches }: Piece,
	{ words: { paper, garments } }: Speech
): readonly Row[] => {
	const named = (edge: string): string =>
		paper.keyed({ key: edge, noun: edges.find(({ name }) => name === edge)?.noun ?? { name: edge } });
	return [
		...edges.map(({ name, kind, length, allowance, path }): Row => {
			const { x, y } = path[0].from;
			const lengths = [x, y, length, allowance].map(number);
			return [paper.rows.edge, piece, named(name), garments.edgeKind({ kind }), ...lengths, '', ''];
		}),
		...notches.map(({ edge, at, along, style }): Row => {
			const lengths = [at.x, at.y, along].map(number);
			return [paper.rows.notch, piece, named(edge), garments.notchStyle({ style }), ...lengths, '', '', ''];
		})
	];
};

const seamRow = (
	{ label, firstLength, secondLength, within }: SeamReport,
	{ words: { paper } }: Speech
): Row => [
	...[paper.rows.seam, '', label, '', '', ''],
	number(firstLength),
	'',
	number(secondLength),
	paper.within({ within })
];

/** A length stands in millimetres; a plain number under the name of what it is. */
const numberRow = ({ label, kind, value, within }: ReportedNumber, { words: { paper } }: Speech): Row => [
	...[paper.rows.number, '', label, kind === 'ratio' ? value.toFixed(3) : paper.lengthKind, '', ''],
	kind === 'length' ? number(value) : '',
	'',
	'',
	paper.within({ within })
];

/** A pattern's edges, notches, seam pairs and numbers as a table, in millimetres. */
export const patternCsv = ({ pieces, seams, numbers }: Pattern, speech: Speech): string => {
	const { what, piece, name, kind, across, down, length, allowance, otherLength, within } =
		speech.words.paper.columns;
	return csv([
		[what, piece, name, kind, across, down, length, allowance, otherLength, within],
		...pieces.flatMap((each) => pieceRows(each, speech)),
		...seams.map((each) => seamRow(each, speech)),
		...numbers.map((each) => numberRow(each, speech))
	]);
};
