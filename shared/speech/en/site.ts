import type { Voice } from '../voice.ts';

/** What stands round every page: the frame, the contents, notices, titles. */
export const site = (_voice: Voice) => ({});
