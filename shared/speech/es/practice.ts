import type { practice as english } from '../en/practice.ts';

/** Exercises, what is said of answers, and how rules stand. */
export const practice: typeof english = (_voice) => ({});
