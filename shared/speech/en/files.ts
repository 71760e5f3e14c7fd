import type { Voice } from '../voice.ts';

/** Saving files from a page. */
export const files = (_voice: Voice) => ({});
