import { checkingWords } from '#shared/speech/checking-words.ts';
import { languageOf } from '#shared/speech/language.ts';
import type { PageLoad } from './$types';

/** One page says what no other does. */
export const load: PageLoad = async ({ data, url, untrack }) => ({
	...data,
	catalogue: await checkingWords(untrack(() => languageOf(url.pathname)))
});
