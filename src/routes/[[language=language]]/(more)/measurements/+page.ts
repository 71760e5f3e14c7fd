import { languageOf } from '#shared/speech/language.ts';
import { measuringWords } from '#shared/speech/measuring-words.ts';
import type { PageLoad } from './$types';

/** One page says what no other does. */
export const load: PageLoad = async ({ data, url, untrack }) => ({
	...data,
	catalogue: await measuringWords(untrack(() => languageOf(url.pathname)))
});
