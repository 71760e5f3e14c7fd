import { getContext, setContext } from 'svelte';
import type { Learner } from './learner.svelte.ts';

const LEARNER = Symbol('learner');

/** Makes the learner known to everything on the page. */
export const provideLearner = (learner: Learner): Learner => setContext(LEARNER, learner);

/** The learner at this browser. */
export const useLearner = (): Learner => getContext<Learner>(LEARNER);
