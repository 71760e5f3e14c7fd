import type { Voice } from '../voice.ts';

/** The command line: usage, options, reports. */
export const command = (_voice: Voice) => ({});
