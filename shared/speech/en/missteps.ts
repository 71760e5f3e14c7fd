import type { Voice } from '../voice.ts';

/** Which wrong rule leads to a wrong place. */
export const missteps = (_voice: Voice) => ({});
