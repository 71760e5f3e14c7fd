import type { verdicts as english } from '../en/verdicts.ts';

/** What the checker says of a placement. */
export const verdicts: typeof english = (_voice) => ({});
