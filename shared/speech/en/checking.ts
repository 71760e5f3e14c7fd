import { onPaper } from './on-paper.ts';

/** What is said on the page of paper drafts alone. */
export const checking = { onPaper };
