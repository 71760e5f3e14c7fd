import type { Language } from './language.ts';
import { serverWords } from './school-words.ts';
import { speechOf, type Speech } from './speech.ts';

/** By language. Made once: to find how a language writes numbers and lists takes longer than most requests. */
const made = new Map<Language, Promise<Speech>>();

/** All that the server says, in a language; lengths are in centimetres. */
export const serverSpeech = (language: Language): Promise<Speech> => {
	const known = made.get(language) ?? serverWords(language).then((words) => speechOf(words, 'cm'));
	made.set(language, known);
	return known;
};
