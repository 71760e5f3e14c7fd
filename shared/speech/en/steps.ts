import type { Voice } from '../voice.ts';

/** The rule of each kind of step, in its three rungs. */
export const steps = (_voice: Voice) => ({});
