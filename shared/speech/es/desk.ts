import type { desk as english } from '../en/desk.ts';

/** The sheet, its tool, the dock and typed entry. */
export const desk: typeof english = (_voice) => ({});
