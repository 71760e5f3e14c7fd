import type { Speech } from '#shared/speech/speech.ts';
import { patternWarningWords, type Pattern, type ReportedNumber } from '#garment/pattern.ts';
import type { Notch, Piece } from '#garment/piece.ts';
import type { Buttons } from '#garment/buttons.ts';
import type { RunReport, SeamReport } from '#garment/seams.ts';
import { pieceWords } from '#garment/words.ts';
import { wearJson, type CuredReport } from './wear-json.ts';
import { pathJson, placeJson, rounded } from './json-numbers.ts';

/** Numbers that stand beside the pieces under a name of their own, where the garment reports them: what an elastic's seller is asked for. */
const BESIDE: Readonly<Record<string, string>> = {
	gathering: 'gatheringRatio',
	elastic: 'elasticLength',
	elasticCut: 'elasticCut'
};

const notchJson = ({ edge, at, along, style, seam }: Notch): object => ({
	edge,
	at: placeJson(at),
	along: rounded(along),
	style,
	seam
});

const buttonsJson = ({ at, holes, width, hole }: Buttons): object => ({
	width: rounded(width),
	hole: rounded(hole),
	at: at.map(placeJson),
	holes: holes.map((each) => pathJson(each))
});

const pieceJson = (piece: Piece, body: string, speech: Speech): object => ({
	key: piece.key,
	number: piece.number,
	name: piece.name,
	cut: piece.cut,
	fold: piece.fold ?? null,
	edges: piece.edges.map(({ name, kind, length, allowance, path }) => ({
		name,
		kind,
		length: rounded(length),
		allowance: rounded(allowance),
		path: pathJson(path)
	})),
	stitching: pathJson(piece.outline, true),
	cutting: pathJson(piece.cutting.outline, true),
	grain: piece.grain.map(placeJson),
	bias: piece.bias,
	notches: piece.notches.map(notchJson),
	marks: piece.marks.map(({ label, path }) => ({ label, path: pathJson(path) })),
	drills: piece.drills.map(({ label, at }) => ({ label, at: placeJson(at) })),
	darts: piece.darts.map(({ name, legs, tip }) => ({
		name,
		legs: legs.map((leg) => pathJson(leg)),
		tip: placeJson(tip)
	})),
	...(piece.buttons ? { buttons: buttonsJson(piece.buttons) } : {}),
	text: pieceWords(piece, body, speech)
});

const seamJson = (seam: SeamReport): object => {
	const { name, label, first, second, within } = seam;
	return {
		...{ name, label, first, second },
		firstLength: rounded(seam.firstLength),
		secondLength: rounded(seam.secondLength),
		ease: rounded(seam.ease),
		difference: rounded(seam.difference),
		within
	};
};

const runJson = ({ run, corner, within }: RunReport, { words }: Speech): object => ({
	label: words.garments.run({ run }),
	degrees: rounded((corner * 180) / Math.PI),
	within
});

const numbersBeside = (numbers: readonly ReportedNumber[]): object =>
	Object.fromEntries(
		Object.entries(BESIDE).flatMap(([name, beside]) => {
			const number = numbers.find((each) => each.name === name);
			return number ? [[beside, rounded(number.value)] as const] : [];
		})
	);

/**
 * A pattern as one line of JSON, in millimetres; its words are in the unit of `speech`. `wear` are its checks with what would put them
 * right, where that was looked for.
 */
export const patternJson = (
	pattern: Pattern,
	speech: Speech,
	wear: readonly CuredReport[] = pattern.wear.map((report) => ({ report }))
): string => {
	const { garment, body, pieces, seams, runs, numbers, warnings } = pattern;
	return JSON.stringify({
		garment,
		body,
		unit: 'mm',
		pieces: pieces.map((piece) => pieceJson(piece, body, speech)),
		seams: seams.map(seamJson),
		runs: runs.map((run) => runJson(run, speech)),
		...numbersBeside(numbers),
		numbers: Object.fromEntries(
			numbers.map(({ name, label, kind, value, within }) => [
				name,
				{ label, kind, value: rounded(value), within }
			])
		),
		wear: wearJson(wear, speech),
		warnings: warnings.map((each) => patternWarningWords(each, speech))
	});
};
