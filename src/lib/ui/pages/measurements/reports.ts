import { englishIn } from '#shared/speech/english-for-now.ts';
import type { Body } from '#shared/body.ts';
import { measurementWords } from '#shared/measurements.ts';
import { evaluate, refusalWords } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import { capitalised, listed } from '#drafting/words.ts';

/** What is said alike of several drafts for one body. */
export interface Report {
	/** "Can be drafted", what is still wanted, or what stands in the way and what to do about it. */
	readonly says: string;
	readonly ready: boolean;
	/** The drafts' names, in the course's order. */
	readonly drafts: readonly string[];
}

const READY = 'Can be drafted';

/** What is to be said of one draft; of a body that is refused, each reason by itself. */
const sayings = (method: Method, body: Body): readonly string[] => {
	const missing = method.measurements.filter((key) => body.measurements[key] === undefined);
	if (missing.length > 0) return [`Still wanted: ${listed(missing.map(measurementWords))}`];
	const evaluation = evaluate(method, body);
	if (evaluation.kind === 'drafted') return [READY];
	return evaluation.refusals.map((refusal) => capitalised(refusalWords(refusal, englishIn(body.unit))));
};

/**
 * What can be drafted for a body, and what stands in the way. Two measurements that disagree stand in the way of
 * every draft that is made from both, so each thing is said once, of all the drafts that it concerns.
 */
export const reportsOf = (methods: readonly Method[], body: Body): readonly Report[] => {
	const drafts = new Map<string, Set<string>>();
	for (const method of methods)
		for (const says of sayings(method, body))
			drafts.set(says, (drafts.get(says) ?? new Set()).add(method.name));
	return [...drafts].map(([says, names]) => ({ says, ready: says === READY, drafts: [...names] }));
};
