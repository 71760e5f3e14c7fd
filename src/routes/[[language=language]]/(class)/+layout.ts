import { languageOf } from '#shared/speech/language.ts';
import { schoolWords } from '#shared/speech/school-words.ts';
import type { LayoutLoad } from './$types';

/** Each page is of one person, so none can be made beforehand. */
export const prerender = false;

/** Pages that say what no other does. */
export const load: LayoutLoad = async ({ url, untrack }) => ({
	catalogue: await schoolWords(untrack(() => languageOf(url.pathname)))
});
