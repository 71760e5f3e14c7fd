import { placementSchema } from './placement.ts';
import { z } from './shape.ts';

/** What a learner has done at one step: what was put down, whether it was checked, and what that has cost. */
export const entrySchema = z.object({
	placement: z.optional(placementSchema),
	/** Whether this very placement was given to the checker. */
	checked: z._default(z.boolean(), false),
	tries: z._default(z.int().check(z.minimum(0)), 0),
	/** Rungs of help opened, 0 to 3. */
	help: z._default(z.int().check(z.minimum(0), z.maximum(3)), 0),
	/** It is wrong, and the learner goes on from it as it is. */
	kept: z._default(z.boolean(), false),
	/** The program placed it, because the learner began at a later lesson. */
	shown: z._default(z.boolean(), false)
});

export type Entry = z.infer<typeof entrySchema>;
/** What a learner has drafted of one method, by the names of its steps. */
export type Entries = Readonly<Record<string, Entry>>;
