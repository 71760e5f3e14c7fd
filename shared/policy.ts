import { z } from 'zod';
import { LEVELS } from './tolerances.ts';

/** How work is marked: a teacher's choice, as data. Marks are shares of 1 for each step. */
export const policySchema = z.strictObject({
	/** Tries that count; null for as many as one likes. */
	attempts: z.number().int().positive().nullable().default(null),
	/** What each wrong try before it takes from a later right one. */
	wrongCost: z.number().min(0).max(1).default(0.1),
	/** What each rung of help takes. Less than a wrong try: asking is better than guessing. */
	hintCost: z.number().min(0).max(1).default(0.05),
	level: z.enum(LEVELS).default('normal'),
	/** What a step earns that is right only from the learner's own earlier slip. */
	followThrough: z.enum(['full', 'half', 'none']).default('full')
});

export type Policy = z.infer<typeof policySchema>;

/** What holds where a teacher has chosen nothing. */
export const USUAL_POLICY: Policy = policySchema.parse({});
