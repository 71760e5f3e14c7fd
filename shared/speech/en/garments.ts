import type { Voice } from '../voice.ts';

/** Pieces, cutting, notches, seams and their reports. */
export const garments = (_voice: Voice) => ({});
