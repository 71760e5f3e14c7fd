import { isChoice, type AllowanceValues } from '#shared/allowances.ts';
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
import { chainsOf } from './chains.ts';
import type { Garment, NumberRule } from './garment.ts';
import { notchesOf } from './notches.ts';
import { edgesOf, pieceOf, type Piece } from './piece.ts';
import { runBetween, runsAcross, runsAtFolds, seamReport, type RunReport, type SeamReport } from './seams.ts';

/** What a maker chose for a garment: allowances by key, and the seam allowance of single edges by name (`front.side`). */
export interface Choices {
	readonly allowances: AllowanceValues;
	readonly edges: Readonly<Record<string, Mm>>;
}

const NO_CHOICES: Choices = { allowances: {}, edges: {} };

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

/** All the pieces of a garment for a body, with what shows that they sew together. */
export interface Pattern {
	readonly garment: string;
	readonly body: string;
	/** The named values that it is made with, by their labels: "a half circle". */
	readonly chosen: readonly string[];
	readonly pieces: readonly Piece[];
	readonly seams: readonly SeamReport[];
	readonly runs: readonly RunReport[];
	readonly numbers: readonly ReportedNumber[];
	/** The drafts that the pieces were traced off, by their short names. */
	readonly drafts: Readonly<Record<string, Draft>>;
	/** What the maker should look at before cutting. */
	readonly warnings: readonly PatternWarning[];
}

/** A pattern, or the reasons why this body has none. */
export type PatternWork =
	| { readonly kind: 'made'; readonly pattern: Pattern }
	| { readonly kind: 'refused'; readonly refusals: readonly Refusal[] };

const reported = (rule: NumberRule, scope: Scope): ReportedNumber => {
	const value = numberOf(rule.formula, scope);
	const { name, label, kind, atLeast, atMost } = rule;
	const within = (atLeast === undefined || value >= atLeast) && (atMost === undefined || value <= atMost);
	return { name, label, kind, value, within };
};

const seamWarnings = (seams: readonly SeamReport[]): readonly Message[] =>
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

const isRefused = (work: ReturnType<typeof draftsOf>): work is Extract<Evaluation, { kind: 'refused' }> =>
	work['kind'] === 'refused';

/**
 * Every warning of the drafts that a garment leans on, each once; not those of lengths that are not sewn as drafted, for a
 * garment measures its own seams.
 */
const draftWarnings = (drafts: Readonly<Record<string, Draft>>): readonly Refusal[] => [
	...new Set(
		Object.values(drafts).flatMap(({ uses, warnings }): readonly Refusal[] => [
			...draftWarnings(uses),
			...warnings.filter((each): each is Refusal => !('difference' in each))
		])
	)
];

/** What a maker should look at, in a sentence. */
export const patternWarningWords = (warning: PatternWarning, speech: Speech): string =>
	'key' in warning ? speech.tell(warning) : warningWords(warning, speech);

/**
 * Works a garment out for a body: every piece with its stitching and cutting line, every seam pair measured,
 * every run across a seam looked at. Gives the pattern, or the refusal of the draft that this body cannot
 * have. Throws BadInput where the body lacks a measurement.
 */
export const makePattern = (garment: Garment, body: Body, choices: Choices = NO_CHOICES): PatternWork => {
	const drafts = draftsOf(garment, body, choices.allowances);
	if (isRefused(drafts)) return drafts;
	const scope = scopeOf(garment, body, { points: {}, lines: {}, uses: drafts }, choices.allowances);
	const chosen = garment.allowances
		.filter(isChoice)
		.flatMap(({ key, choices: values }) =>
			values.filter(({ share }) => share === scope.share(key)).map(({ label }) => label)
		);
	const draftOf = (alias: string): Draft => {
		const draft = drafts[alias];
		if (!draft) throw new Error(`the garment ${garment.id} has no draft "${alias}"`);
		return draft;
	};
	const edges = Object.fromEntries(
		garment.pieces.map((rule) => [rule.key, edgesOf(rule, draftOf(rule.draft), scope, choices.edges)])
	);
	const sides = garment.seams.map((rule) => ({ rule, chains: chainsOf(rule, edges, garment.seams) }));
	const notches = notchesOf(sides, edges, garment.pieces);
	const pieces = garment.pieces.map((rule) =>
		pieceOf(rule, edges[rule.key] ?? [], draftOf(rule.draft), notches[rule.key] ?? [])
	);
	const seams = sides.map(({ rule, chains }) => seamReport(rule, chains, edges, scope));
	const runs = [
		...sides.flatMap(({ rule, chains }) => runsAcross(rule, chains, edges)),
		...garment.smooth.flatMap((rule) => runBetween(rule, edges)),
		...runsAtFolds(edges, Object.fromEntries(garment.pieces.map(({ key, name }) => [key, name])))
	];
	const numbers = garment.numbers.map((rule) => reported(rule, scope));
	const warnings = [
		...draftWarnings(drafts),
		...seamWarnings(seams),
		...runWarnings(runs),
		...numberWarnings(garment.numbers, numbers)
	];
	return {
		kind: 'made',
		pattern: { garment: garment.id, body: body.name, chosen, pieces, seams, runs, numbers, drafts, warnings }
	};
};
