import { notTaken } from '#shared/measurements.ts';
import { BadInput, ruleWords } from '#shared/bad-input.ts';
import { message } from '#shared/speech/message.ts';
import type { Speech } from '#shared/speech/speech.ts';
import { mm } from '#shared/units.ts';
import { evaluate, refusalWords, type Draft, type Refusal } from '#drafting/evaluate.ts';
import { draftFile } from '#exports/files/draft-file.ts';
import { fileName } from '#exports/files/file-name.ts';
import {
	paperOf,
	patternFile,
	patternSheet,
	SCALES,
	type Format,
	type ScaleName
} from '#exports/files/pattern-file.ts';
import { planPages } from '#exports/sheets/page-plan.ts';
import { paperName, ROLLS } from '#exports/sheets/tiles.ts';
import { makePattern, type Pattern } from '#garment/pattern.ts';
import { patternName } from '#garment/words.ts';
import type {
	ClassJob,
	DraftJob,
	Job,
	LaidPattern,
	MadeFile,
	NestJob,
	MarkersJob,
	Pages,
	PatternJob,
	Said
} from './job.ts';

/** What a job is done with. */
export interface Means {
	/** The typeface of a PDF. */
	readonly font: () => Promise<Uint8Array>;
	readonly speech: () => Promise<Speech>;
	readonly onProgress: (done: number, of: number) => void;
}

/** What a browser takes each kind of file for. */
const TYPES: Readonly<Record<Format, string>> = {
	pdf: 'application/pdf',
	svg: 'image/svg+xml',
	dxf: 'image/vnd.dxf',
	csv: 'text/csv',
	json: 'application/json'
};

/** A job under way: what it is done with, and the speech in which it is done. */
interface Doing extends Omit<Means, 'speech'> {
	readonly speech: Speech;
}

const madeFile = (name: string, bytes: Uint8Array, format: Format): MadeFile => ({
	name: `${fileName(name)}.${format}`,
	content: new Blob([bytes.slice()], { type: TYPES[format] })
});

/** Throws BadInput with the reasons why a body has no draft. */
const refuse = (body: string, refusals: readonly Refusal[], speech: Speech): never => {
	const reasons = refusals.map((each) => refusalWords(each, speech));
	throw new BadInput(body, message('files', 'cannotDraft', { body, reasons }));
};

/** Throws BadInput where the body lacks a measurement that is needed. */
const needAll = (
	{ measurements }: Pick<LaidPattern['garment'], 'measurements'>,
	body: LaidPattern['body']
): void => {
	const keys = notTaken(measurements, body);
	if (keys.length > 0) throw new BadInput(body.name, message('files', 'lacks', { body: body.name, keys }));
};

const patternOf = ({ garment, body, choices, pieces }: LaidPattern, speech: Speech): Pattern => {
	if (pieces.length === 0) throw new BadInput('pieces', message('files', 'noPiece'));
	needAll(garment, body);
	const work = makePattern(garment, body, choices);
	return work.kind === 'made' ? work.pattern : refuse(body.name, work.refusals, speech);
};

const pagesOf = (job: LaidPattern, { speech }: Doing): Pages => {
	const { paper, drawings } = patternSheet(job.garment, patternOf(job, speech), { ...job, speech });
	const { every: whole, blank, bounds } = planPages(drawings, paper);
	// Off a roll no more is cut than what is drawn takes.
	const every = ROLLS.some(({ id }) => id === paper.id)
		? whole.map((tile) => ({ ...tile, height: mm(Math.min(tile.height, bounds.bottom - tile.top)) }))
		: whole;
	const lines = drawings.flatMap(({ strokes }) =>
		strokes.filter(({ kind }) => kind === 'cutting').map(({ path }) => path)
	);
	return { every, blank, lines };
};

/** What a file is called: with its scale, and where it is printed with its paper. */
const nameOf = (
	name: string,
	{ format, scale, paper }: { format: Format; scale: ScaleName; paper: string },
	speech: Speech
): string => {
	const { files } = speech.words;
	return format === 'pdf'
		? files.onPaper({ name, scale, paper: paperName(paperOf(paper), speech) })
		: files.sized({ name, scale });
};

const patternFiles = async (job: PatternJob, doing: Doing): Promise<readonly MadeFile[]> => {
	const { garment, body, choices, format, pieces, paper, scale, date } = job;
	const { font, speech, onProgress } = doing;
	const { files: words, paper: printed } = speech.words;
	const pattern = patternOf(job, speech);
	const made = { garment, pattern, body, choices };
	const request = { format, paper, scale, speech, date, dated: true, font };
	const name = nameOf(
		printed.madeFor({ what: patternName(garment, pattern, speech), body: body.name }),
		{ format, scale, paper },
		speech
	);
	if (!job.each) {
		const bytes = await patternFile(made, { ...request, pieces, onPage: onProgress });
		return [madeFile(name, bytes, format)];
	}
	const wanted = pattern.pieces.filter(({ key }) => pieces.includes(key));
	const files: MadeFile[] = [];
	for (const { key, number, name: piece } of wanted) {
		const bytes = await patternFile(made, { ...request, pieces: [key] });
		// The number stands first, so that a long name of a body cannot make two files alike.
		files.push(madeFile(words.pieceFile({ number, piece, name }), bytes, format));
		onProgress(files.length, wanted.length);
	}
	return files;
};

