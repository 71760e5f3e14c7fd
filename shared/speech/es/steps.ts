import type { steps as english } from '../en/steps.ts';

/** The rule of each kind of step, in its three rungs. */
export const steps: typeof english = (_voice) => ({});
