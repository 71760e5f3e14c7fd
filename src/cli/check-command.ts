import { createInterface } from 'node:readline';
import { z } from 'zod';
import { BadInput, shown, slipWords } from '#shared/bad-input.ts';
import { shapeSlip } from '#shared/reading.ts';
import { message } from '#shared/speech/message.ts';
import type { Speech } from '#shared/speech/speech.ts';
import { readBody, type Body } from '#shared/body.ts';
import { policySchema } from '#shared/policy-shape.ts';
import { USUAL_POLICY, type Policy } from '#shared/policy.ts';
import type { Method } from '#drafting/method.ts';
import { checkSubmission } from '#checker/check-submission.ts';
import { readBodyFile } from './body-file.ts';
import { reportJson, reportTable, tapeJson, tapeLines } from './check-output.ts';
import { draftOrRefuse } from './draft-or-refuse.ts';
import type { Command } from './exit-code.ts';
import { tellFormer } from './former-names.ts';
import { readInputFile, type InputFile } from './input-file.ts';
import { lessonCourse } from './lesson-course.ts';
import { onlyOf, onlyOne, parsedWords } from './options.ts';
import { complain, writeOut } from './output.ts';
import { readPlacements } from './placements.ts';
import { checkKeys, parsedJson, readJson } from './read-json.ts';
import { methodOf } from './find-subject.ts';

const OPTIONS = {
	body: { type: 'string', multiple: true },
	placements: { type: 'string', multiple: true },
	tape: { type: 'string', multiple: true },
	'measured-with': { type: 'string', multiple: true },
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
	readonly speech: Speech;
}

const readPolicy = async (file: string | undefined, speech: Speech): Promise<Policy> => {
	if (file === undefined) return USUAL_POLICY;
	const input = await readInputFile(file, speech);
	const written = readJson(input);
	const { data, error } = policySchema.safeParse(written);
	const [issue] = error?.issues ?? [];
	if (!issue) return data ?? USUAL_POLICY;
	throw new BadInput(`${input.place}: ${issue.path.join('.') || 'policy'}`, shapeSlip(issue, written));
};

const bodyFrom = async (
	file: string | undefined,
	method: Method,
	speech: Speech
): Promise<Body | undefined> => {
	if (file === undefined) return undefined;
	return readBodyFile(await readInputFile(file, speech), method.allowances, speech);
};

const submissionSchema = z.looseObject({
	body: z.unknown().optional(),
	placements: z.record(z.string(), z.unknown())
});
/** Longer than what a learner is called by: such a one goes by the number of the line. */
const LONGEST_NAME = 200;
/** Whose work a line holds is known even where the rest of it is of no use. */
const learnerSchema = z.looseObject({ learner: z.union([z.string().max(LONGEST_NAME), z.number()]) });

/** Reads and checks one learner's placements. A fault of ours is told on the error stream, without anything that was measured. */
const checkedWork = (
	input: unknown,
	{ method, policy, body, speech }: Setting & { readonly body: Body },
	bodyPlace: string,
	place: string
) => {
	const truth = draftOrRefuse(method, body, bodyPlace, speech);
	const { placements, unreadable, uses } = readPlacements(input, method, body, truth, `${place}: `);
	const report = checkSubmission(method, body, truth, placements, policy, uses);
	for (const fault of report.faults) complain(`our-fault ${JSON.stringify(fault)}`);
	return { report, unreadable };
};

/** One line of standard input as one line of output; what is wrong with it is said in its place. */
const checkLine = (line: string, number: number, { method, policy, body, speech }: Setting): string => {
	const { command } = speech.words;
	const place = command.line({ number });
	let learner: string | number = number;
	try {
		const text = line.replace(/^\uFEFF/, '');
		const input = parsedJson(text, place);
		learner = learnerSchema.safeParse(input).data?.learner ?? number;
		checkKeys(text, place);
		const submission = submissionSchema.safeParse(input);
		tellFormer(submission.data?.body, place, speech);
		if (!submission.success)
			throw new BadInput(place, message('command', 'submissionShape', { seen: shown(line) }));
		const own =
			submission.data.body === undefined
				? body
				: readBody(submission.data.body, `${place}: `, 'body', method.allowances);
		if (!own) throw new BadInput(`${place}: body`, message('command', 'bodyMissing'));
		const { report, unreadable } = checkedWork(
			submission.data.placements,
			{ method, policy, body: own, speech },
			place,
			place
		);
		return JSON.stringify({ learner, ...reportJson(report, unreadable, speech) });
	} catch (problem) {
		if (problem instanceof BadInput) return JSON.stringify({ learner, refused: slipWords(problem, speech) });
		// One learner's line never ends the work of all the others.
		complain(`our-fault ${place} ${problem instanceof Error ? problem.name : ''}`);
		return JSON.stringify({ learner, refused: command.couldNotJudge({ place }) });
	}
};

