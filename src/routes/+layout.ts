import { firstWords } from '#shared/speech/catalogue.ts';
import { languageOf } from '#shared/speech/language.ts';
import type { LayoutLoad } from './$types';

/** One language is sent. A page stays in its own: to go to another is to load it anew. */
export const load: LayoutLoad = async ({ url, untrack }) => ({
	catalogue: await firstWords(untrack(() => languageOf(url.pathname)))
});
