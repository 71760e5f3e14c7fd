import { keptFor } from '#shared/kept.ts';
import type { Method } from '#drafting/method.ts';
import { stepKeys } from '#drafting/steps/kinds.ts';
import type { Step } from '#drafting/steps/step-rules.ts';
import { KINSHIP } from './priors.ts';

/** Which allowances are taken for which, by what they are called and where they are used. */

const PANELS: readonly string[] = ['front', 'back'];

/** The words of a key: `capHollowFront` has cap, hollow and front. */
const wordsOf = (key: string): readonly string[] => {
	const known = WORDS.get(key) ?? key.split(/(?=[A-Z])/).map((word) => word.toLowerCase());
	WORDS.set(key, known);
	return known;
};
const WORDS = new Map<string, readonly string[]>();

/** Whether two allowances are the same thing in front and back, by their names: `hollowBack`, `hollowFront`. */
const areTwins = (a: readonly string[], b: readonly string[]): boolean => {
	const panels = [a, b].map((words) => words.find((word) => PANELS.includes(word)));
	const isShared = (word: string): boolean => !PANELS.includes(word) && b.includes(word);
	return panels.every((panel) => panel !== undefined) && panels[0] !== panels[1] && a.some(isShared);
};

/** The places in a method's sequence at which each allowance is used: asked for some thousand times in one diagnosis. */
const usesIn = keptFor((method: Method): ReadonlyMap<string, readonly number[]> => {
	const uses = new Map<string, number[]>();
	method.steps.forEach((step, i) => {
		for (const key of stepKeys(step, 'allowance')) uses.set(key, [...(uses.get(key) ?? []), i]);
	});
	return uses;
});

/** How many steps away an allowance is used: none where this step uses it, no number where no step does. */
const stepsTo = (key: string, method: Method, step: Step | undefined): number => {
	const here = step ? method.steps.indexOf(step) : 0;
	return Math.min(Infinity, ...(usesIn(method).get(key) ?? []).map((i) => Math.abs(i - here)));
};

/** Whether an allowance is used by a step that was done a moment ago, or comes in a moment. */
export const isNear = (key: string, method: Method, step: Step | undefined): boolean =>
	stepsTo(key, method, step) <= KINSHIP.steps;

/** How likely one allowance is taken for another: the other panel's, one that is called alike, one that was just used, any. */
export const kinship = (wrong: string, right: string, method: Method, step: Step | undefined): number => {
	const [a, b] = [wordsOf(wrong), wordsOf(right)];
	if (areTwins(a, b)) return KINSHIP.twin;
	if (a.some((word) => b.includes(word))) return KINSHIP.alike;
	return isNear(wrong, method, step) ? KINSHIP.near : KINSHIP.any;
};
