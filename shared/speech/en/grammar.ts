import type { Noun } from '../noun.ts';

/** First letter made a capital: how a sentence begins. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** A title that begins with its article, within a sentence: "the back block" of "The back block". */
export const within = (title: string): string => title.replace(/^The /, 'the ');

/** A noun within a sentence: "the shoulder", "hip level", "A". */
export const the = ({ article, name }: Noun): string => (article ? `${article} ${name}` : name);

/** A noun at the beginning of a sentence. */
export const The = (noun: Noun): string => capital(the(noun));
