import type { Drafted } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import { isGiven, stepMakes } from '#drafting/steps/kinds.ts';
import type { Step } from '#drafting/steps/step-rules.ts';

const only = <T>(all: Readonly<Record<string, T>>, names: ReadonlySet<string>): Record<string, T> =>
	Object.fromEntries(Object.entries(all).filter(([name]) => names.has(name)));

/** What stands on the sheet when a step is to be drafted: everything that the method drafts before it. */
export const draftSoFar = (method: Method, draft: Drafted, stepName: string): Drafted => {
	const place = method.steps.findIndex(({ name }) => name === stepName);
	const earlier = new Set(method.steps.slice(0, place).map(({ name }) => name));
	return {
		points: only(draft.points, earlier),
		lines: only(draft.lines, earlier),
		...(draft.uses ? { uses: draft.uses } : {})
	};
};

/** The steps that a learner answers with a place, but for what is given. */
export const pointSteps = (method: Method): readonly Step[] =>
	method.steps.filter((step) => !isGiven(step) && stepMakes(step) === 'point');
