import type { paper as english } from '../en/paper.ts';

/** What is printed on pages, pieces and sheets. */
export const paper: typeof english = (_voice) => ({});
