import type { garments as english } from '../en/garments.ts';

/** Pieces, cutting, notches, seams and their reports. */
export const garments: typeof english = (_voice) => ({});
