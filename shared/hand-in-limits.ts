/** What the browser knows of the limits by which a class server takes what is handed in; the shapes are in hand-in.ts. */

/** The most events of one request, so that a request stays below what a server takes. */
export const MOST_AT_ONCE = 50;
/** The most letters of one event: a line of twenty curves, as they are placed, has half of that. */
export const LONGEST_EVENT = 8_000;
/** The most exercises of a practice that is set: two hours and more. */
export const MOST_EXERCISES = 40;
/** The most whole attempts that one learner makes at one assignment, where there may be as many as they like. */
export const MOST_ATTEMPTS = 1_000;
/** Where a mark or a remark names a method and a step, an exercise is the step, by its number, of this one. */
export const EXERCISES = 'practice';
