import type { Body } from '#shared/body.ts';
import type { Entry } from '#shared/entry.ts';
import type { Done, HandedEntry } from '#shared/hand-in.ts';
import { alike } from '#ui/keeping/merge.ts';
import type { ChoosableBody, Judging, Learner } from '#ui/keeping/learner.svelte.ts';
import { AssignedWork } from './assigned-work.svelte.ts';

/** What is drafted for an assignment. */
export interface Assigned {
	readonly id: string;
	readonly body: Body;
	/** What was handed in before: by method, then by step. */
	readonly entries: Readonly<Record<string, Readonly<Record<string, HandedEntry>>>>;
}

/** A step's entry as it is handed in. */
const handed = ({ placement, checked, kept, help, shown }: Entry): HandedEntry => ({
	...(placement && { placement }),
	...{ checked, kept, help, shown }
});

/** The learner at this browser, some of whose parts are others. */
const otherwise = (learner: Learner, own: Readonly<Record<string, unknown>>): Learner =>
	new Proxy(learner, {
		get: (_, name) => {
			if (name in own) return Reflect.get(own, name) as unknown;
			const value: unknown = Reflect.get(learner, name);
			// What the learner does is done by the learner, whose own parts no other may look into.
			return typeof value === 'function' ? (value.bind(learner) as unknown) : value;
		}
	});

/** The learner at this browser, whose exercises are judged as an assignment is. */
export const judgedLearner = (learner: Learner, judging: Judging): Learner => otherwise(learner, { judging });

/**
 * The learner at this browser as an assignment's lessons know them: they draft for its body, and what they draft is handed in and
 * not kept with their own work. Everything else, as the unit, is theirs as everywhere.
 *
 * @param ondone called with each change of a step
 */
export const assignedLearner = (
	learner: Learner,
	{ id, body }: Pick<Assigned, 'id' | 'body'>,
	judging: Judging,
	ondone: (done: Done) => void
): { readonly learner: Learner; readonly work: AssignedWork } => {
	const current: ChoosableBody = { id: `assignment-${id}`, own: false, body };
	const work = new AssignedWork((method, was, now) => {
		for (const [step, entry] of Object.entries(now)) {
			const before = was[step];
			if (before && alike(handed(before), handed(entry))) continue;
			ondone({ assignment: id, method, step, entry: handed(entry) });
		}
	});
	const own = {
		current,
		bodies: [current],
		work,
		judging,
		get loaded() {
			return work.ready && learner.loaded;
		}
	};
	return { learner: otherwise(learner, own), work };
};

/** The steps as they stand with what was done since: what waits in this browser is newer than what the server has. */
export const withUnsent = (entries: Assigned['entries'], unsent: readonly Done[]): Assigned['entries'] => {
	const all: Record<string, Record<string, HandedEntry>> = Object.fromEntries(
		Object.entries(entries).map(([method, steps]) => [method, { ...steps }])
	);
	for (const done of unsent) if ('method' in done) (all[done.method] ??= {})[done.step] = done.entry;
	return all;
};

/** The steps of an exam that is over: whatever was put down was the answer. */
export const asAnswered = (entries: Assigned['entries']): Assigned['entries'] =>
	Object.fromEntries(
		Object.entries(entries).map(([method, steps]) => [
			method,
			Object.fromEntries(
				Object.entries(steps).map(([step, entry]) => [
					step,
					entry.placement ? { ...entry, checked: true, kept: true } : entry
				])
			)
		])
	);
