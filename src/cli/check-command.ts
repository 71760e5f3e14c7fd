import { createInterface } from 'node:readline';
import { z } from 'zod';
import { BadInput, shown, slipWords } from '#shared/bad-input.ts';
import { englishIn } from '#shared/speech/english-for-now.ts';
import { readBody, type Body } from '#shared/body.ts';
import { policySchema, USUAL_POLICY, type Policy } from '#shared/policy.ts';
import type { Method } from '#drafting/method.ts';
import { checkSubmission } from '#checker/check-submission.ts';
import { reportJson, reportTable } from './check-output.ts';
import { draftOrRefuse } from './draft-or-refuse.ts';
import { exitCodeOf } from './exit-code.ts';
import { parsedJson, readInputFile } from './input-file.ts';
import { methodOf } from './method-files.ts';
import { onlyOf, onlyOne, parsedWords, type Subject } from './options.ts';
import { complain, writeOut } from './output.ts';
import { readPlacements } from './placements.ts';

const METHOD: Subject = { word: 'method', ask: 'name the method to check, such as back-block' };

const CHECK_USAGE = `Usage:
  square-across check METHOD --body FILE.json --placements FILE.json [--policy FILE.json] [--json] [--marks FILE.pdf]
  square-across check METHOD --stdin [--body FILE.json] [--policy FILE.json]

Placements are {"A":[0,222],"N":{"typed":"37/6+1"},...}: places across and down in mm, or what was typed, in the body's unit.
With --stdin each line is {"learner":"...","body":{...},"placements":{...}}; a line without a body takes that of --body.
--marks writes a sheet of the marks as well, to be printed.
A policy is {"level":"strict"|"normal"|"beginner","followThrough":"full"|"half"|"none","wrongCost":0.1,"hintCost":0.05}.
`;

const OPTIONS = {
	body: { type: 'string', multiple: true },
	placements: { type: 'string', multiple: true },
	policy: { type: 'string', multiple: true },
	marks: { type: 'string', multiple: true },
	stdin: { type: 'boolean' },
	json: { type: 'boolean' },
	help: { type: 'boolean', short: 'h' }
} as const;

/** What holds for every learner of one run. */
interface Setting {
	readonly method: Method;
	readonly policy: Policy;
	readonly body: Body | undefined;
}

const readPolicy = async (file: string | undefined): Promise<Policy> => {
	if (file === undefined) return USUAL_POLICY;
	const input = await readInputFile(file);
	const parsed = policySchema.safeParse(parsedJson(input));
	if (parsed.success) return parsed.data;
	const issue = parsed.error.issues[0];
	throw new BadInput(
		`${input.place}: ${issue?.path.join('.') || 'policy'}`,
		issue?.message ?? 'not a policy'
	);
};

const readBodyFile = async (file: string | undefined, method: Method): Promise<Body | undefined> => {
	if (file === undefined) return undefined;
	const input = await readInputFile(file);
	return readBody(parsedJson(input), `${input.place}: `, input.name, method.allowances);
};

const submissionSchema = z.looseObject({
	body: z.unknown().optional(),
	placements: z.record(z.string(), z.unknown())
});
/** Whose work a line holds is known even where the rest of it is of no use. */
const learnerSchema = z.looseObject({ learner: z.union([z.string(), z.number()]) });

/** Reads and checks one learner's placements. A fault of ours is told on the error stream, without anything that was measured. */
const checkedWork = (
	input: unknown,
	{ method, policy, body }: Setting & { readonly body: Body },
	bodyPlace: string,
	place: string
) => {
	const truth = draftOrRefuse(method, body, bodyPlace);
	const { placements, unreadable } = readPlacements(input, method, body, truth, `${place}: `);
	const report = checkSubmission(method, body, truth, placements, policy);
	for (const fault of report.faults) complain(`our-fault ${JSON.stringify(fault)}`);
	return { report, unreadable };
};

/** One line of standard input as one line of output; what is wrong with it is said in its place. */
const checkLine = (line: string, number: number, { method, policy, body }: Setting): string => {
	const place = `line ${String(number)}`;
	let learner: string | number = number;
	try {
		const input = parsedJson({ text: line.replace(/^\uFEFF/, ''), place });
		learner = learnerSchema.safeParse(input).data?.learner ?? number;
		const parsed = submissionSchema.safeParse(input);
		if (!parsed.success)
			throw new BadInput(
				place,
				`a submission is {"placements":{...}} and may have a body, not ${shown(line)}`
			);
		const own =
			parsed.data.body === undefined
				? body
				: readBody(parsed.data.body, `${place}: `, 'body', method.allowances);
		if (!own) throw new BadInput(`${place}: body`, 'missing; give one in the line, or --body for all');
		const { report, unreadable } = checkedWork(
			parsed.data.placements,
			{ method, policy, body: own },
			place,
			place
		);
		return JSON.stringify({ learner, ...reportJson(report, unreadable) });
	} catch (problem) {
		if (problem instanceof BadInput)
			return JSON.stringify({ learner, refused: slipWords(problem, englishIn('cm')) });
		// One learner's line never ends the work of all the others.
		complain(`our-fault ${place} ${problem instanceof Error ? problem.name : ''}`);
		return JSON.stringify({ learner, refused: `${place}: the program could not judge this` });
	}
};

const checkMany = async (setting: Setting): Promise<void> => {
	let number = 0;
	for await (const line of createInterface({ input: process.stdin, crlfDelay: Infinity })) {
		number += 1;
		if (line.trim() !== '' && !(await writeOut(`${checkLine(line, number, setting)}\n`))) return;
	}
};

const checkOne = async (
	{ method, policy, body }: Setting,
	file: string,
	json: boolean,
	marks: string | undefined
): Promise<void> => {
	if (!body) throw new BadInput('check', 'give --body FILE.json');
	const input = await readInputFile(file);
	const { report, unreadable } = checkedWork(
		parsedJson(input),
		{ method, policy, body },
		body.name,
		input.place
	);
	// What writes a PDF is loaded only where one is asked for.
	if (marks !== undefined)
		await (await import('./marks-file.ts')).writeMarks(report, method, body.name, marks);
	await writeOut(
		json ? `${JSON.stringify(reportJson(report, unreadable))}\n` : reportTable(report, method, body.name)
	);
};

const run = async (words: readonly string[]): Promise<void> => {
	const { values, positionals } = parsedWords('check', OPTIONS, words);
	if (values.help) {
		await writeOut(CHECK_USAGE);
		return;
	}
	const method = await methodOf(onlyOf('check', METHOD, positionals), 'check');
	const setting: Setting = {
		method,
		policy: await readPolicy(onlyOne('check', values.policy, '--policy')),
		body: await readBodyFile(onlyOne('check', values.body, '--body'), method)
	};
	const placements = onlyOne('check', values.placements, '--placements');
	if (values.stdin && placements !== undefined)
		throw new BadInput('check', `give --stdin or --placements, not both (${placements})`);
	const marks = onlyOne('check', values.marks, '--marks');
	if (values.stdin && marks !== undefined)
		throw new BadInput('check', `--marks is for one learner, not for --stdin (${marks})`);
	if (values.stdin) await checkMany(setting);
	else if (placements !== undefined) await checkOne(setting, placements, values.json ?? false, marks);
	else throw new BadInput('check', 'give --placements FILE.json for one learner, or --stdin for many');
};

/**
 * `square-across check METHOD`: checks work that was handed in, for one learner or for many on standard
 * input, and gives the exit code: 0 done, 2 for what a person can put right, told in one line.
 */
export const checkCommand = (words: readonly string[]): Promise<number> => exitCodeOf(() => run(words));
