import type { Judgement, JudgedPart } from './exercise.ts';

/** Nothing, or not everything, was answered yet. */
export const unfinished = (headline: string, parts: readonly JudgedPart[] = []): Judgement => ({
	answer: 'unfinished',
	headline,
	sentences: [],
	note: 'unfinished',
	parts
});

/** An entry that cannot be read: it costs nothing. */
export const notValid = (because: string): Judgement => ({
	answer: 'not-valid',
	headline: 'That entry cannot be used; nothing is counted.',
	sentences: [`${because}.`],
	note: 'not-valid',
	parts: []
});

/** A fault of the program's own: it costs nothing. */
export const ourFault = (because: string): Judgement => ({
	answer: 'our-fault',
	headline: 'The program could not judge this. That is our fault, and nothing is counted.',
	sentences: [because],
	note: 'our-fault',
	parts: []
});

/** An answer that was judged: right where all of its parts are. */
export const judgedParts = (
	parts: readonly JudgedPart[],
	note: string,
	headline: string,
	sentences: readonly string[] = []
): Judgement => {
	const right = parts.every(({ answer }) => answer === 'right');
	return { answer: right ? 'right' : 'wrong', headline, sentences, note: right ? 'right' : note, parts };
};
