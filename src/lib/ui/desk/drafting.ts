import { getContext, setContext } from 'svelte';
import type { Tool } from './tool.svelte.ts';
import type { Work } from './work.svelte.ts';

/** The drafting that goes on in a lesson: absent in lessons that only tell. */
export interface Drafting {
	readonly work: Work;
	readonly tool: Tool;
	/** The names of the lesson's steps, in order. */
	readonly steps: readonly string[];
	/** Takes the keyboard's focus to the sheet; nothing while there is none. */
	focusSheet(): void;
}

const DRAFTING = Symbol('drafting');

/** Makes a lesson's drafting known to the steps and figures in its text. */
export const provideDrafting = (drafting: Omit<Drafting, 'focusSheet'> | undefined): void => {
	const focusSheet = (): void => {
		drafting?.tool.focus?.();
		// On a small screen the desk stands above the text.
		document.getElementById('desk')?.scrollIntoView({ block: 'nearest' });
	};
	setContext(DRAFTING, drafting && { ...drafting, focusSheet });
};

/** The drafting of the lesson at hand. Throws in a lesson that has none: a fault in the lesson. */
export const useDrafting = (): Drafting => {
	const drafting = getContext<Drafting | undefined>(DRAFTING);
	if (!drafting) throw new Error('this lesson names no method, so it can hold no step, figure or comparison');
	return drafting;
};
