import { isMarked } from '#shared/speech/language.ts';

/** A language at the head of an address. */
export const match = isMarked;
