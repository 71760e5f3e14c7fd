import type { site as english } from '../en/site.ts';

/** What stands round every page: the frame, the contents, notices, titles. */
export const site: typeof english = (_voice) => ({});
