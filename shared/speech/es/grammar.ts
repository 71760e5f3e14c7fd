import type { Noun } from '../noun.ts';
import type { Voice } from '../voice.ts';

/** First letter made a capital: how a sentence begins. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** A noun within a sentence: "el hombro", "la sisa", "A". */
export const el = ({ article, name }: Noun): string => (article ? `${article} ${name}` : name);

/** A noun at the beginning of a sentence. */
export const El = (noun: Noun): string => capital(el(noun));

/** «1 de 24 tiene», «2 de 24 tienen», «0 de 1 tiene»: how many of a group do something, and the verb for it. */
export const ofThem = (
	{ plural }: Pick<Voice, 'plural'>,
	{ count, of }: { readonly count: number; readonly of: number },
	verb: { readonly one: string; readonly other: string }
): string => `${count} de ${of} ${of === 1 ? verb.one : plural(count, verb)}`;

/** After "de": "del hombro", "de la sisa", "de A". */
export const del = (noun: Noun): string => (noun.article === 'el' ? `del ${noun.name}` : `de ${el(noun)}`);
