import type { pattern as english } from '../en/pattern.ts';

/** The pages of garments and patterns. */
export const pattern: typeof english = (_voice) => ({});
