/** What the browser knows of the limits by which a class server takes what is handed in; the shapes are in hand-in.ts. */

/** The most events of one request, so that a request stays below what a server takes. */
export const MOST_AT_ONCE = 50;
/** The most letters of one event: a line of twenty curves, as they are placed, has half of that. */
export const LONGEST_EVENT = 8_000;
