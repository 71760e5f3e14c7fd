import type { reading as english } from '../en/reading.ts';

/** What is wrong in a file: methods, garments, bodies, tables, placements. */
export const reading: typeof english = (_voice) => ({});
