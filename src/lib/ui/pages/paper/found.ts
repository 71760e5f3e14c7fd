import type { Body } from '#shared/body.ts';
import { mm, type Mm } from '#shared/units.ts';
import { asHandedIn } from '#checker/check-submission.ts';
import type { LearnersWork } from '#checker/work.ts';
import type { Draft } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import type { Measured } from './way.ts';

/** What was measured as the judge looks at it: as work that was handed in on paper, by the tolerances and with the other drafts of the learner's own. */
export const onPaper = (
	method: Method,
	body: Body,
	draft: Draft,
	measured: Measured,
	{ allowed, uses }: Pick<LearnersWork, 'allowed' | 'uses'>
): LearnersWork => asHandedIn(method, body, draft, measured, allowed, uses);

/** How far a measured place may lie from where it is said to. */
export const errorOf = (measured: Measured, name: string): Mm => mm(measured[name]?.error ?? 0);
