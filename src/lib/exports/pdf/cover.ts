import { chosenWords, isChoice } from '#shared/allowances.ts';
import type { Body } from '#shared/body.ts';
import { measuredWords } from '#shared/measured-words.ts';
import { MEASUREMENT_KEYS } from '#shared/measurements.ts';
import type { Speech } from '#shared/speech/speech.ts';
import { mm } from '#shared/units.ts';
import { scopeOf } from '#drafting/evaluate.ts';
import type { Garment } from '#garment/garment.ts';
import { INTERFACING_WIDTH, layOnFold } from '#garment/laying.ts';
import type { Choices, Pattern } from '#garment/pattern.ts';
import { clothWords, cutWords } from '#garment/words.ts';
import { wearWords } from '#garment/wear-words.ts';
import type { Drawing } from '../drawing/drawing.ts';
import { legend } from './legend.ts';
import { table, type TextBlock } from './text-pages.ts';

/** What a cover tells of: a garment's pattern, and what it was made from. */
export interface Covered {
	readonly garment: Garment;
	readonly pattern: Pattern;
	readonly body: Body;
	readonly choices: Choices;
	readonly speech: Speech;
}

/** Widths in which cloth is sold. Common practice, no source. */
const WIDTHS = [1150, 1400, 1500].map(mm);

const heading = (text: string): TextBlock => ({ kind: 'heading', text });
const text = (said: string): TextBlock => ({ kind: 'text', text: said });

const measured = ({ garment, body, speech }: Covered): readonly TextBlock[] => {
	const { nouns, paper } = speech.words;
	const rows = MEASUREMENT_KEYS.filter((key) => garment.measurements.includes(key)).flatMap((key) => {
		const value = body.measurements[key];
		const { title, what } = nouns.measurements[key];
		return value === undefined ? [] : [[`${title}: ${what}`, measuredWords(key, body, speech)]];
	});
	return table([paper.measurement, body.name], [0.8, 0.2], rows);
};

/** The numbers that differ from the usual ones, and the edges that are cut in their own way. */
const changed = ({ garment, pattern, body, choices, speech }: Covered): readonly TextBlock[] => {
	const { nouns, paper, garments } = speech.words;
	const scope = scopeOf(garment, body, { points: {}, lines: {} }, choices.allowances);
	const numbers = garment.allowances.flatMap((each) => {
		const value = isChoice(each) ? scope.share(each.key) : scope.allowance(each.key);
		if (value === each.default) return [];
		const title = paper.allowanceTitle({ noun: nouns.allowance(each) });
		return [[title, chosenWords(each, value, speech), chosenWords(each, each.default, speech)]];
	});
	const edges = pattern.pieces.flatMap((piece) =>
		piece.edges.flatMap((edge) => {
			const own = choices.edges[`${piece.key}.${edge.name}`];
			if (own === undefined) return [];
			return [[garments.edgeMeets({ edge: edge.noun, meets: piece.name }), speech.length(own), '']];
		})
	);
	const rows = [...numbers, ...edges];
	if (rows.length === 0) return [text(paper.nothingChanged)];
	return table([paper.allowance, paper.chosen, paper.usual], [0.6, 0.2, 0.2], rows);
};

const cuttingList = ({ pattern, speech }: Covered): readonly TextBlock[] => {
	const { paper } = speech.words;
	const rows = pattern.pieces.map((piece) => [String(piece.number), piece.name, cutWords(piece, speech)]);
	return [
		...table([paper.pieceNumber, speech.words.pattern.pieceHeader, paper.cutting], [0.08, 0.32, 0.6], rows),
		text(paper.pairMeans)
	];
};

