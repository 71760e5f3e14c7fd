import { z } from 'zod';
import { USUAL_POLICY } from './policy.ts';
import { LEVELS } from './tolerances.ts';

/** A policy as it is written in a file or a form, which may leave things as they usually are. Apart from the policy itself: pages know that, and need no more of zod. */
export const policySchema = z.strictObject({
	attempts: z.number().int().positive().nullable().default(USUAL_POLICY.attempts),
	wrongCost: z.number().min(0).max(1).default(USUAL_POLICY.wrongCost),
	hintCost: z.number().min(0).max(1).default(USUAL_POLICY.hintCost),
	level: z.enum(LEVELS).default(USUAL_POLICY.level),
	followThrough: z.enum(['full', 'half', 'none']).default(USUAL_POLICY.followThrough)
});
