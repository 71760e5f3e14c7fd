import { BadInput } from '#shared/bad-input.ts';
import type { Body } from '#shared/body.ts';
import { englishIn } from '#shared/speech/english-for-now.ts';
import type { Garment } from '#garment/garment.ts';
import { makePattern } from '#garment/pattern.ts';
import { refusedLine, workTable } from './batch.ts';
import { readBodyOptions, type BodyOptions } from './body-options.ts';
import { readMaker } from './edge-allowances.ts';
import { exitCodeOf } from './exit-code.ts';
import { garmentOf } from './garment-files.ts';
import { readInputFile, type InputFile } from './input-file.ts';
import type { Subject } from './options.ts';
import { writeOut } from './output.ts';
import { patternJson } from '#exports/table/pattern-json.ts';
import { patternTable } from './pattern-table.ts';
import { checkComplete, reasons } from './refusals.ts';

const PATTERN_USAGE = `Usage:
  square-across pattern GARMENT --body FILE.json [--json]   every piece of a garment for one body; - reads standard input
  square-across pattern GARMENT --bodies FILE.csv           for a table of bodies: one line of JSON a row

GARMENT is linnet-dress or another id of lessons/*/garment.yaml. A body is written as for draft, and may choose
"allowances":{"skirtLength":70,"seamAllowance":1.5} and for single edges "edges":{"front.side":2,"skirtFront.hem":4}.
A table may have allowances as columns. Without --json the tables are in cm; JSON is in mm.
`;

const GARMENT: Subject = { word: 'garment', ask: 'name the garment, such as linnet-dress' };

const patternOne = async (garment: Garment, file: InputFile, json: boolean): Promise<void> => {
	const { body, edges } = readMaker(file, garment);
	checkComplete(garment, body, file.place);
	const work = makePattern(garment, body, { allowances: {}, edges });
	if (work.kind === 'refused') throw new BadInput(file.place, reasons(work.refusals, body));
	await writeOut(
		json
			? `${patternJson(work.pattern, englishIn(body.unit))}\n`
			: patternTable(garment, work.pattern, englishIn(body.unit))
	);
};

const patternLine = (garment: Garment, body: Body): string => {
	const work = makePattern(garment, body);
	return work.kind === 'made'
		? patternJson(work.pattern, englishIn(body.unit))
		: refusedLine(body.name, reasons(work.refusals, body));
};

const run = async ({ id, input, json }: BodyOptions): Promise<void> => {
	const garment = await garmentOf(id, 'pattern');
	const file = await readInputFile(input.file);
	if (input.kind === 'body') await patternOne(garment, file, json);
	else await workTable(file, garment, (body) => patternLine(garment, body));
};

/**
 * `square-across pattern GARMENT --body FILE | --bodies FILE`: makes all pieces of a garment for one body or for a
 * table of them, and gives the exit code: 0 done, 2 for what a person can put right, told in one line.
 */
export const patternCommand = (words: readonly string[]): Promise<number> =>
	exitCodeOf(async () => {
		const options = readBodyOptions('pattern', GARMENT, words);
		if (options === 'help') await writeOut(PATTERN_USAGE);
		else await run(options);
	});
