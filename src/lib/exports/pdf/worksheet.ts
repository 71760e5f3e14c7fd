import { mm } from '#shared/units.ts';
import { explain, givenLengths } from '#drafting/explain.ts';
import { boundsOf, type Bounds } from '#geometry/path.ts';
import { at } from '#geometry/point.ts';
import { grown, type Drawing } from '../drawing/drawing.ts';
import { gridDrawing, scaleWords } from '../drawing/grid-drawing.ts';
import { withWorksheetMarkers } from '../drawing/worksheet-markers.ts';
import type { Paper } from '../sheets/tiles.ts';
import { bodyBlocks, stepsOf, stepTitle, type SheetOptions, type WorkedMethod } from './body-words.ts';
import { patternPdf } from './pattern-pdf.ts';
import type { TextBlock } from './text-pages.ts';

/** Room round a draft for levels that run on and for handles that are tried out. */
const AROUND = mm(20);

/** How a worksheet is made. */
export interface WorksheetOptions extends SheetOptions {
	/** 1 for full size, 1/2 or 1/4 for class work. */
	readonly share: number;
	/** Whether each step shows its worked numbers, or leaves them to the learner. */
	readonly worked: boolean;
	/** Told after each page how many of how many are done; throwing stops the work. */
	readonly onPage?: (done: number, of: number) => void;
}

/** The part of the sheet that a worksheet's grid must hold: the draft, the sheet's corner, and room about them. */
const sheetPart = ({ draft }: WorkedMethod): Bounds =>
	grown(
		boundsOf(
			Object.values(draft.lines).map(({ path }) => path),
			[...Object.values(draft.points), at(0, 0)]
		),
		AROUND
	);

/** What a worksheet tells of the steps, as blocks of words: each with where to look and its rule, and by choice its worked numbers. */
const worksheetBlocks = (work: WorkedMethod, worked: boolean): readonly TextBlock[] => {
	const { method, body, draft, speech, chosen } = work;
	const { paper } = speech.words;
	const steps = stepsOf(work);
	const instructions = steps.flatMap((step, i): readonly TextBlock[] => {
		const told = explain(method, step.name, body, draft, speech, chosen);
		const given = givenLengths(method, step.name, body, draft, speech, chosen);
		return [
			{ kind: 'heading', text: `${i + 1}. ${stepTitle(step, speech)}` },
			{ kind: 'text', text: `${told.where} ${told.rule}` },
			...(given.length > 0 ? [{ kind: 'text', text: paper.givenLengths({ given }) } as const] : []),
			...(worked ? [{ kind: 'text', text: told.worked } as const] : [])
		];
	});
	return [
		{ kind: 'title', text: paper.workedFor({ what: method.name, body: body.name }) },
		{
			kind: 'text',
			text: paper.worksheetStart
		},
		...bodyBlocks(work, steps),
		...instructions
	];
};

/**
 * The grid of a worksheet as it lies on paper. At full size it has the markers by which a photograph of it is read; made smaller, where no
 * photograph can be held against the draft, plain corner marks.
 */
export const worksheetDrawing = (work: WorkedMethod, share: number, paper: Paper): Drawing =>
	share === 1
		? withWorksheetMarkers(gridDrawing(sheetPart(work), work.speech, share, false), work.speech, paper)
		: gridDrawing(sheetPart(work), work.speech, share);

/**
 * A worksheet for drafting on paper: the check squares and the map of the pages, the instructions of every step, then
 * the bare grid with its markers, on as many pages as it takes. Throws BadInput where the body lacks a measurement.
 * The same input gives the same bytes.
 */
export const worksheetPdf = (work: WorkedMethod, options: WorksheetOptions): Promise<Uint8Array> => {
	const { share, worked, ...rest } = options;
	const { speech } = work;
	return patternPdf([worksheetDrawing(work, share, options.paper)], {
		...rest,
		speech,
		about: [`${speech.words.garments.forBody({ body: work.body.name })}. ${scaleWords(share, speech)}`],
		words: worksheetBlocks(work, worked)
	});
};
