import type { command as english } from '../en/command.ts';

/** The command line: usage, options, reports. */
export const command: typeof english = (_voice) => ({});
