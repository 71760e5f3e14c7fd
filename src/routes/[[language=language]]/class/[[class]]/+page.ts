import { languageOf } from '#shared/speech/language.ts';
import { schoolWords } from '#shared/speech/school-words.ts';
import type { PageLoad } from './$types';

/** One page says what no other does. */
export const load: PageLoad = async ({ data, url }) => ({
	...data,
	catalogue: await schoolWords(languageOf(url.pathname))
});
