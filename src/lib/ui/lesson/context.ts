import { getContext, setContext } from 'svelte';
import type { Learner } from '../learner/learner.svelte.ts';
import type { Tool } from '../sheet/tool.svelte.ts';
import type { Work } from './work.svelte.ts';

/** The drafting that goes on in a lesson: absent in lessons that only tell. */
export interface Drafting {
	readonly work: Work;
	readonly tool: Tool;
	/** The names of the lesson's steps, in order. */
	readonly steps: readonly string[];
}

const LEARNER = Symbol('learner');
const DRAFTING = Symbol('drafting');

/** Makes the learner known to everything on the page. */
export const provideLearner = (learner: Learner): Learner => setContext(LEARNER, learner);

/** The learner at this browser. */
export const useLearner = (): Learner => getContext<Learner>(LEARNER);

/** Makes a lesson's drafting known to the steps and figures in its text. */
export const provideDrafting = (drafting: Drafting | undefined): Drafting | undefined =>
	setContext(DRAFTING, drafting);

/** The drafting of the lesson at hand. Throws in a lesson that has none: a fault in the lesson. */
export const useDrafting = (): Drafting => {
	const drafting = getContext<Drafting | undefined>(DRAFTING);
	if (!drafting) throw new Error('this lesson names no method, so it can hold no step, figure or comparison');
	return drafting;
};
