import { z } from 'zod';
import { MOST_ATTEMPTS } from '#shared/hand-in-limits.ts';

/** What people type of themselves, read alike everywhere. */

/** The longest name of a person or a class. */
const LONGEST_NAME = 60;
/** A sentence is better than a password: no rule but the length. */
const SHORTEST_PASSPHRASE = 8;
const LONGEST_PASSPHRASE = 200;
const LONGEST_ID = 100;
const LONGEST_REMARK = 500;

/** What is shown as it was typed: in one form of Unicode, without control signs, one space between words. */
const words = (longest: number) =>
	z
		.string()
		.transform((typed) =>
			typed
				.normalize('NFC')
				.replace(/[\p{Cc}\p{Cf}\s]+/gu, ' ')
				.trim()
		)
		.pipe(z.string().min(1).max(longest));

export const name = words(LONGEST_NAME);
/** What a teacher writes to a learner. */
export const remark = words(LONGEST_REMARK);

export const passphrase = z
	.string()
	.transform((typed) => typed.normalize('NFKC').trim())
	.pipe(z.string().min(SHORTEST_PASSPHRASE).max(LONGEST_PASSPHRASE));

/** A passphrase to be compared: whatever it is, it may only be wrong. */
export const tried = z
	.string()
	.max(LONGEST_PASSPHRASE)
	.transform((typed) => typed.normalize('NFKC').trim());

export const code = z.string().max(LONGEST_NAME);
export const id = z.string().max(LONGEST_ID);

/** How a name is compared: case, kinds of letters and spaces are forgiven. */
export const knownAs = (shown: string): string =>
	shown.normalize('NFKC').toLocaleLowerCase('en').replace(/\s+/g, ' ').trim();

/** Which of a learner's attempts, from 1; forms send it as a text. */
export const attemptNumber = z.coerce.number().int().min(1).max(MOST_ATTEMPTS);
