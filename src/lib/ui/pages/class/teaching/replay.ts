import type { Body } from '#shared/body.ts';
import type { HandedEntry, StepDone } from '#shared/hand-in.ts';
import { TOLERANCES, type Level } from '#shared/tolerances.ts';
import { judged, type LearnersWork } from '#checker/work.ts';
import { evaluate } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';

/** How something was set that was handed in, as far as the judge has to know. */
export interface Setting {
	readonly body: Body;
	readonly mode: 'practice' | 'exam';
	readonly level: Level;
}

/** The steps of a method as they stood after some events. */
const entriesAfter = (method: Method, events: readonly StepDone[]): Record<string, HandedEntry> =>
	Object.fromEntries(
		events.filter((done) => done.method === method.id).map(({ step, entry }) => [step, entry])
	);

/** A learner's work on a method after some events, as the judge looks at it. In an exam all that was put down counts. */
export const workAfter = (method: Method, events: readonly StepDone[], setting: Setting): LearnersWork => {
	const { body, mode, level } = setting;
	const evaluation = evaluate(method, body);
	const isExam = mode === 'exam';
	const entries = Object.entries(entriesAfter(method, events)).map(
		([step, entry]) => [step, isExam ? { ...entry, checked: true, kept: true } : entry] as const
	);
	const leant = Object.entries(method.uses).filter(([, { id }]) => events.some((done) => done.method === id));
	return {
		...{ method, body, entries: Object.fromEntries(entries), allowed: TOLERANCES[level] },
		truth: evaluation.kind === 'drafted' ? evaluation.draft : undefined,
		marks: isExam ? 'pencilled' : 'inked',
		uses: Object.fromEntries(leant.map(([alias, used]) => [alias, judged(workAfter(used, events, setting))]))
	};
};
