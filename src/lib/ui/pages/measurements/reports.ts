import type { Body } from '#shared/body.ts';
import { doubtsOf } from '#shared/doubts.ts';
import type { Speech } from '#shared/speech/speech.ts';
import { evaluate, refusalWords } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';

/** What is said alike of several drafts for one body. */
export interface Report {
	/** "Can be drafted", what is still wanted, or what stands in the way and what to do about it. */
	readonly says: string;
	readonly ready: boolean;
	/** The drafts' names, in the course's order. */
	readonly drafts: readonly string[];
}

/** What is to be said of one draft; of a body that is refused, each reason by itself. */
const sayings = (method: Method, body: Body, speech: Speech): readonly string[] => {
	const { words } = speech;
	const missing = method.measurements.filter((key) => body.measurements[key] === undefined);
	if (missing.length > 0) return [words.measurements.wanted({ keys: missing })];
	const evaluation = evaluate(method, body);
	if (evaluation.kind === 'drafted') return [words.measurements.ready];
	const doubts = doubtsOf(body.measurements);
	if (doubts.length > 0) return doubts.map(({ of }) => words.measurements.lookAt({ of }));
	return evaluation.refusals.map((refusal) =>
		words.measurements.because({ reason: refusalWords(refusal, speech) })
	);
};

/**
 * What can be drafted for a body, and what stands in the way. Two measurements that disagree stand in the way of
 * every draft that is made from both, so each thing is said once, of all the drafts that it concerns.
 */
export const reportsOf = (methods: readonly Method[], body: Body, speech: Speech): readonly Report[] => {
	const drafts = new Map<string, Set<string>>();
	for (const method of methods)
		for (const says of sayings(method, body, speech))
			drafts.set(says, (drafts.get(says) ?? new Set()).add(method.name));
	return [...drafts].map(([says, names]) => ({
		says,
		ready: says === speech.words.measurements.ready,
		drafts: [...names]
	}));
};
