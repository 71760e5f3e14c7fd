import type { drafts as english } from '../en/drafts.ts';

/** Why a body cannot be drafted, and what to look at before cutting. */
export const drafts: typeof english = (_voice) => ({});
