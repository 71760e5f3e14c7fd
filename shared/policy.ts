import type { Level } from './tolerances.ts';

/** How work is marked: a teacher's choice, as data. Marks are shares of 1 for each step. */
export interface Policy {
	/** Tries that count; null for as many as one likes. */
	readonly attempts: number | null;
	/** What each wrong try before it takes from a later right one. */
	readonly wrongCost: number;
	/** What each rung of help takes. */
	readonly hintCost: number;
	readonly level: Level;
	/** What a step earns that is right only from the learner's own earlier slip. */
	readonly followThrough: 'full' | 'half' | 'none';
}

/** What holds where a teacher has chosen nothing. Help takes less than a wrong try: asking is better than guessing. */
export const USUAL_POLICY: Policy = {
	attempts: null,
	wrongCost: 0.1,
	hintCost: 0.05,
	level: 'normal',
	followThrough: 'full'
};
