import type { missteps as english } from '../en/missteps.ts';

/** Which wrong rule leads to a wrong place. */
export const missteps: typeof english = (_voice) => ({});
