import type { Words } from '#shared/speech/catalogue.ts';
import type { SheetPoint } from '#geometry/point.ts';

type Slips = Words['missteps']['slips'];

/** One thing that was done wrong, as data: which one, and what it was done with. */
export interface Slip {
	readonly key: keyof Slips;
	readonly values: readonly unknown[];
}

/** A slip of the catalogue; its values are those that its words take. */
export const slip = <K extends keyof Slips>(key: K, ...values: Parameters<Slips[K]>): Slip => ({
	key,
	values
});

/** A named wrong rule, and where it leads for one body. */
export interface Misstep {
	/** Stable and without numbers, so that a class's mistakes can be counted: `fraction:half-for-quarter`. */
	readonly note: string;
	/** What was done wrong; several things where it was several at once. */
	readonly slips: readonly Slip[];
	/** Where the wrong rule leads. */
	readonly place: SheetPoint;
	/** How common it is, as a share of wrong placements; already lowered for each further step of change. */
	readonly prior: number;
}

/** One part of a step done wrongly: the length, the start, the way, each with what it was in the place of the right one. */
export interface Part<T> {
	readonly note: string;
	readonly prior: number;
	/** Made where it is told: hundreds are only looked at. */
	readonly slip: () => Slip;
	readonly value: T;
	/** Which of a rule's terms it changes, where it is one alone. */
	readonly term?: number | undefined;
}

/**
 * What probably went wrong: one misstep for certain; one, two or three that may have been it, the likeliest first; or no guess. `seen` is
 * *place* where nothing but the place of the mark speaks for it: it is then told as what would lead there.
 */
export type Diagnosis =
	| { readonly kind: 'certain'; readonly misstep: Misstep; readonly seen?: 'place' }
	| {
			readonly kind: 'either';
			readonly missteps: readonly [Misstep, ...Misstep[]];
			readonly seen?: 'place';
	  }
	| { readonly kind: 'none' };

/** No guess is given. */
export const NO_DIAGNOSIS: Diagnosis = { kind: 'none' };
