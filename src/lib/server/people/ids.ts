import { createHash, randomBytes, randomInt } from 'node:crypto';

/** Hexadecimal digits of a time, which an id begins with: what was made later sorts later. */
const TIME_DIGITS = 12;
const RANDOM_BYTES = 10;

/** A new id: nobody guesses it, and ids sort by the time at which they were made. */
export const newId = (now: number): string =>
	now.toString(16).padStart(TIME_DIGITS, '0') + randomBytes(RANDOM_BYTES).toString('hex');

/** Bytes of what only one browser, or one letter, knows. */
const SECRET_BYTES = 32;

/** A secret that is handed out once: the store keeps only its hash. */
export const newSecret = (): string => randomBytes(SECRET_BYTES).toString('base64url');

/** Under which id a secret is kept. */
export const hashOf = (secret: string): string => createHash('sha256').update(secret).digest('hex');

/** The 32 letters of codes that are read out in a room: none looks like another. */
const LETTERS = 'ABCDEFGHJKLMNPQRSTUVWXYZ23456789';
const CODE_LENGTH = 8;

/** A new code of a class, or a passphrase to begin with: eight letters, about 10^12 of them. */
export const newCode = (): string =>
	Array.from({ length: CODE_LENGTH }, () => LETTERS[randomInt(LETTERS.length)]).join('');

/** A code as it was typed: case, spaces and dashes are forgiven. */
export const readCode = (typed: string): string => typed.toUpperCase().replace(/[\s-]+/g, '');

/** A code as it is read out and written on a board: two groups of four. */
export const codeWords = (code: string): string => code.replace(/(.{4})(?=.)/g, '$1 ');
