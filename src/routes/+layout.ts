import { firstWords } from '#shared/speech/catalogue.ts';
import { languageOf } from '#shared/speech/language.ts';
import type { LayoutLoad } from './$types';

/** Pages are made when the app is built; only what is not linked to is left to the server. */
export const prerender = 'auto';

/** One language is sent. A page stays in its own: to go to another is to load it anew. */
export const load: LayoutLoad = async ({ url, untrack }) => ({
	catalogue: await firstWords(untrack(() => languageOf(url.pathname)))
});
