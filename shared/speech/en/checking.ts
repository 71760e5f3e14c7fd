import { onPaper } from './on-paper.ts';
import { photograph } from './photograph.ts';
import { tape } from './tape.ts';

/** What is said on the page of paper drafts alone. */
export const checking = { onPaper, photograph, tape };
