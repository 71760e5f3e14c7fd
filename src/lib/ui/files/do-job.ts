import { BadInput, ruleWords } from '#shared/bad-input.ts';
import { englishIn } from '#shared/speech/english-for-now.ts';
import { measurementWords } from '#shared/measurements.ts';
import { mm } from '#shared/units.ts';
import { evaluate, refusalWords, type Draft, type Refusal } from '#drafting/evaluate.ts';
import { listed } from '#drafting/words.ts';
import { draftFile } from '#exports/files/draft-file.ts';
import { fileName } from '#exports/files/file-name.ts';
import { paperOf, patternFile, patternSheet, SCALES, type Format } from '#exports/files/pattern-file.ts';
import { planPages } from '#exports/sheets/page-plan.ts';
import { ROLLS } from '#exports/sheets/tiles.ts';
import { makePattern, type Pattern } from '#garment/pattern.ts';
import type { DraftJob, Job, LaidPattern, MadeFile, Pages, PatternJob, Said } from './job.ts';

/** What a job is done with. */
export interface Means {
	/** The typeface of a PDF. */
	readonly font: () => Promise<Uint8Array>;
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

const madeFile = (name: string, bytes: Uint8Array, format: Format): MadeFile => ({
	name: `${fileName(name)}.${format}`,
	content: new Blob([bytes.slice()], { type: TYPES[format] })
});

/** Throws BadInput with the reasons why a body has no draft. */
const refuse = (name: string, refusals: readonly Refusal[]): never => {
	throw new BadInput(
		name,
		`nothing can be drafted for ${name} yet: ${refusals.map((each) => refusalWords(each, englishIn('cm'))).join('; ')}`
	);
};

/** Throws BadInput where the body lacks a measurement that is needed. */
const needAll = (
	{ measurements }: Pick<LaidPattern['garment'], 'measurements'>,
	body: LaidPattern['body']
): void => {
	const missing = measurements.filter((key) => body.measurements[key] === undefined);
	if (missing.length > 0)
		throw new BadInput(body.name, `${body.name} lacks ${listed(missing.map(measurementWords))}`);
};

const patternOf = ({ garment, body, choices, pieces }: LaidPattern): Pattern => {
	if (pieces.length === 0) throw new BadInput('pieces', 'no piece is chosen');
	needAll(garment, body);
	const work = makePattern(garment, body, choices);
	return work.kind === 'made' ? work.pattern : refuse(body.name, work.refusals);
};

const pagesOf = (job: LaidPattern): Pages => {
	const { paper, drawings } = patternSheet(job.garment, patternOf(job), {
		...job,
		speech: englishIn(job.unit)
	});
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

/** How large a file's drawing is, where that is not its full size. */
const sized = (name: string, { scale }: Pick<LaidPattern, 'scale'>): string =>
	scale === 'full' ? name : `${name}, ${scale} size`;

const patternFiles = async (job: PatternJob, { font, onProgress }: Means): Promise<readonly MadeFile[]> => {
	const { garment, body, format, pieces, paper, scale, unit, date } = job;
	const pattern = patternOf(job);
	const request = { format, paper, scale, speech: englishIn(unit), date, font };
	const name = sized(`${garment.name} for ${body.name}`, job);
	if (!job.each) {
		const bytes = await patternFile(garment, pattern, { ...request, pieces, onPage: onProgress });
		return [madeFile(name, bytes, format)];
	}
	const wanted = pattern.pieces.filter(({ key }) => pieces.includes(key));
	const files: MadeFile[] = [];
	for (const { key, number, name: piece } of wanted) {
		const bytes = await patternFile(garment, pattern, { ...request, pieces: [key] });
		// The number stands first, so that a long name of a body cannot make two files alike.
		files.push(madeFile(`${number} ${piece}, ${name}`, bytes, format));
		onProgress(files.length, wanted.length);
	}
	return files;
};

const draftOf = ({ method, body }: DraftJob): Draft => {
	needAll(method, body);
	const work = evaluate(method, body);
	return work.kind === 'drafted' ? work.draft : refuse(body.name, work.refusals);
};

/** A picture is made of a drawing, by whoever has a canvas. */
const sheetFormat = (sheet: DraftJob['sheet']): 'pdf' | 'svg' => (sheet === 'picture' ? 'svg' : 'pdf');

const draftBytes = async (job: DraftJob, title: string, { font, onProgress }: Means): Promise<Uint8Array> => {
	const { sheet, method, body, paper, scale, unit, date, worked } = job;
	const draft = draftOf(job);
	if (sheet === 'draft' || sheet === 'picture') {
		const format = sheetFormat(sheet);
		const request = { format, paper, scale, speech: englishIn(unit), font, date, onPage: onProgress };
		return draftFile(method, draft, body, request);
	}
	const work = { method, body, draft, speech: englishIn(unit) };
	const options = { paper: paperOf(paper), title, font: await font(), date };
	if (sheet === 'rules') return (await import('#exports/pdf/rule-sheet.ts')).ruleSheetPdf(work, options);
	const { worksheetPdf } = await import('#exports/pdf/worksheet.ts');
	return worksheetPdf(work, { ...options, share: SCALES[scale], worked, onPage: onProgress });
};

const SHEET_NAMES: Readonly<Record<DraftJob['sheet'], string>> = {
	draft: '',
	worksheet: 'Worksheet, ',
	rules: 'Rule sheet, ',
	picture: ''
};

const sheetFile = async (job: DraftJob, means: Means): Promise<MadeFile> => {
	const title = `${SHEET_NAMES[job.sheet]}${job.method.name}`;
	const name = `${title} for ${job.body.name}`;
	const bytes = await draftBytes(job, title, means);
	return madeFile(job.sheet === 'rules' ? name : sized(name, job), bytes, sheetFormat(job.sheet));
};

const answer = async (job: Job, means: Means): Promise<Said> => {
	if (job.kind === 'plan') return { kind: 'pages', pages: pagesOf(job) };
	if (job.kind === 'pattern') return { kind: 'files', files: await patternFiles(job, means) };
	return { kind: 'files', files: [await sheetFile(job, means)] };
};

/** Does a job and gives its answer; never throws. */
export const doJob = async (job: Job, means: Means): Promise<Said> => {
	try {
		return await answer(job, means);
	} catch (error) {
		if (error instanceof BadInput) return { kind: 'refused', words: ruleWords(error, englishIn('cm')) };
		return { kind: 'our-fault', told: error instanceof Error ? error.message : String(error) };
	}
};
