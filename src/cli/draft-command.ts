import { BadInput } from '#shared/bad-input.ts';
import { readBody, type Body } from '#shared/body.ts';
import { evaluate } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import { readBodyTable } from './body-table.ts';
import { readDraftOptions, type DraftOptions } from './draft-options.ts';
import { draftOrRefuse, reasons } from './draft-or-refuse.ts';
import { draftJson, draftTable } from './draft-output.ts';
import { parsedJson, readInputFile, type InputFile } from './input-file.ts';
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

const draftOne = async (method: Method, file: InputFile, json: boolean): Promise<void> => {
	const body = readBody(parsedJson(file), `${file.place}: `, file.name, method.allowances);
	const draft = draftOrRefuse(method, body, file.place);
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
	const method = await methodOf(id, 'draft');
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
