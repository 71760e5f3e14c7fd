import { englishIn } from '#shared/speech/english-for-now.ts';
import { readBody, type Body } from '#shared/body.ts';
import { evaluate } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import { draftJson } from '#exports/table/draft-json.ts';
import { refusedLine, workTable } from './batch.ts';
import { readBodyOptions, type BodyOptions } from './body-options.ts';
import { draftOrRefuse } from './draft-or-refuse.ts';
import { draftTable } from './draft-output.ts';
import { exitCodeOf } from './exit-code.ts';
import { parsedJson, readInputFile, type InputFile } from './input-file.ts';
import { methodOf } from './method-files.ts';
import type { Subject } from './options.ts';
import { writeOut } from './output.ts';
import { reasons } from './refusals.ts';

const DRAFT_USAGE = `Usage:
  square-across draft METHOD --body FILE.json [--json]   draft one body; - reads standard input
  square-across draft METHOD --bodies FILE.csv           draft a table of bodies: one line of JSON a row

METHOD is back-block or another id of lessons/*/method.yaml. A body is {"name":"Heron","unit":"cm","bust":96,...},
with "allowances":{"bustEase":4} if you like. Lengths: 96, 96.5, "96,5", "37 3/4" (unit cm, mm or in; cm when none is named).
`;

const METHOD: Subject = { word: 'method', ask: 'name the method to draft, such as back-block' };

const draftOne = async (method: Method, file: InputFile, json: boolean): Promise<void> => {
	const body = readBody(parsedJson(file), `${file.place}: `, file.name, method.allowances);
	const draft = draftOrRefuse(method, body, file.place);
	await writeOut(
		json ? `${draftJson(draft, body.name, englishIn(body.unit))}\n` : draftTable(method, draft, body.name)
	);
};

const draftLine = (method: Method, body: Body): string => {
	const evaluation = evaluate(method, body);
	return evaluation.kind === 'drafted'
		? draftJson(evaluation.draft, body.name, englishIn(body.unit))
		: refusedLine(body.name, reasons(evaluation.refusals, body));
};

const run = async ({ id, input, json }: BodyOptions): Promise<void> => {
	const method = await methodOf(id, 'draft');
	const file = await readInputFile(input.file);
	if (input.kind === 'body') await draftOne(method, file, json);
	else await workTable(file, method, (body) => draftLine(method, body));
};

/**
 * `square-across draft METHOD --body FILE | --bodies FILE`: works a method out for one body or for a
 * table of them, and gives the exit code: 0 done, 2 for what a person can put right, told in one line.
 */
export const draftCommand = (words: readonly string[]): Promise<number> =>
	exitCodeOf(async () => {
		const options = readBodyOptions('draft', METHOD, words);
		if (options === 'help') await writeOut(DRAFT_USAGE);
		else await run(options);
	});
