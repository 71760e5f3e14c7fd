import type { lesson as english } from '../en/lesson.ts';

/** What lessons embed beside the steps: figures, tapes, comparisons. */
export const lesson: typeof english = (_voice) => ({});
