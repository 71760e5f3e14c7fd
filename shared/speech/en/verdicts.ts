import type { Voice } from '../voice.ts';

/** What the checker says of a placement. */
export const verdicts = (_voice: Voice) => ({});
