import { isChoice } from '#shared/allowances.ts';
import type { Body } from '#shared/body.ts';
import { scopeOf, type Draft, type Refusal } from '#drafting/evaluate.ts';
import type { Garment } from './garment.ts';
import { notchesOf } from './notches.ts';
import { pieceOf, type Piece } from './piece.ts';
import type { RunReport, SeamReport } from './seams.ts';
import {
	draftNamed,
	NO_CHOICES,
	sewnFor,
	type Choices,
	type PatternWarning,
	type ReportedNumber
} from './sewn.ts';
import { girthsReports, type GirthsReport, type WearReport } from './wear.ts';

export { patternWarningWords } from './sewn.ts';
export type { Choices, PatternWarning, ReportedNumber } from './sewn.ts';

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
	/** Whether the finished garment is to the body what it must be. */
	readonly wear: readonly WearReport[];
	readonly girths: readonly GirthsReport[];
	/** The drafts that the pieces were traced off, by their short names. */
	readonly drafts: Readonly<Record<string, Draft>>;
	/** What the maker should look at before cutting. */
	readonly warnings: readonly PatternWarning[];
}

/** A pattern, or the reasons why this body has none. */
export type PatternWork =
	| { readonly kind: 'made'; readonly pattern: Pattern }
	| { readonly kind: 'refused'; readonly refusals: readonly Refusal[] };

/**
 * Works a garment out for a body: every piece with its stitching and cutting line, every seam pair measured,
 * every run across a seam looked at, every check of wear worked. Gives the pattern, or the refusal of the draft that this body cannot
 * have. Throws BadInput where the body lacks a measurement.
 */
export const makePattern = (garment: Garment, body: Body, choices: Choices = NO_CHOICES): PatternWork => {
	const work = sewnFor(garment, body, choices);
	if (work.kind === 'refused') return work;
	const { drafts, edges, sides, seams, runs, numbers, wear, warnings } = work.sewn;
	const scope = scopeOf(garment, body, { points: {}, lines: {}, uses: drafts }, choices.allowances);
	const chosen = garment.allowances
		.filter(isChoice)
		.flatMap(({ key, choices: values }) =>
			values.filter((each) => each.share === scope.share(key)).map(({ label }) => label)
		);
	const notches = notchesOf(sides, edges, garment.pieces);
	const pieces = garment.pieces.map((rule) =>
		pieceOf(rule, edges[rule.key] ?? [], draftNamed(drafts, rule.draft), notches[rule.key] ?? [], scope)
	);
	return {
		kind: 'made',
		pattern: {
			garment: garment.id,
			body: body.name,
			chosen,
			pieces,
			seams,
			runs,
			numbers,
			wear,
			girths: girthsReports(garment, { drafts, edges }, scope),
			drafts,
			warnings
		}
	};
};
