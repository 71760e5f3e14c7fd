import type { AllowanceValues } from '#shared/allowances.ts';
import type { Body } from '#shared/body.ts';
import { message, type Message } from '#shared/speech/message.ts';
import type { Speech } from '#shared/speech/speech.ts';
import { mm, type Mm } from '#shared/units.ts';
import {
	evaluate,
	warningWords,
	scopeOf,
	type Draft,
	type Evaluation,
	type Refusal
} from '#drafting/evaluate.ts';
import { numberOf, type Scope } from '#drafting/formula/value.ts';
import { chainsOf, type Chains, type EdgesOfPieces } from './chains.ts';
import type { Garment, NumberRule, SeamRule } from './garment.ts';
import { edgesOf } from './edges.ts';
import { runBetween, runsAcross, runsAtFolds, seamReport, type RunReport, type SeamReport } from './seams.ts';
import { wearReports, type WearReport } from './wear.ts';

/** What a maker chose for a garment: allowances by key, and the seam allowance of single edges by name (`front.side`). */
export interface Choices {
	readonly allowances: AllowanceValues;
	readonly edges: Readonly<Record<string, Mm>>;
}

export const NO_CHOICES: Choices = { allowances: {}, edges: {} };

/** A number that the garment reports. */
export interface ReportedNumber {
	readonly name: string;
	readonly label: string;
	readonly kind: 'length' | 'ratio';
	/** Millimetres for a length. */
	readonly value: number;
	readonly within: boolean;
}

/** What a maker should look at: found in a draft, or in how its pieces sew together. */
export type PatternWarning = Refusal | Message;

/** A garment's drafts and edges worked for a body, and all that shows whether they can be sewn and worn: what a pattern is made of. */
export interface Sewn {
	readonly drafts: Readonly<Record<string, Draft>>;
	readonly edges: EdgesOfPieces;
	readonly sides: readonly { readonly rule: SeamRule; readonly chains: Chains }[];
	readonly seams: readonly SeamReport[];
	readonly runs: readonly RunReport[];
	readonly numbers: readonly ReportedNumber[];
	readonly wear: readonly WearReport[];
	readonly warnings: readonly PatternWarning[];
}

const reported = (rule: NumberRule, scope: Scope): ReportedNumber => {
	const value = numberOf(rule.formula, scope);
	const { name, label, kind, atLeast, atMost } = rule;
	const within = (atLeast === undefined || value >= atLeast) && (atMost === undefined || value <= atMost);
	return { name, label, kind, value, within };
};

/** A warning of each seam whose two sides are not sewn as they are drafted. */
export const seamWarnings = (seams: readonly SeamReport[]): readonly Message[] =>
	seams
		.filter(({ within }) => !within)
		.map(({ label: seam, difference }) =>
			message('garments', 'seamOff', { seam, difference: mm(Math.abs(difference)), long: difference > 0 })
		);

const runWarnings = (runs: readonly RunReport[]): readonly Message[] =>
	runs
		.filter(({ within }) => !within)
		.map(({ run, corner }) => message('garments', 'runOff', { run, degrees: (corner * 180) / Math.PI }));

const numberWarnings = (
	rules: readonly NumberRule[],
	numbers: readonly ReportedNumber[]
): readonly Message[] =>
	numbers
		.filter(({ within }) => !within)
		.map(({ name, label, kind, value }) => {
			const because = rules.find((rule) => rule.name === name)?.because;
			return kind === 'length'
				? message('garments', 'lengthOff', { label, length: mm(value), because })
				: message('garments', 'ratioOff', { label, ratio: value, because });
		});

/** Works the drafts of a garment; gives the refusal of the first that this body does not have. */
const draftsOf = (
	garment: Garment,
	body: Body,
	chosen: AllowanceValues
): Readonly<Record<string, Draft>> | Extract<Evaluation, { kind: 'refused' }> => {
	const known = new Map<Garment['uses'][string], Evaluation>();
	const drafts: Record<string, Draft> = {};
	for (const [alias, method] of Object.entries(garment.uses)) {
		const evaluation = evaluate(method, body, chosen, known);
		if (evaluation.kind === 'refused') return evaluation;
		drafts[alias] = evaluation.draft;
	}
	return drafts;
};

/** The draft of a short name. */
export const draftNamed = (drafts: Readonly<Record<string, Draft>>, alias: string): Draft => {
	const draft = drafts[alias];
	if (!draft) throw new Error(`there is no draft "${alias}"`);
	return draft;
};

const isRefused = (work: ReturnType<typeof draftsOf>): work is Extract<Evaluation, { kind: 'refused' }> =>
	work['kind'] === 'refused';

/** Every warning of the drafts that a garment leans on, each once. */
const draftWarnings = (drafts: Readonly<Record<string, Draft>>): readonly Refusal[] => [
	...new Set(
		Object.values(drafts).flatMap(({ uses, warnings }): readonly Refusal[] => [
			...draftWarnings(uses),
			...warnings
		])
	)
];

/** What a maker should look at, in a sentence. */
export const patternWarningWords = (warning: PatternWarning, speech: Speech): string =>
	'key' in warning ? speech.tell(warning) : warningWords(warning, speech);

/**
 * Works a garment's drafts and edges for a body, measures every seam pair, looks at every run across a seam and works every check of wear:
 * all but the pieces' cutting lines. Gives the refusal of the draft that this body cannot have. Throws BadInput where the body lacks a
 * measurement.
 */
export const sewnFor = (
	garment: Garment,
	body: Body,
	choices: Choices = NO_CHOICES
): { readonly kind: 'sewn'; readonly sewn: Sewn } | Extract<Evaluation, { kind: 'refused' }> => {
	const drafts = draftsOf(garment, body, choices.allowances);
	if (isRefused(drafts)) return drafts;
	const scope = scopeOf(garment, body, { points: {}, lines: {}, uses: drafts }, choices.allowances);
	const edges = Object.fromEntries(
		garment.pieces.map((rule) => [
			rule.key,
			edgesOf(rule, draftNamed(drafts, rule.draft), scope, choices.edges)
		])
	);
	const sides = garment.seams.map((rule) => ({ rule, chains: chainsOf(rule, edges, garment.seams) }));
	const seams = sides.map(({ rule, chains }) => seamReport(rule, chains, edges, scope));
	const runs = [
		...sides.flatMap(({ rule, chains }) => runsAcross(rule, chains, edges)),
		...garment.smooth.flatMap((rule) => runBetween(rule, edges)),
		...runsAtFolds(edges, Object.fromEntries(garment.pieces.map(({ key, name }) => [key, name])))
	];
	const numbers = garment.numbers.map((rule) => reported(rule, scope));
	const wear = wearReports(garment, body, { drafts, edges }, scope);
	const warnings = [
		...draftWarnings(drafts),
		...seamWarnings(seams),
		...runWarnings(runs),
		...numberWarnings(garment.numbers, numbers)
	];
	return { kind: 'sewn', sewn: { drafts, edges, sides, seams, runs, numbers, wear, warnings } };
};
