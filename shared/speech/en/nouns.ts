import type { Voice } from '../voice.ts';

/** Measurements, allowances and other things with a name, as nouns. */
export const nouns = (_voice: Voice) => ({});
