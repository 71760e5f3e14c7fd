import type { formulas as english } from '../en/formulas.ts';

/** A rule's formula in words, with its arithmetic. */
export const formulas: typeof english = (_voice) => ({});