const checkMany = async (setting: Setting): Promise<void> => {
	let number = 0;
	for await (const line of createInterface({ input: process.stdin, crlfDelay: Infinity })) {
		number += 1;
		if (line.trim() !== '' && !(await writeOut(`${checkLine(line, number, setting)}\n`))) return;
	}
};

/** The work of one learner: placements, or what a tape said between the points of a paper draft. */
type Handed =
	| { readonly kind: 'placements'; readonly file: string }
	| { readonly kind: 'tape'; readonly file: string; readonly measuredWith: string | undefined };

/** What a tape found is judged as work that was handed in. */
const checkedTape = async (
	input: InputFile,
	{ method, policy, body, speech }: Setting & { readonly body: Body },
	measuredWith: string | undefined
) => {
	const truth = draftOrRefuse(method, body, body.name, speech);
	const { tapedIn } = await import('./tape-file.ts');
	const taped = tapedIn(input, method, truth, body.unit, measuredWith);
	const report = checkSubmission(method, body, truth, taped.measured, policy);
	for (const fault of report.faults) complain(`our-fault ${JSON.stringify(fault)}`);
	return { report, unreadable: {}, taped };
};

const checkOne = async (
	setting: Setting,
	handed: Handed,
	json: boolean,
	marks: string | undefined
): Promise<void> => {
	const { method, body, speech } = setting;
	if (!body) throw new BadInput('check', message('command', 'giveOneBody'));
	const input = await readInputFile(handed.file, speech);
	const own = { ...setting, body };
	const { report, unreadable, taped } =
		handed.kind === 'tape'
			? await checkedTape(input, own, handed.measuredWith)
			: { ...checkedWork(readJson(input), own, body.name, input.place), taped: undefined };
	// What writes a PDF is loaded only where one is asked for.
	if (marks !== undefined)
		await (await import('./marks-file.ts')).writeMarks(report, method, body.name, marks, speech);
	await writeOut(
		json
			? `${JSON.stringify({ ...reportJson(report, unreadable, speech), ...(taped ? { tape: tapeJson(taped) } : {}) })}\n`
			: `${reportTable(report, method, body.name, speech)}${taped ? tapeLines(taped, speech) : ''}`
	);
};

/** Whose work is checked, and how it was handed in. Throws BadInput where two ways are given, or none. */
const handedBy = (values: {
	readonly stdin?: boolean | undefined;
	readonly placements?: string[] | undefined;
	readonly tape?: string[] | undefined;
	readonly 'measured-with'?: string[] | undefined;
}): Handed | 'stdin' => {
	const placements = onlyOne('check', values.placements, '--placements');
	const tape = onlyOne('check', values.tape, '--tape');
	const measuredWith = onlyOne('check', values['measured-with'], '--measured-with');
	if (values.stdin && placements !== undefined)
		throw new BadInput('check', message('command', 'stdinOrPlacements', { file: placements }));
	if (tape !== undefined && (values.stdin || placements !== undefined))
		throw new BadInput('check', message('command', 'tapeAlone', { file: tape }));
	if (tape === undefined && measuredWith !== undefined)
		throw new BadInput('check', message('command', 'measuredWithTape'));
	if (values.stdin) return 'stdin';
	if (tape !== undefined) return { kind: 'tape', file: tape, measuredWith };
	if (placements === undefined) throw new BadInput('check', message('command', 'givePlacements'));
	return { kind: 'placements', file: placements };
};

/** `square-across check METHOD`: checks work that was handed in, for one learner or for many on standard input. */
export const checkCommand: Command = async (words, speech) => {
	const { values, positionals } = parsedWords('check', OPTIONS, words);
	if (values.help) {
		await writeOut(speech.words.command.usage({ of: 'check' }));
		return;
	}
	const method = methodOf(
		lessonCourse(speech.language),
		onlyOf({ command: 'check', kind: 'method' }, positionals),
		'check'
	);
	const setting: Setting = {
		method,
		policy: await readPolicy(onlyOne('check', values.policy, '--policy'), speech),
		body: await bodyFrom(onlyOne('check', values.body, '--body'), method, speech),
		speech
	};
	const handed = handedBy(values);
	const marks = onlyOne('check', values.marks, '--marks');
	if (handed !== 'stdin') await checkOne(setting, handed, values.json ?? false, marks);
	else if (marks === undefined) await checkMany(setting);
	else throw new BadInput('check', message('command', 'marksForOne', { file: marks }));
};
