import { onOneLine } from '#shared/bad-input.ts';
import type { Speech } from '#shared/speech/speech.ts';
import type { CuredReport } from '#exports/table/wear-json.ts';
import type { Garment } from '#garment/garment.ts';
import { patternWarningWords, type Pattern, type ReportedNumber } from '#garment/pattern.ts';
import type { Piece } from '#garment/piece.ts';
import type { RunReport, SeamReport } from '#garment/seams.ts';
import { patternName, pieceWords } from '#garment/words.ts';
import { cm, table } from './table.ts';
import { wearTable } from './wear.ts';

const indented = (text: string): string => text.replace(/^(?=.)/gm, '  ');

const section = (title: string, text: string): string => `${title}\n${indented(text)}`;

const lines = (words: readonly string[]): string => words.map((line) => `${line}\n`).join('');

const numbered = (words: readonly string[]): string =>
	lines(words.map((line, i) => `${String(i + 1).padStart(2)}. ${line}`));

/** Numbers in these tables are in centimetres, as in those of drafts. */
const pieceSection = (piece: Piece, body: string, speech: Speech): string => {
	const [title = '', _whose, ...words] = pieceWords(piece, body, speech.inUnit('cm'));
	const edges = piece.edges.map(({ name, noun, kind, length, allowance }) => [
		speech.words.paper.keyed({ key: name, noun }),
		cm(length, speech),
		cm(allowance, speech),
		speech.words.garments.edgeKind({ kind })
	]);
	return section(title, lines(words) + table([[...speech.words.command.edgeHeadings, ''], ...edges]));
};

const seamTable = (seams: readonly SeamReport[], speech: Speech): string =>
	table([
		['', ...speech.words.command.seamHeadings, ''],
		...seams.map(({ label, firstLength, secondLength, ease, difference, within }) => [
			label,
			...[firstLength, secondLength, ease, difference].map((each) => cm(each, speech)),
			speech.words.command.agree({ within })
		])
	]);

const runTable = (runs: readonly RunReport[], speech: Speech): string =>
	table(
		runs.map(({ run, corner, within }) => [
			speech.words.garments.run({ run }),
			`${speech.fixed(Math.abs((corner * 180) / Math.PI), 1)}°`,
			speech.words.command.smooth({ within })
		])
	);

const numberTable = (numbers: readonly ReportedNumber[], speech: Speech): string =>
	table(
		numbers.map(({ label, kind, value, within }) => [
			label,
			kind === 'length' ? cm(value, speech) : speech.fixed(value, 2),
			within ? '' : speech.words.command.outOfBounds
		])
	);

/** A pattern for reading, lengths in centimetres: its pieces, how they sew together, what to look at, and how it is sewn. */
export const patternTable = (
	garment: Garment,
	pattern: Pattern,
	speech: Speech,
	wear: readonly CuredReport[]
): string => {
	const { command } = speech.words;
	const body = onOneLine(pattern.body);
	const { pieces, seams, runs, numbers, warnings } = pattern;
	const found = (title: string, rows: readonly unknown[], text: string): readonly string[] =>
		rows.length === 0 ? [] : [section(title, text)];
	return [
		`${command.patternTitle({ name: patternName(garment, pattern, speech), body })}\n`,
		...pieces.map((piece) => pieceSection(piece, body, speech)),
		...found(command.seams, seams, seamTable(seams, speech)),
		...found(command.runs, runs, runTable(runs, speech)),
		...found(speech.words.wear.wear, wear, wearTable(wear, speech)),
		...found(command.numbers, numbers, numberTable(numbers, speech)),
		section(
			command.warnings,
			lines(
				warnings.length > 0
					? warnings.map((each) => onOneLine(patternWarningWords(each, speech)))
					: [command.none]
			)
		),
		section(command.order, numbered(garment.order)),
		section(
			command.cautions,
			lines(garment.cautions.map((caution) => speech.words.garments.caution({ caution })))
		)
	].join('\n');
};
