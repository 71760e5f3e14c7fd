import type { Voice } from '../voice.ts';

/** The sheet, its tool, the dock and typed entry. */
export const desk = (_voice: Voice) => ({});
