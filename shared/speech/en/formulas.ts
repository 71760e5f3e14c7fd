import type { Voice } from '../voice.ts';

/** A rule's formula in words, with its arithmetic. */
export const formulas = (_voice: Voice) => ({});
