import type { Voice } from '../voice.ts';

/** What is printed on pages, pieces and sheets. */
export const paper = (_voice: Voice) => ({});
