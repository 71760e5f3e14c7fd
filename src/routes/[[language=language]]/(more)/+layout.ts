import { pageWords } from '#shared/speech/catalogue.ts';
import { languageOf } from '#shared/speech/language.ts';
import type { LayoutLoad } from './$types';

/** Pages that say more than a lesson does. */
export const load: LayoutLoad = async ({ url, untrack }) => ({
	catalogue: await pageWords(untrack(() => languageOf(url.pathname)))
});
