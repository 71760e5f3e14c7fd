import type { Voice } from '../voice.ts';

/** Exercises, what is said of answers, and how rules stand. */
export const practice = (_voice: Voice) => ({});