const draftOf = ({ method, body }: Pick<DraftJob, 'method' | 'body'>, speech: Speech): Draft => {
	needAll(method, body);
	const work = evaluate(method, body);
	return work.kind === 'drafted' ? work.draft : refuse(body.name, work.refusals, speech);
};

/** A picture is made of a drawing, by whoever has a canvas. */
const sheetFormat = (sheet: DraftJob['sheet']): 'pdf' | 'svg' =>
	sheet === 'picture' || sheet === 'drawing' ? 'svg' : 'pdf';

const draftBytes = async (job: DraftJob, title: string, doing: Doing): Promise<Uint8Array> => {
	const { sheet, method, body, paper, scale, date, worked } = job;
	const { font, speech, onProgress } = doing;
	const draft = draftOf(job, speech);
	const format = sheetFormat(sheet);
	if (sheet === 'draft' || format === 'svg')
		return draftFile(method, draft, body, {
			format,
			paper,
			scale,
			speech,
			font,
			date,
			dated: true,
			onPage: onProgress
		});
	const work = { method, body, draft, speech };
	const options = { paper: paperOf(paper), title, font: await font(), date };
	if (sheet === 'rules') return (await import('#exports/pdf/rule-sheet.ts')).ruleSheetPdf(work, options);
	if (sheet === 'tape') return (await import('#exports/pdf/tape-sheet.ts')).tapeSheetPdf(work, options);
	const { worksheetPdf } = await import('#exports/pdf/worksheet.ts');
	return worksheetPdf(work, { ...options, share: SCALES[scale], worked, onPage: onProgress });
};

const sheetFile = async (job: DraftJob, doing: Doing): Promise<MadeFile> => {
	const { files, paper } = doing.speech.words;
	const title = files.sheetTitle({ sheet: job.sheet, method: job.method.name });
	const name = paper.madeFor({ what: title, body: job.body.name });
	const bytes = await draftBytes(job, title, doing);
	const format = sheetFormat(job.sheet);
	// What is only read has no scale.
	const called =
		job.sheet === 'rules' || job.sheet === 'tape' ? name : nameOf(name, { ...job, format }, doing.speech);
	return madeFile(called, bytes, format);
};

const classFile = async (job: ClassJob, { speech, font, onProgress }: Doing): Promise<MadeFile> => {
	const { name, sheets, paper, scale, date } = job;
	const [first, ...others] = job.works.map((work) => ({ ...work, draft: draftOf(work, speech), speech }));
	if (!first || sheets.length === 0) throw new BadInput('sheets', message('files', 'noSheet'));
	const { classSheetsPdf } = await import('#exports/pdf/class-sheets.ts');
	const options = { paper: paperOf(paper), title: name, font: await font(), date };
	const made = { ...options, sheets, share: SCALES[scale], onSheet: onProgress };
	const bytes = await classSheetsPdf([first, ...others], made);
	return madeFile(nameOf(name, { format: 'pdf', scale, paper }, speech), bytes, 'pdf');
};

const nestFile = async (job: NestJob, doing: Doing): Promise<MadeFile> => {
	const { garment, bodies, choices, pieces, format, paper, scale, date } = job;
	const { speech, font, onProgress } = doing;
	const { madeNest, nestedFile, nestTitle } = await import('#exports/files/nested-file.ts');
	for (const { body } of bodies) needAll(garment, body);
	const made = madeNest(garment, bodies, choices, speech);
	const request = { format, pieces, paper, scale, speech, date, dated: true, font, onPage: onProgress };
	const name = nameOf(nestTitle(made, speech), { format, scale, paper }, speech);
	return madeFile(name, await nestedFile(made, request), format);
};

const markersFile = async (
	{ sheet, paper, date }: MarkersJob,
	{ speech, font }: Doing
): Promise<MadeFile> => {
	const { title } = speech.words.markers;
	const { markerSheetPdf } = await import('#exports/pdf/marker-sheet.ts');
	const bytes = await markerSheetPdf(sheet, {
		paper: paperOf(paper),
		title,
		font: await font(),
		speech,
		date
	});
	return madeFile(nameOf(title, { format: 'pdf', scale: 'full', paper }, speech), bytes, 'pdf');
};

const answer = async (job: Job, doing: Doing): Promise<Said> => {
	if (job.kind === 'plan') return { kind: 'pages', pages: pagesOf(job, doing) };
	if (job.kind === 'pattern') return { kind: 'files', files: await patternFiles(job, doing) };
	if (job.kind === 'nest') return { kind: 'files', files: [await nestFile(job, doing)] };
	if (job.kind === 'markers') return { kind: 'files', files: [await markersFile(job, doing)] };
	const file = job.kind === 'class' ? classFile(job, doing) : sheetFile(job, doing);
	return { kind: 'files', files: [await file] };
};

/** Does a job and gives its answer; never throws. */
export const doJob = async (job: Job, means: Means): Promise<Said> => {
	try {
		const speech = await means.speech();
		try {
			return await answer(job, { ...means, speech });
		} catch (error) {
			if (!(error instanceof BadInput)) throw error;
			return { kind: 'refused', words: ruleWords(error, speech) };
		}
	} catch (error) {
		return { kind: 'our-fault', told: error instanceof Error ? error.message : String(error) };
	}
};
