import type { Voice } from '../voice.ts';

/** The pages of garments and patterns. */
export const pattern = (_voice: Voice) => ({});
