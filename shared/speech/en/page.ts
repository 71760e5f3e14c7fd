import type { Voice } from '../voice.ts';

/** What is written into every page when it is made, since nothing can be fetched, or run, when it is to be read. */
export const page = (_voice: Voice) => ({
	withoutScript:
		'Without JavaScript you can read the lessons and see their figures, and the patterns of an invented body. Drafting on the sheet, practice, your own measurements and saving files need it: allow it for this page, then load it again.',
	outOfReach:
		'The server of this page does not answer: there is no connection, or it was stopped. What stands here can be read, and what you have drafted is kept in this browser; the rest comes when it answers again.'
});
