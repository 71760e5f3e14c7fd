import type { measurements as english } from '../en/measurements.ts';

/** The page of measurements. */
export const measurements: typeof english = (_voice) => ({});
