import type { Body } from '#shared/body.ts';
import { MEASUREMENT_KEYS, notTaken, type MeasurementKey } from '#shared/measurements.ts';
import { grossDoubts } from '#shared/plausible/doubts.ts';
import type { Speech } from '#shared/speech/speech.ts';
import { evaluate, refusalWords } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';

/** Something that is made from drafts: a garment's name, and the methods of its drafts. */
export interface Making {
	readonly name: string;
	readonly methods: readonly Method[];
}

/** What is said alike of several garments or drafts for one body. */
export interface Report {
	/** "Can be drafted", what is still wanted, or what stands in the way and what to do about it. */
	readonly says: string;
	/** Whether it can be drafted, still wants measurements, or has measurements that stand in the way. */
	readonly state: 'ready' | 'wanting' | 'refused';
	/** Names of the garments, then of the drafts. */
	readonly of: readonly string[];
}

/** What the drafts want that the body does not have. */
const missingFor = (methods: readonly Method[], body: Body): readonly MeasurementKey[] =>
	notTaken(
		MEASUREMENT_KEYS.filter((key) => methods.some(({ measurements }) => measurements.includes(key))),
		body
	);

/** What is to be said of drafts for which everything was measured; of a body that is refused, each reason by itself. */
const sayings = (methods: readonly Method[], body: Body, speech: Speech): readonly string[] => {
	const { ready, lookAt, because } = speech.words.measurements;
	const refusals = methods.flatMap((method) => {
		const evaluation = evaluate(method, body);
		return evaluation.kind === 'refused' ? evaluation.refusals : [];
	});
	if (refusals.length === 0) return [ready];
	const doubts = grossDoubts(body, speech.unit);
	return doubts.length > 0
		? doubts.map(({ of }) => lookAt({ of }))
		: refusals.map((refusal) => because({ reason: refusalWords(refusal, speech) }));
};

/**
 * What can be drafted for a body, and what stands in the way: of each garment, and where one still wants measurements,
 * of each of its drafts that wants none. Two measurements that disagree stand in the way of every draft that is made
 * from both, so each thing is said once, of all that it concerns.
 */
export const reportsOf = (makings: readonly Making[], body: Body, speech: Speech): readonly Report[] => {
	const { ready, wanted } = speech.words.measurements;
	const said = new Map<string, { readonly state: Report['state']; readonly of: Set<string> }>();
	const say = (name: string, all: readonly string[], wanting = false): void => {
		for (const says of all) {
			const state = wanting ? 'wanting' : says === ready ? 'ready' : 'refused';
			said.set(says, { state, of: (said.get(says)?.of ?? new Set()).add(name) });
		}
	};
	// A draft that is called as its garment would be said to be ready and not.
	const garments = new Set(makings.map(({ name }) => name));
	const drafts = new Set<Method>();
	for (const { name, methods } of makings) {
		const missing = missingFor(methods, body);
		if (missing.length > 0) {
			say(name, [wanted({ keys: missing })], true);
			methods.forEach((method) => drafts.add(method));
		} else say(name, sayings(methods, body, speech));
	}
	for (const method of drafts)
		if (!garments.has(method.name) && missingFor([method], body).length === 0)
			say(method.name, sayings([method], body, speech));
	return [...said].map(([says, { state, of }]) => ({ says, state, of: [...of] }));
};
