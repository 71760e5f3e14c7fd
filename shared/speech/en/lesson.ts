import type { Voice } from '../voice.ts';

/** What lessons embed beside the steps: figures, tapes, comparisons. */
export const lesson = (_voice: Voice) => ({});
