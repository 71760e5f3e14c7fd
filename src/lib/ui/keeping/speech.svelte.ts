import { getContext, setContext, untrack } from 'svelte';
import { pageWords, type Catalogue } from '#shared/speech/catalogue.ts';
import { addressIn } from '#shared/speech/language.ts';
import { speechOf, type Speech } from '#shared/speech/speech.ts';
import { broughtIn } from './brought-in.ts';
import type { Learner } from './learner.svelte.ts';

/** The speech of the page: the language of its address in the learner's unit, whatever that is just now. */
export interface PageSpeech extends Speech {
	/** Brings in what is said only where it is asked for: the rules of steps, missteps, files, patterns. Once brought in, it stays. */
	later(): Promise<void>;
	/** Whether that has been brought in. */
	readonly ready: boolean;
	/** The address of a page of this site, in the language of this page. */
	to(path: string): string;
}

/** Under which the speech of a page is known to what stands on it. */
export const SPEECH = Symbol('speech');

/** Makes the speech of the page known to everything on it. `catalogue` is asked again whenever it may have changed. */
export const provideSpeech = (catalogue: () => Catalogue, learner: Learner): PageSpeech => {
	let more: Catalogue | undefined = $state.raw();
	let coming: Promise<Catalogue> | undefined;
	const now = $derived(speechOf(more ?? catalogue(), learner.unit));
	const own: Pick<PageSpeech, 'later' | 'ready' | 'to'> = {
		get ready() {
			return (more ?? catalogue()).areas.steps !== undefined;
		},
		later: async () => {
			// Also asked from a template, where nothing may be set and which is not to ask again.
			if (untrack(() => own.ready)) return;
			more = await (coming ??= broughtIn(() => pageWords(untrack(() => now.language))));
		},
		to: (path) => addressIn(now.language, path)
	};
	// Asked anew each time, so that a sentence in a template is said anew when the unit changes.
	const live = new Proxy({} as PageSpeech, {
		get: (_, name) => Reflect.get(name in own ? own : now, name) as unknown
	});
	return setContext(SPEECH, live);
};

/** The speech of the page. */
export const useSpeech = (): PageSpeech => getContext<PageSpeech>(SPEECH);
