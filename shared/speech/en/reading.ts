import type { Voice } from '../voice.ts';

/** What is wrong in a file: methods, garments, bodies, tables, placements. */
export const reading = (_voice: Voice) => ({});
