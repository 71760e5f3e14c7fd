import { BadInput } from '#shared/bad-input.ts';
import type { Message } from '#shared/speech/message.ts';
import type { Verdict } from '#shared/verdict.ts';
import { NO_DIAGNOSIS, type Diagnosis } from '#checker/missteps/misstep.ts';
import type { Judged, JudgedPart } from './exercise.ts';

/** Nothing, or not everything, was answered yet. */
export const unfinished = (headline: Message, parts: readonly JudgedPart[] = []): Judged => ({
	answer: 'unfinished',
	note: 'unfinished',
	parts,
	said: { headline, sentences: [] }
});

/** An entry that cannot be read: it costs nothing. */
export const notValid = (because: Message): Judged => ({
	answer: 'not-valid',
	note: 'not-valid',
	parts: [],
	said: { unusable: because }
});

/** What is judged of an entry that has still to be read: bad input costs nothing. */
export const readable = (judge: () => Judged): Judged => {
	try {
		return judge();
	} catch (error) {
		if (error instanceof BadInput) return notValid(error.slip);
		throw error;
	}
};

/** What the checker says of the placement of a step. */
export const asVerdict = (verdict: Verdict, name: string, parts: readonly JudgedPart[] = []): Judged => ({
	answer: verdict.answer,
	note: verdict.answer,
	parts,
	said: { verdict, name }
});

/** An answer of the exercise's own parts: right where all of them are. */
export const judgedParts = (
	parts: readonly JudgedPart[],
	note: string,
	headline: Message,
	sentences: readonly Message[] = [],
	diagnosis: Diagnosis = NO_DIAGNOSIS
): Judged => {
	const right = parts.every(({ answer }) => answer === 'right');
	return {
		answer: right ? 'right' : 'wrong',
		note: right ? 'right' : note,
		parts,
		said: { headline, sentences },
		diagnosis
	};
};
