import { setContext } from 'svelte';
import type { Speech } from '#shared/speech/speech.ts';
import { SPEECH, type PageSpeech } from './speech.svelte.ts';

/** Lets a part of the page say some things in other words. `change` is asked anew each time. */
export const provideOtherWords = (
	speech: PageSpeech,
	change: (words: Speech['words']) => Speech['words']
): PageSpeech =>
	setContext(
		SPEECH,
		new Proxy(speech, {
			get: (_, name) => (name === 'words' ? change(speech.words) : (Reflect.get(speech, name) as unknown))
		})
	);
