import type { Voice } from '../voice.ts';

/** What a person wrote that cannot be used: measurements, allowances, typed sums, lengths. */
export const input = (_voice: Voice) => ({});
