import type { Noun } from '../noun.ts';

/** First letter made a capital: how a sentence begins. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** A noun within a sentence: "el hombro", "la sisa", "A". */
export const el = ({ article, name }: Noun): string => (article ? `${article} ${name}` : name);

/** A noun at the beginning of a sentence. */
export const El = (noun: Noun): string => capital(el(noun));

/** After "de": "del hombro", "de la sisa", "de A". */
export const del = (noun: Noun): string => (noun.article === 'el' ? `del ${noun.name}` : `de ${el(noun)}`);
