import { mm, type Mm } from '#shared/units.ts';
import type { Formula } from '#drafting/formula/formula.ts';
import type { Part } from './misstep.ts';
import type { Stand } from './stand.ts';
import type { Term } from './terms.ts';

/** The rule that is worked wrongly: its formula, its terms and what they add up to. */
export interface Rule {
	readonly formula: Formula;
	readonly terms: readonly Term[];
	readonly whole: Mm;
	/** Whether a length that is so common is worth making: most lead nowhere near the mark. */
	readonly counts: (prior: number, length: number, term?: number) => boolean;
}

/** One kind of them, for a rule. */
export type Wide = (rule: Rule, stand: Stand) => readonly Part<Mm>[];

/** What a rule comes to with another length in the place of one of its terms, or another share of it. */
export const put = (
	{ whole }: Rule,
	term: Term,
	{ base, share }: Partial<Pick<Term, 'base' | 'share'>>
): Mm => mm(whole - term.base * term.share + (base ?? term.base) * (share ?? term.share));
