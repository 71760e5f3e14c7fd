import type { nouns as english } from '../en/nouns.ts';

/** Measurements, allowances and other things with a name, as nouns. */
export const nouns: typeof english = (_voice) => ({});
