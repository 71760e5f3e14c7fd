import type { Voice } from '../voice.ts';

/** The page of measurements. */
export const measurements = (_voice: Voice) => ({});
