import type { input as english } from '../en/input.ts';

/** What a person wrote that cannot be used: measurements, allowances, typed sums, lengths. */
export const input: typeof english = (_voice) => ({});