/** The cloth for each usual width, and the numbers that the garment reports: its elastic, its bindings. */
const needed = ({ pattern, speech }: Covered): readonly TextBlock[] => {
	const { paper } = speech.words;
	const cloth = WIDTHS.map((width) => {
		const { length, tooWide, placed } = layOnFold(pattern.pieces, width);
		const joined = placed.filter((each) => each.joined).map(({ piece }) => piece);
		const names = pattern.pieces.filter(({ key }) => joined.includes(key)).map(({ name }) => name);
		const cloth = clothWords(length, speech);
		const fits = names.length === 0 ? cloth : paper.clothJoined({ cloth, pieces: names });
		return [paper.fabricWide({ width }), tooWide.length > 0 ? paper.tooNarrow : fits];
	});
	const interfacing = layOnFold(pattern.pieces, INTERFACING_WIDTH, 'interfacing').length;
	const stiff =
		interfacing > 0
			? [[paper.interfacingWide({ width: INTERFACING_WIDTH }), clothWords(interfacing, speech)]]
			: [];
	const numbers = pattern.numbers.map(({ label, kind, value }) => [
		label,
		kind === 'length' ? speech.length(mm(value)) : speech.fixed(value, 2)
	]);
	const buttons = pattern.pieces.flatMap(({ buttons: own }) =>
		own ? [[paper.buttons({ width: own.width }), String(own.at.length)]] : []
	);
	return [
		...table([paper.clothWidth, paper.clothNeeded], [0.5, 0.5], [...cloth, ...stiff]),
		text(paper.clothEstimate),
		...(numbers.length > 0 ? table([paper.number, paper.howMuch], [0.7, 0.3], [...buttons, ...numbers]) : [])
	];
};

/** Whether it can be sewn and worn: what was checked, and what does not hold in whole sentences. */
const checks = ({ pattern: { seams, wear }, speech }: Covered): readonly TextBlock[] => {
	const { wear: words, paper } = speech.words;
	const open = seams.filter(({ within }) => !within).length;
	const rows = wear.map(({ label, kind, value, least, most, state }) => [
		label,
		value === undefined ? '–' : words.number({ kind, value }),
		words.bounds({ kind, least, most }),
		words.states({ state })
	]);
	return [
		text(paper.seamsAgree({ open, seams: seams.length })),
		...(rows.length > 0
			? table([words.check, words.found, words.wanted, words.state], [0.54, 0.12, 0.21, 0.13], rows)
			: []),
		...wear.filter(({ state }) => state !== 'holds').map((report) => text(wearWords(report, speech)))
	];
};

/** What the finished garment measures round the body, beside what is usual. */
const finished = ({ garment, pattern, body, speech }: Covered): readonly TextBlock[] => {
	const { paper, nouns } = speech.words;
	const rows = garment.wear.flatMap(({ name, over }) => {
		const room = pattern.wear.find((each) => each.name === name);
		const own = over && body.measurements[over];
		if (!over || own === undefined || room?.value === undefined) return [];
		const least = room.least === undefined ? undefined : mm(own + room.least);
		const most = room.most === undefined ? undefined : mm(own + room.most);
		return [
			[
				nouns.measurements[over].title,
				measuredWords(over, body, speech),
				speech.length(mm(own + room.value)),
				speech.words.wear.bounds({ kind: 'length', least, most })
			]
		];
	});
	if (rows.length === 0) return [];
	return [
		heading(paper.finished),
		...table([paper.round, body.name, paper.finishedRound, paper.usualRound], [0.34, 0.18, 0.18, 0.3], rows),
		text(paper.usualMeans)
	];
};

/**
 * All that a class needs besides the pieces, as pages of words: measurements, changed numbers, cutting list, what to buy, what
 * the lines mean, whether it can be sewn and worn, and the order of sewing. `drawings` are the pieces as they are printed.
 */
export const coverBlocks = (of: Covered, drawings: readonly Drawing[]): readonly TextBlock[] => {
	const { garment, speech } = of;
	const { paper, wear } = speech.words;
	return [
		heading(paper.cuttingList),
		...cuttingList(of),
		heading(paper.whatYouNeed),
		...needed(of),
		heading(paper.linesMean),
		...legend(drawings, speech),
		heading(paper.sewingOrder),
		...garment.order.map((step, i) => text(`${i + 1}. ${step}`)),
		heading(wear.title),
		...checks(of),
		...finished(of),
		heading(paper.measurements),
		...measured(of),
		heading(paper.changedNumbers),
		...changed(of)
	];
};
