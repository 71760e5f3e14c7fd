import type { files as english } from '../en/files.ts';

/** Saving files from a page. */
export const files: typeof english = (_voice) => ({});
