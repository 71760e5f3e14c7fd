import { BadInput } from '#shared/bad-input.ts';
import { readBody, type Body } from '#shared/body.ts';
import { isMeasurementKey } from '#shared/measurements.ts';
import { printLength } from '#shared/units.ts';
import { evaluate, refusalWords, type Evaluation } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import { readBodyTable } from './body-table.ts';
import { readDraftOptions, type DraftOptions } from './draft-options.ts';
import { draftJson, draftTable } from './draft-output.ts';
import { readInputFile, type InputFile } from './input-file.ts';
import { methodOf } from './method-files.ts';
import { complain, writeOut } from './output.ts';

/** Exit code for a command, file or value that a person can put right, and for a body that cannot be drafted. */
const BAD_USE = 2;

const DRAFT_USAGE = `Usage:
  square-across draft METHOD --body FILE.json [--json]   draft one body; - reads standard input
  square-across draft METHOD --bodies FILE.csv           draft a table of bodies: one line of JSON a row

METHOD is back-block or another id of lessons/*/method.yaml. A body is {"name":"Heron","unit":"cm","bust":96,...},
with "allowances":{"bustEase":4} if you like. Lengths: 96, 96.5, "96,5", "37 3/4" (unit cm, mm or in; cm when none is named).
`;

/** Characters of output gathered before they are written: a write for every row would cost more than the draft. */
const CHUNK = 65_536;

const parsedJson = ({ text, place }: InputFile): unknown => {
	try {
		return JSON.parse(text);
	} catch (problem) {
		if (problem instanceof SyntaxError) throw new BadInput(place, `this is not JSON: ${problem.message}`);
		throw problem;
	}
};

const checkComplete = (method: Method, body: Body, place: string): void => {
	const missing = method.measurements.filter((key) => body.measurements[key] === undefined);
	if (missing.length > 0)
		throw new BadInput(`${place}: ${missing.join(', ')}`, `missing; ${method.id} needs it`);
};

/** Each failing rule in a sentence that names both measurements and their values, as the body's file writes them. */
const reasons = (evaluation: Extract<Evaluation, { kind: 'refused' }>, body: Body): string => {
	const valued = (key: string): string => {
		const length = isMeasurementKey(key) ? body.measurements[key] : undefined;
		return length === undefined ? key : `${key} (${printLength(length, body.unit)})`;
	};
	return evaluation.refusals.map((refusal) => refusalWords(refusal, valued)).join('; ');
};

const draftOne = async (method: Method, file: InputFile, json: boolean): Promise<void> => {
	const body = readBody(parsedJson(file), `${file.place}: `, file.name, method.allowances);
	checkComplete(method, body, file.place);
	const evaluation = evaluate(method, body);
	if (evaluation.kind === 'refused') throw new BadInput(file.place, reasons(evaluation, body));
	const { draft } = evaluation;
	await writeOut(json ? `${draftJson(draft, body.name)}\n` : draftTable(method, draft, body.name));
};

const draftLine = (method: Method, body: Body): string => {
	const evaluation = evaluate(method, body);
	return evaluation.kind === 'drafted'
		? draftJson(evaluation.draft, body.name)
		: JSON.stringify({ body: body.name, refused: reasons(evaluation, body) });
};

const draftMany = async (method: Method, file: InputFile): Promise<void> => {
	const table = readBodyTable(file, method);
	if (table.ignored !== undefined) complain(table.ignored);
	let chunk = '';
	for (const row of table.rows()) {
		const line =
			'body' in row ? draftLine(method, row.body) : JSON.stringify({ body: row.name, refused: row.problem });
		chunk += `${line}\n`;
		if (chunk.length < CHUNK) continue;
		if (!(await writeOut(chunk))) return;
		chunk = '';
	}
	await writeOut(chunk);
};

const run = async ({ method: id, input, json }: DraftOptions): Promise<void> => {
	const method = await methodOf(id);
	const file = await readInputFile(input.file);
	if (input.kind === 'body') await draftOne(method, file, json);
	else await draftMany(method, file);
};

/**
 * `square-across draft METHOD --body FILE | --bodies FILE`: works a method out for one body or for a
 * table of them, and gives the exit code: 0 done, 2 for what a person can put right, told in one line.
 */
export const draftCommand = async (words: readonly string[]): Promise<number> => {
	try {
		const options = readDraftOptions(words);
		if (options === 'help') await writeOut(DRAFT_USAGE);
		else await run(options);
		return 0;
	} catch (problem) {
		if (!(problem instanceof BadInput)) throw problem;
		complain(problem.message);
		return BAD_USE;
	}
};
