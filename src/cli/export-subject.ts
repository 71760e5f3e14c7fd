import { BadInput } from '#shared/bad-input.ts';
import { readBody, type Body } from '#shared/body.ts';
import { englishIn } from '#shared/speech/english-for-now.ts';
import { didYouMean } from '#shared/nearest-name.ts';
import { methodFileId, methodLibrary } from '#drafting/library.ts';
import type { Method } from '#drafting/method.ts';
import { DRAFT_FORMATS, draftFile, isDraftFormat } from '#exports/files/draft-file.ts';
import { FORMATS, patternFile, type FileRequest, type Format } from '#exports/files/pattern-file.ts';
import type { Garment } from '#garment/garment.ts';
import { makePattern } from '#garment/pattern.ts';
import { readGarment } from '#garment/read-garment.ts';
import type { Wanted } from './body-table.ts';
import { draftOrRefuse } from './draft-or-refuse.ts';
import { readMaker, type Maker } from './edge-allowances.ts';
import { parsedJson, type InputFile } from './input-file.ts';
import { lessonFiles } from './lesson-files.ts';
import { checkComplete, reasons } from './refusals.ts';

/** What is asked of a file, but for the words' unit, which the body says. */
export type Request = Omit<FileRequest, 'speech'>;

/** A piece by its key, and what a file of its own is called. */
export interface NamedPiece {
	readonly key: string;
	readonly fileName: string;
}

/** What can be exported: a garment's pattern, or the draft of a method. */
export interface ExportSubject extends Wanted {
	/** The kinds of file that it can be. */
	readonly formats: readonly Format[];
	/** All pieces; none for a draft. */
	readonly pieces: readonly NamedPiece[];
	readonly read: (file: InputFile) => Maker;
	/** Works it out for a body, and gives what makes its files. Throws BadInput at `place` where the body is refused. */
	readonly work: (maker: Maker, place: string) => (request: Request) => Promise<Uint8Array>;
}

const garmentSubject = (garment: Garment): ExportSubject => ({
	id: garment.id,
	measurements: garment.measurements,
	allowances: garment.allowances,
	formats: FORMATS,
	pieces: garment.pieces.map(({ key, number, name }) => ({ key, fileName: `${number} ${name}` })),
	read: (file) => readMaker(file, garment),
	work: ({ body, edges }, place) => {
		checkComplete(garment, body, place);
		const made = makePattern(garment, body, { allowances: {}, edges });
		if (made.kind === 'refused') throw new BadInput(place, reasons(made.refusals, body));
		return (request) => patternFile(garment, made.pattern, { ...request, speech: englishIn(body.unit) });
	}
});

const methodBody = (method: Method, file: InputFile): Body =>
	readBody(parsedJson(file), `${file.place}: `, file.name, method.allowances);

const methodSubject = (method: Method): ExportSubject => ({
	id: method.id,
	measurements: method.measurements,
	allowances: method.allowances,
	formats: DRAFT_FORMATS,
	pieces: [],
	read: (file) => ({ body: methodBody(method, file), edges: {} }),
	work: ({ body }, place) => {
		const draft = draftOrRefuse(method, body, place);
		return async ({ format, ...rest }) => {
			if (!isDraftFormat(format)) throw new BadInput(method.id, `a draft is no ${format}`);
			return draftFile(method, draft, body, { ...rest, format, speech: englishIn(body.unit) });
		};
	}
});

/** The garment or the method of this id, from the lessons. Throws BadInput, naming the nearest, where there is none. */
export const exportSubject = async (id: string): Promise<ExportSubject> => {
	const [garments, methods] = await Promise.all([lessonFiles('garment.yaml'), lessonFiles('method.yaml')]);
	const find = methodLibrary(methods);
	const file = garments.find((each) => methodFileId(each) === id);
	if (file) return garmentSubject(readGarment(file.content, file.place, find));
	const method = find(id);
	if (method) return methodSubject(method);
	const ids = [...new Set([...garments, ...methods].map(methodFileId))];
	throw new BadInput(
		'export',
		`there is no garment or method "${id}"${didYouMean(id, ids)}; there are ${ids.join(', ')}`
	);
};
