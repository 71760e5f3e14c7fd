import type { Voice } from '../voice.ts';

/** Why a body cannot be drafted, and what to look at before cutting. */
export const drafts = (_voice: Voice) => ({});
