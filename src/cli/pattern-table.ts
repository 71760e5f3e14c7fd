import type { Speech } from '#shared/speech/speech.ts';
import type { Garment } from '#garment/garment.ts';
import { patternWarningWords, type Pattern, type ReportedNumber } from '#garment/pattern.ts';
import type { Piece } from '#garment/piece.ts';
import type { RunReport, SeamReport } from '#garment/seams.ts';
import { pieceWords } from '#garment/words.ts';
import { onOneLine } from './output.ts';
import { cm, table } from './table.ts';

const indented = (text: string): string => text.replace(/^(?=.)/gm, '  ');

const section = (title: string, text: string): string => `${title}\n${indented(text)}`;

const lines = (words: readonly string[]): string => words.map((line) => `${line}\n`).join('');

const numbered = (words: readonly string[]): string =>
	lines(words.map((line, i) => `${String(i + 1).padStart(2)}. ${line}`));

/** Numbers in these tables are in centimetres, as in those of drafts. */
const pieceSection = (piece: Piece, body: string, speech: Speech): string => {
	const [title = '', _whose, ...words] = pieceWords(piece, body, speech.inUnit('cm'));
	const edges = piece.edges.map(({ name, kind, length, allowance }) => [
		name,
		cm(length),
		cm(allowance),
		speech.words.garments.edgeKind({ kind })
	]);
	return section(title, lines(words) + table([['edge', 'length', 'allowance', ''], ...edges]));
};

const agreement = (within: boolean): string => (within ? 'agree' : 'DO NOT AGREE');

const seamTable = (seams: readonly SeamReport[]): string =>
	table([
		['', 'first', 'second', 'to ease', 'off by', ''],
		...seams.map(({ label, firstLength, secondLength, ease, difference, within }) => [
			label,
			...[firstLength, secondLength, ease, difference].map(cm),
			agreement(within)
		])
	]);

const runTable = (runs: readonly RunReport[], { words: { garments } }: Speech): string =>
	table(
		runs.map(({ run, corner, within }) => [
			garments.run({ run }),
			`${Math.abs((corner * 180) / Math.PI).toFixed(1)}°`,
			within ? 'smooth' : 'A CORNER'
		])
	);

const numberTable = (numbers: readonly ReportedNumber[]): string =>
	table(
		numbers.map(({ label, kind, value, within }) => [
			label,
			kind === 'length' ? cm(value) : value.toFixed(2),
			within ? '' : 'out of bounds'
		])
	);

/** A pattern for reading, lengths in centimetres: its pieces, how they sew together, what to look at, and how it is sewn. */
export const patternTable = (garment: Garment, pattern: Pattern, speech: Speech): string => {
	const body = onOneLine(pattern.body);
	const { pieces, seams, runs, numbers, warnings } = pattern;
	const found = (title: string, rows: readonly unknown[], text: string): readonly string[] =>
		rows.length === 0 ? [] : [section(title, text)];
	return [
		`${garment.name} for ${body}, in cm\n`,
		...pieces.map((piece) => pieceSection(piece, body, speech)),
		...found('Seams, along the stitching line', seams, seamTable(seams)),
		...found('Runs across seams and into folds', runs, runTable(runs, speech)),
		...found('Numbers', numbers, numberTable(numbers)),
		section(
			'Warnings',
			lines(
				warnings.length > 0 ? warnings.map((each) => onOneLine(patternWarningWords(each, speech))) : ['none']
			)
		),
		section('Order of sewing', numbered(garment.order)),
		section('Cautions', lines(garment.cautions.map((caution) => speech.words.garments.caution({ caution }))))
	].join('\n');
};
