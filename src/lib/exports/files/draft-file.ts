import type { Body } from '#shared/body.ts';
import type { Draft } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import { draftDrawing } from '../drawing/draft-drawing.ts';
import { drawingScaled } from '../drawing/drawing.ts';
import type { MadeOf } from '../table/draft-json.ts';
import { paperOf, printedFor, SCALES, type FileRequest, type Format } from './pattern-file.ts';

/** The kinds of file that a draft can be saved as: a drawing file (dxf) holds the pieces of a garment. */
export const DRAFT_FORMATS = ['pdf', 'svg', 'csv', 'json'] as const satisfies readonly Format[];
type DraftFormat = (typeof DRAFT_FORMATS)[number];

/** What is wanted of a draft, which has no pieces. */
export interface DraftRequest extends Omit<FileRequest, 'pieces' | 'format'> {
	readonly format: DraftFormat;
	/** What the garment that is made of it shows of it, where a kind of file tells it. */
	readonly made?: () => MadeOf;
}

/** Whether a draft can be saved as a kind of file. */
export const isDraftFormat = (format: Format): format is DraftFormat =>
	DRAFT_FORMATS.some((each) => each === format);

/** A draft as a file of the wanted kind. Throws BadInput for a paper that is not there. The same input gives the same bytes. */
export const draftFile = async (
	method: Method,
	draft: Draft,
	body: Pick<Body, 'name'>,
	request: DraftRequest
): Promise<Uint8Array> => {
	const { format, paper, scale, speech, font, date, onPage, made } = request;
	const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
	if (format === 'csv') return bytes((await import('../table/tables.ts')).draftCsv(method, draft, speech));
	if (format === 'json') {
		const { draftJson } = await import('../table/draft-json.ts');
		return bytes(`${draftJson(draft, body.name, speech, made?.())}\n`);
	}
	const drawing = drawingScaled(draftDrawing(method, draft), SCALES[scale]);
	if (format === 'svg') {
		const { drawingsSvg } = await import('../svg/drawings-svg.ts');
		return bytes(drawingsSvg([drawing], speech.words.paper.madeFor({ what: method.name, body: body.name })));
	}
	const { patternPdf } = await import('../pdf/pattern-pdf.ts');
	return patternPdf([drawing], {
		paper: paperOf(paper),
		title: method.name,
		about: [printedFor(body.name, request)],
		speech,
		font: await font(),
		date,
		...(onPage ? { onPage } : {})
	});
};
