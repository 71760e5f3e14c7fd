import type { SheetPoint } from '#geometry/point.ts';

/** A named wrong rule, and where it leads for one body. */
export interface Misstep {
	/** Stable and without numbers, so that a class's mistakes can be counted: `fraction:half-for-quarter`. */
	readonly note: string;
	/** A plain sentence for the learner: "You took half of the bust; the rule is a quarter." */
	readonly words: string;
	/** Where the wrong rule leads. */
	readonly place: SheetPoint;
	/** How common it is, as a share of wrong placements; already lowered for each further step of change. */
	readonly prior: number;
}

/** What probably went wrong: one misstep, two or three that explain it about equally well, or no guess. */
export type Diagnosis =
	| { readonly kind: 'certain'; readonly misstep: Misstep }
	| { readonly kind: 'either'; readonly missteps: readonly [Misstep, Misstep, ...Misstep[]] }
	| { readonly kind: 'none' };

/** No guess is given. */
export const NO_DIAGNOSIS: Diagnosis = { kind: 'none' };
